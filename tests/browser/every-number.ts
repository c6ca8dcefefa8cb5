/** Every number in the text of a page, stepped by keys and dragged. A drag waits for the screen most of the time, so that two halves of the pages run side by side. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

/** Milliseconds that a task may take at a quarter of the processor. */
const LONGEST = 50;
/** Moves to the right, and back to the left of the start. */
const MOVES = 12;

/** Drags a number, which changes it, lets it rest, and takes its change back. */
async function drag(page: Page, number: Locator): Promise<void> {
  await number.scrollIntoViewIfNeeded();
  const box = await number.boundingBox();
  if (!box) throw new Error('the number has no box');
  expect(box.height).toBeGreaterThanOrEqual(24);
  const before = await number.innerText();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= MOVES; i++) await page.mouse.move(x + 90 * Math.sin((1.8 * Math.PI * i) / MOVES), y);
  await page.mouse.up();
  // Axes, sentences and tables follow when the hand has rested half a second.
  await page.waitForTimeout(650);
  expect(await number.innerText()).not.toBe(before);
  await page.keyboard.press('Escape');
}

export function judgeNumbers(paths: readonly string[]): void {
  describe.skipIf(!hasBrowser)('every number', () => {
    const { visit, longestTasks } = site();
    describe.each(paths)('/%s', (path) => {
      let page: Page;
      let numbers: Locator[];
      beforeAll(async () => {
        ({ page } = await visit(path === '' ? '' : `${path}/`));
        await page.locator('article[data-live]').waitFor();
        numbers = await page.locator('scrub-number').all();
      });
      afterAll(() => page.context().close());

      test('by keyboard alone, and back to the author', async () => {
        const outputs = () => page.locator('output[data-answer]').allInnerTexts();
        const author = await outputs();
        expect(numbers.length).toBeGreaterThan(0);
        for (const number of numbers) {
          const text = await number.innerText();
          await number.focus();
          expect(await number.getAttribute('role')).toBe('spinbutton');
          for (const key of ['ArrowUp', 'PageUp', 'End', 'Home', 'ArrowUp']) {
            await page.keyboard.press(key);
            const [now, valueText] = [await number.innerText(), await number.getAttribute('aria-valuetext')];
            expect(now).toBe(valueText);
          }
          expect(await number.innerText()).not.toBe(text);
          await expect.poll(outputs).not.toEqual(author);
          await page.keyboard.press('Escape');
          expect(await number.innerText()).toBe(text);
        }
        await expect.poll(outputs).toEqual(author);
        await expect.poll(() => page.locator('[data-said]').innerText(), { timeout: 4000 }).not.toBe('');
      });

      test(`${MOVES} moves of a drag and the rest after it, no long task at a quarter of the processor`, async () => {
        const drags = numbers.map((number) => () => drag(page, number));
        const longest = await longestTasks(page, drags, { limit: LONGEST, count: MOVES });
        for (const [k, number] of numbers.entries())
          expect(longest[k], String(await number.getAttribute('name'))).toBeLessThan(LONGEST);
      });
    });
  });
}
