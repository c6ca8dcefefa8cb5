/** The search finds words and symbols. */
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

describe.skipIf(!hasBrowser)('search', () => {
  const { visit } = site();

  test.each(['f3', 'Qts', 'fb', 'impedance', 'end correction'])('finds %s', async (words) => {
    const { page, complaints } = await visit('');
    await page.keyboard.press('/');
    await page.locator('dialog input').fill(words);
    await expect.poll(() => page.locator('dialog ol a').count(), { timeout: 5000 }).toBeGreaterThan(0);
    const [href] = await page
      .locator('dialog ol a')
      .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href));
    expect((await page.request.get((href as string).split('#')[0] as string)).status()).toBe(200);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test.each([
    ['port noise', ''],
    ['how long should the port be', 'Why must a wider vent be longer?'],
    ['sealed box size', 'How small can the box be?'],
  ])('answers %s with a worked example first, and no equation in what it shows', async (words, title) => {
    const { page, complaints } = await visit('');
    await page.keyboard.press('/');
    await page.locator('dialog input').fill(words);
    await expect.poll(() => page.locator('dialog ol a').count(), { timeout: 5000 }).toBeGreaterThan(0);
    const first = page.locator('dialog ol a').first();
    expect(await first.getAttribute('href')).toMatch(/^\/worked-examples\//);
    expect(await first.innerText()).toContain(title);
    expect(await page.locator('dialog ol').innerText()).not.toMatch(/\\frac|\$\$|√.*√/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
