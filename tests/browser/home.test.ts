/** The front page: what this is, where to begin, and a bench whose vent bends under the hand. */
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

describe.skipIf(!hasBrowser)('the front page', () => {
  const { visit, longestTask } = site();

  test('weighs less than 150 kB with its drawing', async () => {
    const { page } = await visit('');
    await page.locator('article[data-live]').waitFor();
    const bytes = await page.evaluate(() =>
      [...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')].reduce(
        (sum, entry) => sum + (entry as PerformanceResourceTiming).decodedBodySize,
        0,
      ),
    );
    // The model comes when the number is touched.
    expect(bytes).toBeGreaterThan(50_000);
    expect(bytes).toBeLessThan(150_000);
    await page.context().close();
  });

  test('on the first screen stand what it is, where to begin, and the bench', async () => {
    const { page } = await visit('', { javaScriptEnabled: false });
    const bottom = async (what: string) => {
      const box = await page.locator(what).first().boundingBox();
      return (box?.y ?? 0) + (box?.height ?? Number.POSITIVE_INFINITY);
    };
    expect(await bottom('.begin a')).toBeLessThan(450);
    expect((await page.locator('[data-picture=bench] svg').boundingBox())?.y).toBeLessThan(700);
    expect(await page.locator('.doors h2').allInnerTexts()).toEqual(['You build', 'You teach', 'You audit']);
    expect(await page.locator('[data-scripted]').isVisible()).toBe(false);
    await page.context().close();
  });

  test('the tube bends, the verdict turns, and the drawing says the same aloud', async () => {
    const { page } = await visit('');
    await page.locator('article[data-live]').waitFor();
    const number = page.locator('scrub-number');
    const verdict = page.locator('output[data-answer=verdict]');
    const tube = page.locator('.bench-drawing .skin');
    const author = await tube.getAttribute('d');
    expect(await verdict.innerText()).toMatch(/^Yes/);
    await number.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => verdict.innerText()).toContain('too fast');
    expect((await tube.getAttribute('d'))?.split('L').length).toBe(2);
    await page.keyboard.press('End');
    await expect.poll(() => verdict.innerText()).toContain('does not fit');
    expect(await page.locator('.bench-drawing .vent-out').count()).toBe(1);
    expect(await page.locator('.bench-drawing').getAttribute('aria-label')).toContain('does not fit');
    await page.keyboard.press('Escape');
    await expect.poll(() => tube.getAttribute('d')).toBe(author);
    await page.context().close();
  });

  test('200 moves of a drag, and no task over 50 ms at a quarter of the processor', async () => {
    const { page } = await visit('');
    await page.locator('article[data-live]').waitFor();
    const box = await page.locator('scrub-number').boundingBox();
    const [x, y] = [(box?.x ?? 0) + 20, (box?.y ?? 0) + 12];
    const longest = await longestTask(page, async () => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let i = 0; i < 200; i++) await page.mouse.move(x + 90 * Math.sin(i / 12), y);
      await page.mouse.up();
    });
    expect(longest).toBeLessThan(50);
    await page.context().close();
  });
});
