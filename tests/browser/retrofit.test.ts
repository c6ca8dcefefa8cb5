/** A box that stands, on its page: what to print first, rows that open, and the brief at its desk. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const path = 'worked-examples/it-chuffs/';
const read = (name: string) =>
  readFileSync(new URL(`../../packages/airspring/briefs/${name}.json`, import.meta.url), 'utf8');
const [text, whale] = [read('old-thunder-box'), read('whale-bench')];
const status = (page: Page) => page.locator('brief-desk .status');
const top = (page: Page) => page.locator('[data-part=answer] .answer').first();
const plain = (words: string) => words.replaceAll('\u00a0', ' ');
const designed = (page: Page) =>
  expect.poll(() => status(page).innerText(), { timeout: 20_000 }).toMatch(/Designed in/);

describe.skipIf(!hasBrowser)('a box that stands, on its page', () => {
  const { visit, address } = site();
  const edit = async () => {
    const visited = await visit(path);
    await visited.page.locator('[data-do=edit]').click();
    const area = visited.page.locator('.cm-content');
    await area.waitFor();
    return { ...visited, write: (brief: string) => area.fill(brief) };
  };
  const saved = async (page: Page, what: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator(`[data-save=${what}]`).click()]);
    return readFileSync(await download.path(), 'utf8');
  };

  test('without script the first screen says what to print and what that changes; a row opens; files are there', async () => {
    const { page } = await visit(path, { javaScriptEnabled: false });
    expect(plain(await top(page).innerText())).toMatch(/^Print this first: a tube of \d+ mm inner/);
    const box = await page.locator('[data-part=answer] .answer').nth(1).boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(900);
    const row = page.locator('table.changes tbody.chosen details');
    expect(await row.locator('li').first().isVisible()).toBe(false);
    await row.locator('summary').click();
    expect(await row.locator('li').first().isVisible()).toBe(true);
    for (const [file, start] of [
      ['brief.json', '{'],
      ['report.txt', 'The old thunder box'],
      ['changes.csv', '"change"'],
      ['tubes.csv', '"tube","length, m"'],
      ['page.html', '<!doctype html>'],
    ]) {
      const got = await page.request.get(`${address()}${path}${file}`);
      expect((await got.text()).startsWith(start as string), file).toBe(true);
    }
    await page.context().close();
  });

  test('another wish, another answer; every file is that of the text', async () => {
    const { page, write } = await edit();
    const before = await top(page).innerText();
    await write(text.replace('["57 mm", "76 mm"]', '[]').replace('"146 mm"', '"52 mm"').replace('The old', 'An odd'));
    await designed(page);
    expect(await top(page).innerText()).not.toBe(before);
    for (const what of ['brief', 'report', 'page']) expect(await saved(page, what)).toContain('An odd thunder box');
    expect(await saved(page, 'changes')).toContain('"as it is"');
    expect(await page.locator('[data-save=changes]').getAttribute('download')).toBe('an-odd-thunder-box-changes.csv');
    await page.context().close();
  });

  test('faults stand at their lines; the last good answer stays, marked', async () => {
    const { page, write } = await edit();
    const before = await top(page).innerText();
    await write(text.replace('"air": "22 L"', '"air": "22 mm"').replace('"hole": "50 mm"', '"hole": "500 mm"'));
    const faults = page.locator('brief-desk [data-faults]');
    await expect.poll(() => faults.innerText(), { timeout: 20_000 }).toContain('standing.air');
    const line = text.split('\n').findIndex((each) => each.includes('"air"')) + 1;
    expect(await faults.innerText()).toContain(`Line ${line}: standing.air: got "22 mm"`);
    expect(await top(page).innerText()).toBe(before);
    expect(await page.locator('[data-part=answer]').getAttribute('class')).toContain('stale');
    expect(await page.locator('[data-file=report] [data-stale]').isVisible()).toBe(true);
    await page.locator('[data-do=reset]').click();
    await designed(page);
    expect(await page.locator('[data-part=answer]').getAttribute('class')).not.toContain('stale');
    await page.context().close();
  });

  test('the desk takes the other sort of brief, and each page keeps its own', async () => {
    const { page, write } = await edit();
    await write(whale);
    await designed(page);
    expect(await top(page).innerText()).toMatch(/^It fits/);
    expect(await page.locator('[data-save=curves]').isVisible()).toBe(true);
    expect(await page.locator('[data-save=changes]').isVisible()).toBe(false);
    await page.goto(`${address()}worked-examples/quiet-vent/`);
    expect(await page.locator('[data-do=edit]').isVisible()).toBe(true);
    await page.goto(`${address()}${path}`);
    await designed(page);
    expect(await top(page).innerText()).toMatch(/^It fits/);
    await page.context().close();
  });

  test('by keyboard alone a row opens its steps', async () => {
    const { page } = await visit(path);
    await page.locator('table.changes tbody.chosen summary').focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('tbody.chosen li').first().isVisible()).toBe(true);
    await page.context().close();
  });

  test('prints the sheet for the workshop, with a drawing of each set of tubes', async () => {
    const { page } = await visit(path);
    await page.emulateMedia({ media: 'print' });
    // A4 within margins of 14 mm.
    await page.setViewportSize({ width: 688, height: 1000 });
    expect(await page.locator('.sheets').innerText()).toContain('Print this first');
    expect(await page.locator('h1').isVisible()).toBe(false);
    const drawn = await page.locator('.sheets svg.tubes').all();
    expect(drawn.length).toBe(3);
    for (const drawing of drawn) {
      expect(await drawing.isVisible()).toBe(true);
      expect((await drawing.boundingBox())?.height).toBeLessThan(1017);
    }
    // What to do and the first set take two pages, and each further set takes one at most.
    expect((await page.locator('.sheets').boundingBox())?.height).toBeLessThan((1 + drawn.length) * 1017);
    await page.context().close();
  });
});
