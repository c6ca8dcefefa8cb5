/** Curves below each other over one axis: a line follows the pointer, the finger or the slider, and each curve is read there. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const figures = [
  ['worked-examples/quiet-vent/', 'Hz'],
  ['worked-examples/it-chuffs/', 'mm'],
  ['worked-examples/deeper-or-louder/', 'Hz'],
  ['worked-examples/one-or-two/', 'Hz'],
] as const;
const read = (page: Page) => page.locator('svg.sweep:visible [data-read]').allTextContents();

describe.skipIf(!hasBrowser)('curves over one axis', () => {
  const { visit, longestTask } = site();
  const open = async (path: string, options = {}) => {
    const { page } = await visit(path, options);
    const figure = page.locator('sweep-figure').first();
    await figure.locator('input[type=range]').waitFor();
    await figure.scrollIntoViewIfNeeded();
    const box = await figure.locator('svg.sweep:visible').boundingBox();
    if (!box) throw new Error('the figure is not seen');
    return { page, figure, box };
  };

  test.each(figures)('%s: every panel is read where the pointer is, and by the slider', async (path, unit) => {
    const { page, figure, box } = await open(path);
    expect(new Set(await read(page))).toEqual(new Set(['']));
    await page.mouse.move(box.x + 0.4 * box.width, box.y + box.height / 2);
    await expect
      .poll(async () => (await figure.locator('svg.sweep:visible [data-read]').allTextContents()).every(Boolean))
      .toBe(true);
    const before = await figure.locator('svg.sweep:visible [data-read]').allTextContents();
    expect(await figure.locator('svg.sweep:visible [data-tone]').textContent()).toMatch(
      new RegExp(`^[\\d.]+ ${unit}$`),
    );
    const slider = figure.locator('input[type=range]');
    expect(await slider.getAttribute('aria-label')).toBeTruthy();
    await slider.focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => figure.locator('svg.sweep:visible [data-read]').allTextContents()).not.toEqual(before);
    await expect
      .poll(async () => {
        const said = (await slider.getAttribute('aria-valuetext')) ?? '';
        const words = await figure.locator('svg.sweep:visible [data-read]').allTextContents();
        return words.every((word) => said.includes(word));
      })
      .toBe(true);
    await page.context().close();
  });

  test('a tube of a proposed length reads what the table of tubes says', async () => {
    const { page, figure, box } = await open('worked-examples/it-chuffs/');
    const row = page.locator('table.tubes tbody tr').first();
    const [, length] = /^T1,\s(\d+)/.exec(await row.locator('th').innerText()) ?? [];
    const [, reach, level, air] = (await row.locator('td').allInnerTexts()).map(Number);
    const svg = figure.locator('svg.sweep:visible');
    const { first, last, left, width } = await svg.evaluate((element) => ({ ...(element as SVGElement).dataset }));
    const share = Math.log(Number(length) / Number(first)) / Math.log(Number(last) / Number(first));
    await page.mouse.move(box.x + Number(left) + share * Number(width), box.y + 100);
    const texts = async () => (await figure.locator('svg.sweep:visible [data-read]').allTextContents()).join(' | ');
    await expect.poll(texts).not.toBe('');
    const values = [...(await texts()).matchAll(/\d+\.\d+/g)].map(([value]) => Number(value));
    for (const [i, want] of [
      [1, reach],
      [2, level],
      [3, air],
    ] as const)
      expect(Math.abs((values[i] ?? 0) - (want ?? Number.NaN))).toBeLessThan(0.35);
    expect(await texts()).toContain('measure first');
    await page.context().close();
  });

  test.each(figures)(
    '%s: 200 moves over the curves, and no task over 50 ms at a quarter of the processor',
    async (path) => {
      const { page, box } = await open(path);
      const longest = await longestTask(page, async () => {
        for (let i = 0; i < 200; i++)
          await page.mouse.move(box.x + box.width * (0.5 + 0.4 * Math.sin(i / 12)), box.y + box.height / 2);
      });
      expect(longest).toBeLessThan(50);
      await page.context().close();
    },
  );

  test('curves follow a number, grey ones stay where they were, and the reading follows', async () => {
    const { page, figure, box } = await open('worked-examples/deeper-or-louder/');
    await page.locator('[data-live]').waitFor();
    await page.mouse.move(box.x + 0.4 * box.width, box.y + box.height / 2);
    const readings = () => figure.locator('svg.sweep:visible [data-read]').allTextContents();
    await expect.poll(async () => (await readings()).every(Boolean)).toBe(true);
    const before = await readings();
    const bold = figure.locator('.wide [data-panel=level] [data-line=low]');
    const author = await bold.getAttribute('d');
    await page.locator('scrub-number[name=netVolume]').focus();
    await page.keyboard.press('Home');
    await expect.poll(readings).not.toEqual(before);
    expect(await bold.getAttribute('d')).not.toBe(author);
    // The axes may have followed; the author's curve is still there.
    expect(await figure.locator('.wide [data-panel=level] .ghost').count()).toBe(3);
    await page.context().close();
  });
});
