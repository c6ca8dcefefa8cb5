/** Tables, headings and the way from page to page, as a reader meets them. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, pages, site } from './browser.js';

const tabled = [
  'worked-examples/wider-vent/',
  'worked-examples/deeper-or-louder/',
  'worked-examples/quiet-vent/',
  'worked-examples/it-chuffs/',
  'formulas/',
  'formulas/enclosure/vented-box/',
  'formulas/driver/parameters/',
  'formulas/disagreements/',
];
const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });

describe.skipIf(!hasBrowser)('reading', () => {
  const { visit, address } = site();

  test.each(tabled)('/%s: numbers of a column stand point below point, their unit in the head', async (path) => {
    const { page } = await visit(path);
    await openAll(page);
    const columns = await page.evaluate(() => {
      const seen: { head: string; texts: string[]; points: number[] }[] = [];
      for (const table of document.querySelectorAll('article table:not(.changes, .sheets *)')) {
        const rows = [...table.querySelectorAll('tbody tr')];
        const heads = [...table.querySelectorAll('thead th')];
        heads.forEach((head, k) => {
          const cells = rows.map((row) => row.children[k] as HTMLElement);
          const texts = cells.map((cell) => (cell.textContent ?? '').replaceAll('\u00a0', ' '));
          const points = cells.flatMap((cell, i) => {
            // Where the whole part of a number ends.
            const node = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT).nextNode();
            const whole = /^[−+±]?\d+/.exec(texts[i] as string)?.[0].length;
            if (!node || whole === undefined) return [];
            const range = document.createRange();
            range.setStart(node, whole - 1);
            range.setEnd(node, whole);
            return [range.getBoundingClientRect().right];
          });
          seen.push({ head: head.textContent ?? '', texts, points });
        });
      }
      return seen;
    });
    const numbers = columns.filter(({ texts }) => texts.every((text) => /^(–|[−+±]?\d+(\.\d+)?)$/.test(text)));
    expect(numbers.length).toBeGreaterThan(1);
    for (const { head, points } of numbers) expect(Math.max(...points) - Math.min(...points), head).toBeLessThan(1);
    const inEveryCell = columns.filter(({ texts }) => {
      const units = texts.map((text) => /^[−+±]?[\d.]+ (Hz|dB|mm|m\/s|L|Ω|V|%)$/.exec(text)?.[1]);
      return units[0] !== undefined && units.every((unit) => unit === units[0]);
    });
    expect(inEveryCell.map(({ head }) => head)).toEqual([]);
    await page.context().close();
  });

  test.each(tabled)('/%s: on a telephone no table is cut off, and each cell says what it is', async (path) => {
    const { page } = await visit(path, { viewport: { width: 390, height: 844 } });
    await openAll(page);
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('article .table')]
        .filter((table) => table.scrollWidth > table.clientWidth)
        .map((table) => table.querySelector('caption')?.textContent),
    );
    expect(cut).toEqual([]);
    const unnamed = await page.evaluate(
      () =>
        [...document.querySelectorAll('table.rows td')].filter(
          (cell) => getComputedStyle(cell, '::before').content.length < 3 && cell.textContent !== '',
        ).length,
    );
    expect(unnamed).toBe(0);
    const squeezed = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('article table.rows tbody tr > :first-child')]
        .filter((name) => name.offsetWidth < 200)
        .map(({ textContent }) => textContent),
    );
    expect(squeezed).toEqual([]);
    // Paper is as narrow as a telephone is wide, and shows tables as tables.
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 688, height: 1000 });
    const shown = await page.evaluate(() =>
      [...document.querySelectorAll('article table.rows tr')].map((row) => getComputedStyle(row).display),
    );
    for (const display of new Set(shown)) expect(display).toBe('table-row');
    await page.context().close();
  });

  test('on a telephone no equation of a worked example is cut off', async () => {
    const { page } = await visit('', { viewport: { width: 390, height: 844 } });
    const seen: [string, number][] = [];
    for (const path of (await pages()).filter((one) => /^worked-examples\/./.test(one))) {
      await page.goto(`${address()}${path}`);
      const cut = await page.evaluate(() =>
        [...document.querySelectorAll('.katex-display')].map(
          ({ scrollWidth, clientWidth }) => scrollWidth - clientWidth,
        ),
      );
      seen.push(...cut.map((pixels): [string, number] => [path, pixels]));
    }
    expect(seen.length).toBeGreaterThan(10);
    // Both widths are whole numbers of pixels: they may differ by one for the same width.
    expect(seen.filter(([, pixels]) => pixels > 1)).toEqual([]);
    await page.context().close();
  });

  test('every heading of a text can be pointed to', async () => {
    for (const path of ['worked-examples/it-chuffs/', 'formulas/enclosure/vented-box/', 'api/vent/', 'cautions/']) {
      const { page } = await visit(path);
      await page.locator('.anchor').first().waitFor({ state: 'attached' });
      const without = await page.evaluate(() =>
        [...document.querySelectorAll('article :is(h2, h3)[id]')]
          .filter(({ id, lastElementChild }) => lastElementChild?.getAttribute('href') !== `#${id}`)
          .map(({ id }) => id),
      );
      expect(without, path).toEqual([]);
      await page.locator('h2 .anchor').first().focus();
      await page.keyboard.press('Enter');
      // The address follows the key when the browser has gone there.
      await page.waitForURL(/#./);
      await page.context().close();
    }
  });

  test('the way through a room meets each of its pages once', async () => {
    const { page } = await visit('formulas/');
    for (const room of ['formulas', 'api', 'how-to']) {
      const all = (await pages()).filter(
        (path) => path.startsWith(`${room}/`) && ![`${room}/`, 'api/overview/'].includes(path),
      );
      const next = async (path: string, way: string) => {
        const text = await (await page.request.get(`${address()}${path}`)).text();
        return new RegExp(`<a href="/([^"]+)" rel="${way}">`).exec(text)?.[1];
      };
      const starts: string[] = [];
      for (const path of all) if ((await next(path, 'prev')) === undefined) starts.push(path);
      expect(starts.length, room).toBe(1);
      const met: string[] = [];
      for (let at = starts[0]; at !== undefined && met.length <= all.length; at = await next(at, 'next')) met.push(at);
      expect(met.sort(), room).toEqual(all);
    }
    await page.context().close();
  });
});
