/** The whole job on a page: a brief as text, faults at their lines, answers from a worker, files to save. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const path = 'worked-examples/quiet-vent/';
const text = readFileSync(new URL('../../packages/airspring/briefs/whale-bench.json', import.meta.url), 'utf8');
const status = (page: Page) => page.locator('brief-desk .status');
const faults = (page: Page) => page.locator('brief-desk [data-faults]');
const answer = (page: Page) => page.locator('[data-part=answer] .answer').first();

describe.skipIf(!hasBrowser)('a brief on a page', () => {
  const { visit, address } = site();
  const edit = async () => {
    const { page } = await visit(path);
    await page.locator('[data-do=edit]').click();
    const area = page.locator('.cm-content');
    await area.waitFor();
    return { page, write: (brief: string) => area.fill(brief) };
  };
  /** What the reader gets who clicks on it. */
  const saved = async (page: Page, what: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator(`[data-save=${what}]`).click()]);
    return readFileSync(await download.path(), 'utf8');
  };

  test('another wish, another answer; report, curves and brief are those of the text', async () => {
    const { page, write } = await edit();
    const before = await answer(page).innerText();
    const changed = text
      .replace('"height": "340 mm"', '"height": "330 mm"')
      .replace('The whale bench', 'A lower bench');
    await write(changed);
    await expect.poll(() => status(page).innerText(), { timeout: 20_000 }).toMatch(/Designed in/);
    expect(await answer(page).innerText()).not.toBe(before);
    expect(await saved(page, 'brief')).toContain('A lower bench');
    expect(await saved(page, 'report')).toContain('A lower bench');
    const [head = '', ...rows] = (await saved(page, 'curves')).trim().split('\n');
    expect(head).toContain('"A: level at 1 m in half space, dB"');
    for (const row of rows) expect(row.split(',')).toHaveLength(head.split('","').length);
    await page.context().close();
  });

  test('faults stand at their lines, all at once; the last good answer stays, marked', async () => {
    const { page, write } = await edit();
    const before = await answer(page).innerText();
    await write(
      text
        .replace('"24 Hz"', '"24 mm"')
        .replace('"depth": "420 mm"', '"depth": "-420 mm"')
        .replace('"bends"', '"bendz"'),
    );
    await expect.poll(() => faults(page).innerText(), { timeout: 20_000 }).toContain('drivers[0].fs');
    const lines = text.split('\n');
    const said = await faults(page).innerText();
    for (const [needle, fault] of [
      ['"fs"', 'drivers[0].fs: got "24 mm"'],
      ['"depth": "420 mm"', 'space.depth: got "-420 mm"'],
      ['"bends"', 'vent.bendz'],
    ] as const) {
      expect(said).toContain(`Line ${lines.findIndex((line) => line.includes(needle)) + 1}: ${fault}`);
    }
    expect(await page.locator('.cm-lint-marker').count()).toBe(3);
    expect(await answer(page).innerText()).toBe(before);
    expect(await page.locator('[data-part=answer]').getAttribute('class')).toContain('stale');
    await page.locator('[data-do=reset]').click();
    await expect.poll(() => status(page).innerText(), { timeout: 20_000 }).toMatch(/Designed in/);
    expect(await page.locator('[data-part=answer]').getAttribute('class')).not.toContain('stale');
    await page.context().close();
  });

  test('what is no JSON is said at its line', async () => {
    const { page, write } = await edit();
    await write(text.replace('"version": 1,', '"version": 1'));
    await expect
      .poll(() => faults(page).innerText(), { timeout: 20_000 })
      .toMatch(/^Line 3: .*expected "," or the closing bracket/);
    await page.context().close();
  });

  test('without script the same files are there', async () => {
    const { page } = await visit(path, { javaScriptEnabled: false });
    for (const [file, start] of [
      ['brief.json', '{'],
      ['report.txt', 'The whale bench'],
      ['curves.csv', '"frequency, Hz"'],
    ]) {
      const got = await page.request.get(`${address()}${path}${file}`);
      expect((await got.text()).startsWith(start as string), file).toBe(true);
    }
    await page.context().close();
  });
});
