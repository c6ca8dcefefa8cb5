/** What every page of the site must pass. */
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { hasBrowser, pages, site } from './browser.js';

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const every = await pages();
/** Pages made by a generator are alike: one stands for all where a look costs a second. */
const distinct = every.filter((path) => !path.startsWith('api/') || path === 'api/vent/' || path === 'api/overview/');

describe.skipIf(!hasBrowser)('every page', () => {
  const { visit, address } = site();

  test('there are pages', () => expect(every.length).toBeGreaterThan(3));

  test.each(distinct)(
    '/%s asks no other host, complains of nothing, and is not wider than the window',
    async (path) => {
      for (const width of [1100, 390, 320]) {
        const { page, requests, complaints } = await visit(path, { viewport: { width, height: 800 } });
        await page.waitForLoadState('networkidle');
        expect(requests.filter((url) => !url.startsWith(address()) && !url.startsWith('data:'))).toEqual([]);
        expect(complaints).toEqual([]);
        // 320 px is what 1280 px are at 400 % zoom.
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width} px`).toBeLessThanOrEqual(
          width,
        );
        await page.context().close();
      }
    },
  );

  test.each(distinct)('/%s is clean by axe, light and dark', async (path) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      // The rules are run by a script of ours, which the policy of the page would not let in.
      const { page } = await visit(path, { colorScheme, bypassCSP: true });
      await page.addScriptTag({ path: axe });
      const violations = await page.evaluate(async () => {
        const run = (
          globalThis as unknown as {
            axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
          }
        ).axe;
        return (await run.run()).violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
        );
      });
      expect(violations, colorScheme).toEqual([]);
      await page.context().close();
    }
  });

  test.each(distinct)('/%s says the same without script', async (path) => {
    const words = async (javaScriptEnabled: boolean) => {
      const { page } = await visit(path, { javaScriptEnabled });
      const text = await page.locator('main').evaluate((main) => {
        const copy = main.cloneNode(true) as HTMLElement;
        for (const scripted of copy.querySelectorAll('.run-bar, [data-scripted], script, style, .said'))
          scripted.remove();
        return copy.textContent?.replace(/\s+/g, ' ').trim();
      });
      await page.context().close();
      return text;
    };
    expect(await words(true)).toBe(await words(false));
  });

  test.each(distinct.filter((path) => !path.startsWith('api/')))('/%s weighs less than 350 kB', async (path) => {
    const { page } = await visit(path);
    await page.waitForLoadState('networkidle');
    const bytes = await page.evaluate(() => {
      const all = [...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')];
      return all.reduce((sum, entry) => sum + (entry as PerformanceResourceTiming).decodedBodySize, 0);
    });
    expect(bytes).toBeLessThan(350_000);
    await page.context().close();
  });

  test.each(distinct)('/%s: every anchor and every page it names is there', async (path) => {
    const { page } = await visit(path);
    const links = await page
      .locator('a[href]')
      .evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).href));
    for (const href of new Set(links)) {
      if (!href.startsWith(address())) continue;
      const { pathname, hash } = new URL(href);
      const answer = await page.request.get(`${address().slice(0, -1)}${pathname}`);
      expect(answer.status(), href).toBe(200);
      if (hash)
        expect(await answer.text(), href).toMatch(
          new RegExp(`id="?${decodeURIComponent(hash.slice(1)).replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}["\\s>]`),
        );
    }
    await page.context().close();
  });
});
