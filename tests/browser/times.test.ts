/** What a reader waits for at the code of a page and at the desk of a brief, on the clock of the wall, as on the machine for which it is stated. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const text = readFileSync(new URL('../../packages/airspring/briefs/whale-bench.json', import.meta.url), 'utf8');
const pinned = readFileSync(
  new URL('../../docs-site/examples/printed/wider-vent-in-short.txt', import.meta.url),
  'utf8',
);
const status = (page: Page) => page.locator('brief-desk .status');
const area = (page: Page) => page.locator('.cm-content');
const designed = (page: Page) =>
  expect.poll(() => status(page).innerText(), { timeout: 20_000 }).toMatch(/Designed in/);

describe.skipIf(!hasBrowser)('a reader waits', () => {
  const { visit, stated } = site();
  const edit = async (path: string) => {
    const visited = await visit(path);
    await visited.page.locator('[data-do=edit]').click();
    await area(visited.page).waitFor();
    return visited;
  };

  test('for code: it runs within half a second, and prints what is pinned', async () => {
    const times: number[] = [];
    // Each time the first run of a new page. What else the machine does only adds to a time: one of three may be free of it.
    while (times.length < 3 && !times.some((time) => time < 500)) {
      const { page } = await visit('worked-examples/wider-vent/');
      await page.locator('runnable-example [data-printed]').evaluate((element) => element.replaceChildren());
      await page.locator('[data-do=run]').click();
      await expect
        .poll(() => page.locator('runnable-example .status').innerText(), { timeout: 20_000 })
        .toMatch(/^Ran in/);
      expect(await page.locator('runnable-example [data-printed]').evaluate((element) => element.textContent)).toBe(
        pinned,
      );
      times.push(stated(Number(/\d+/.exec(await page.locator('runnable-example .status').innerText())?.[0])));
      await page.context().close();
    }
    expect(Math.min(...times), times.join(', ')).toBeLessThan(500);
  });

  test('for a brief: the worker finds what the build found, in less than 0.7 s', async () => {
    const { page } = await visit('worked-examples/quiet-vent/');
    const before = await page.locator('[data-part=answer]').innerHTML();
    const times: number[] = [];
    // Each run has a new worker. What else the machine does only adds to a time: one of five may be free of it.
    while (times.length < 5 && !times.some((time) => time <= 0.7)) {
      await page.locator('[data-do=run]').click();
      await designed(page);
      expect(await page.locator('[data-part=answer]').innerHTML()).toBe(before);
      times.push(stated(Number(/Designed in ([\d.]+) s/.exec(await status(page).innerText())?.[1])));
    }
    expect(Math.min(...times), times.join(', ')).toBeLessThanOrEqual(0.7);
    await page.context().close();
  });

  test('for an edit: it has its answer within 1.2 s', async () => {
    const { page } = await edit('worked-examples/quiet-vent/');
    const times: number[] = [];
    // What else the machine does only adds to a time: one of three may be free of it.
    for (const height of ['331', '332', '333']) {
      const from = Date.now();
      await area(page).fill(text.replace('"height": "340 mm"', `"height": "${height} mm"`));
      await page.waitForFunction(() => document.querySelector('.status')?.textContent === 'Designing …');
      await page.waitForFunction(() => document.querySelector('.status')?.textContent?.startsWith('Designed'));
      times.push(stated(Date.now() - from));
    }
    expect(Math.min(...times), times.join(', ')).toBeLessThan(1200);
    await page.context().close();
  });

  test('for a box that stands: the worker says what the build said, in less than 0.7 s', async () => {
    const { page } = await edit('worked-examples/it-chuffs/');
    const before = await page.locator('[data-part=answer]').innerText();
    const times: number[] = [];
    // What else the machine does only adds to a time: one of five may be free of it.
    while (times.length < 5 && !times.some((time) => time <= 0.7)) {
      await page.locator('[data-do=run]').click();
      await designed(page);
      expect(await page.locator('[data-part=answer]').innerText()).toBe(before);
      times.push(stated(Number(/Designed in ([\d.]+) s/.exec(await status(page).innerText())?.[1])));
    }
    expect(Math.min(...times), times.join(', ')).toBeLessThanOrEqual(0.7);
    await page.context().close();
  });
});
