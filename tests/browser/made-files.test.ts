/** Pages whose heavy part is made in a worker: it follows the numbers, and so do the files to keep. */
import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

describe.skipIf(!hasBrowser)('files of a page', () => {
  const { visit, address } = site();
  const open = async (path: string) => {
    const visited = await visit(path);
    await visited.page.locator('article[data-live]').waitFor();
    return visited;
  };
  const press = async (page: Page, name: string, keys: readonly string[]) => {
    await page.locator(`scrub-number[name=${name}]`).focus();
    for (const key of keys) await page.keyboard.press(key);
  };
  const saved = async (page: Page, file: string): Promise<Buffer> => {
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 60_000 }),
      page.locator(`[data-made="${file}"]`).first().click(),
    ]);
    expect(download.suggestedFilename()).toBe(file);
    return readFileSync(await download.path());
  };
  const beside = async (page: Page, path: string) => (await page.request.get(`${address()}${path}`)).body();

  test('a lower printer makes more pieces, on the page and in its files', async () => {
    const path = 'worked-examples/print-the-vent/';
    const { page, complaints, requests } = await open(path);
    const pieces = page.locator('[data-answer=pieces]').first();
    expect(await pieces.innerText()).toBe('two pieces');
    const author = await beside(page, `${path}vent.3mf`);
    expect(Buffer.compare(await saved(page, 'vent.3mf'), author)).toBe(0);
    expect(requests.filter((url) => url.includes('page-worker'))).toEqual([]);
    const picture = await page.locator('[data-picture=pieces]').innerHTML();
    await press(page, 'height', Array(6).fill('ArrowDown'));
    await expect.poll(() => pieces.innerText(), { timeout: 30_000 }).toBe('three pieces');
    await expect.poll(() => page.locator('article .stale').count(), { timeout: 30_000 }).toBe(0);
    expect(await page.locator('[data-picture=pieces]').innerHTML()).not.toBe(picture);
    const model = (bytes: Uint8Array) => new TextDecoder().decode(unzipSync(bytes)['3D/3dmodel.model']);
    expect(model(author).match(/<object /g)).toHaveLength(2);
    expect(model(await saved(page, 'vent.3mf')).match(/<object /g)).toHaveLength(3);
    expect(await page.locator('[data-making]').innerText()).toContain('vent.3mf is made');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test('the worker makes the bytes of the build: a saw cut does not change the cut list', async () => {
    const path = 'worked-examples/cut-the-box/';
    const { page } = await open(path);
    const dust = page.locator('[data-answer=dust]');
    const before = await dust.innerText();
    await press(page, 'kerf', ['ArrowUp', 'ArrowUp']);
    await expect.poll(() => dust.innerText(), { timeout: 30_000 }).not.toBe(before);
    expect((await saved(page, 'cut-list.csv')).toString()).toBe((await beside(page, `${path}cut-list.csv`)).toString());
    await press(page, 'sheet', Array(3).fill('PageDown'));
    await expect
      .poll(() => page.locator('[data-answer=sheets]').first().innerText(), { timeout: 30_000 })
      .toBe('two sheets');
    expect(await page.locator('[data-picture=sheets] .wide').count()).toBe(2);
    await page.context().close();
  });
});
