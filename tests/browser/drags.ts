/** Numbers in the text that are dragged. A drag waits for the screen most of the time, so that two halves of the pages run side by side. */
import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
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

export function judgeDrags(paths: readonly string[]): void {
  describe.skipIf(!hasBrowser)('a drag', () => {
    const { visit, longestTasks } = site();
    test.each(paths)(
      `%s: ${MOVES} moves of every number and its rest, no long task at a quarter of the processor`,
      async (path) => {
        const { page } = await visit(path === '' ? '' : `${path}/`);
        await page.locator('article[data-live]').waitFor();
        const numbers = await page.locator('scrub-number').all();
        const drags = numbers.map((number) => () => drag(page, number));
        const longest = await longestTasks(page, drags, { limit: LONGEST, count: MOVES });
        for (const [k, number] of numbers.entries())
          expect(longest[k], String(await number.getAttribute('name'))).toBeLessThan(LONGEST);
        await page.context().close();
      },
    );
  });
}
