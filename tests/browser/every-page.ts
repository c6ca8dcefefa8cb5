/** What every page of the site must pass. Each is loaded once; the tests judge what was seen. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, pages, site, textOf, type Visit } from './browser.js';
import { coveringEveryElement } from './every-kind-of-element.js';
import { blanksBeforeCommas, leadNowhere } from './page-text.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const every = await pages();
/** Pages made by a generator are alike: one stands for all where a look costs a second. */
const distinct = every.filter(
  (path) => !path.startsWith('api/') || path === 'api/tolerance/' || path === 'api/overview/',
);
const standFor = (paths: readonly string[]) => coveringEveryElement(paths.map((path) => [path, textOf(path)]));
const isFormula = (path: string) => path.startsWith('formulas/');
export const formulaPages: readonly string[] = distinct.filter(isFormula);
export const otherPages: readonly string[] = distinct.filter((path) => !isFormula(path));
/**
 * The generator writes pages of formulas from a few templates: those that together have each of their elements stand for all of them,
 * but for what their contents alone decide, which `alike-pages.ts` judges.
 */
export const standingFormulaPages: readonly string[] = process.env.MANY_CASES ? formulaPages : standFor(formulaPages);
/**
 * Axe takes seconds for a page, and judges kinds of elements and what stands in what: few pages have all there is. What contents alone
 * decide, names and the elements that others refer to, is judged of every page.
 */
const judgedByAxe: ReadonlySet<string> = new Set(
  process.env.MANY_CASES ? distinct : standFor([...otherPages, ...standingFormulaPages]),
);
/** Rules that look at colours alone. */
const COLOURS = ['color-contrast', 'link-in-text-block'];
/** Parts of equations and drawings, which a generator makes: they are most of the elements of some pages. */
const DRAWN = ['math > *', 'svg > *'];
/** What 1280 px are at 400 % zoom, a telephone, and a desk. */
const widths = [320, 390, 1100];

/** The tests of these pages, in a browser of their own. */
export function judgePages(name: string, paths: readonly string[]): void {
  describe.skipIf(!hasBrowser)(name, () => judgeEach(paths));
}

function judgeEach(paths: readonly string[]): void {
  const { visit, address } = site();
  let tab: Visit;

  beforeAll(async () => {
    tab = await visit('');
  });

  test('there are pages', () => expect(paths.length).toBeGreaterThan(10));

  describe.each(paths)('/%s', (path) => {
    beforeAll(async () => {
      tab.requests.length = tab.complaints.length = 0;
      await tab.page.setViewportSize({ width: 1100, height: 900 });
      await tab.page.emulateMedia({ colorScheme: 'light' });
      await tab.page.goto(`${address()}${path}`);
      // A page with numbers to drag fetches its model.
      await tab.page.waitForFunction(
        () => !document.querySelector('scrub-number') || !!document.querySelector('[data-live]'),
      );
    });

    test('names what is pressed, followed and read first, and refers to elements that are there once', async () =>
      expect(await tab.page.evaluate(namesAndReferences)).toEqual([]));

    test.runIf(judgedByAxe.has(path))('is clean by axe, its colours light and dark', async () => {
      await tab.page.evaluate(axe);
      expect(await violations(tab.page)).toEqual([]);
      await tab.page.emulateMedia({ colorScheme: 'dark' });
      expect(await violations(tab.page, COLOURS), 'dark').toEqual([]);
    });

    test('is not wider than the window', async () => {
      for (const width of widths) {
        await tab.page.setViewportSize({ width, height: 800 });
        expect(
          await tab.page.evaluate(() => document.documentElement.scrollWidth),
          `at ${width} px`,
        ).toBeLessThanOrEqual(width);
      }
    });

    test('says the same without script', async () => {
      const [without, with_] = await tab.page.evaluate((markup) => {
        const words = (page: Document) => {
          const copy = page.querySelector('main')?.cloneNode(true) as HTMLElement;
          for (const scripted of copy.querySelectorAll('.run-bar, [data-scripted], script, style, .said'))
            scripted.remove();
          return copy.textContent?.replace(/\s+/g, ' ').trim();
        };
        return [words(new DOMParser().parseFromString(markup, 'text/html')), words(document)];
      }, textOf(path));
      expect(with_).toBe(without);
      expect(without?.length).toBeGreaterThan(100);
    });

    test('has no blank between a number or a link and the comma after it', () =>
      expect(blanksBeforeCommas(textOf(path))).toEqual([]));

    test('names only pages and anchors that are there', async () => {
      const links = await tab.page.evaluate(() => Array.from(document.links, ({ href }) => href));
      expect(leadNowhere(links, address())).toEqual([]);
    });

    test('asks no other host, complains of nothing, and weighs less than 350 kB', async () => {
      expect(tab.requests.filter((url) => !url.startsWith(address()) && !url.startsWith('data:'))).toEqual([]);
      expect(tab.complaints).toEqual([]);
      const bytes = await tab.page.evaluate(() => {
        const all = [...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')];
        return all.reduce((sum, entry) => sum + (entry as PerformanceResourceTiming).decodedBodySize, 0);
      });
      expect(bytes).toBeGreaterThan(10_000);
      if (!path.startsWith('api/')) expect(bytes).toBeLessThan(350_000);
    });
  });
}

/** Runs in the page: what has no name, pictures among it, ids that are there twice, and references to none. */
function namesAndReferences(): string[] {
  const all = (selector: string) => [...document.querySelectorAll<HTMLElement>(selector)];
  const has = (one: Element, name: string) => !!one.getAttribute(name)?.trim();
  const labelled = (one: Element) => has(one, 'aria-label') || has(one, 'aria-labelledby');
  const unnamed = [
    ...all('a[href], button, h1, h2, h3, h4, h5, h6, [role=spinbutton]').filter(
      (one) =>
        !one.textContent?.trim() &&
        !labelled(one) &&
        ![...one.querySelectorAll('svg, img')].some((at) => labelled(at) || has(at, 'alt')),
    ),
    ...all('input:not([type=hidden]), select, textarea').filter(
      (one) => !labelled(one) && !(one as HTMLInputElement).labels?.length,
    ),
    ...all('img').filter((one) => one.getAttribute('alt') === null),
    ...all('svg[role=img]').filter(
      (one) => !labelled(one) && !one.querySelector(':scope > title')?.textContent?.trim(),
    ),
    ...(document.title.trim() ? [] : [document.documentElement]),
  ];
  const ids = all('[id]').map(({ id }) => id);
  const twice = ids.filter((id, k) => ids.indexOf(id) !== k);
  const names = ['aria-labelledby', 'aria-describedby', 'aria-controls', 'aria-owns', 'for'];
  const referred = names.flatMap((name) =>
    all(`[${name}]`).flatMap((one) => (one.getAttribute(name) as string).split(/\s+/).filter((id) => id !== '')),
  );
  return [
    ...unnamed.map((one) => `no name: ${one.outerHTML.slice(0, 120)}`),
    ...twice.map((id) => `twice: ${id}`),
    ...referred.filter((id) => !ids.includes(id)).map((id) => `not there: ${id}`),
  ];
}

/** What axe finds, in words, by all of its rules or some. It is let in by the browser: the policy of the page lets no stranger in. */
const violations = (page: Page, rules?: readonly string[]): Promise<string[]> =>
  page.evaluate(
    async ([some, left]) => {
      interface Axe {
        run(page: object, options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
      }
      const { axe } = globalThis as unknown as { axe: Axe };
      const where = { include: [['html']], exclude: left.map((selector) => [selector]) };
      // `violations` in full, of the rest only one node a rule: it is not looked at.
      const options = { resultTypes: ['violations'], ...(some && { runOnly: { type: 'rule', values: some } }) };
      return (await axe.run(where, options)).violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
      );
    },
    [rules, process.env.MANY_CASES ? [] : DRAWN] as const,
  );
