/** Numbers in the text that are typed, and what follows them; `every-number.ts` steps and drags every one. */
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

describe.skipIf(!hasBrowser)('numbers in the text', () => {
  const { visit } = site();
  const open = async (path: string) => {
    const visited = await visit(path === '' ? '' : `${path}/`);
    await visited.page.locator('article[data-live]').waitFor();
    return visited;
  };

  test('what is typed outside the range, or is no number, is said and stays; Escape goes back one step, then to the author', async () => {
    const { page } = await visit('worked-examples/wider-vent/');
    await page.locator('[data-live]').waitFor();
    const number = page.locator('scrub-number').first();
    await number.focus();
    const author = await number.innerText();
    for (const [typed, words] of [
      ['500 mm', '500 mm is outside what this page computes'],
      ['abc', 'abc'],
    ] as const) {
      await page.keyboard.press('Enter');
      await page.locator('.scrub-field').fill(typed);
      await page.keyboard.press('Tab');
      expect(await page.locator('.scrub-fault').innerText()).toContain(words);
      await page.locator('.scrub-field').focus();
      await page.keyboard.press('Escape');
      expect(await number.innerText()).toBe(author);
    }
    await page.keyboard.press('ArrowUp');
    const stepped = await number.innerText();
    await number.evaluate((element) => (element as HTMLElement).blur());
    await number.focus();
    await page.keyboard.press('PageUp');
    await page.keyboard.press('Escape');
    expect(await number.innerText()).toBe(stepped);
    await page.keyboard.press('Escape');
    expect(await number.innerText()).toBe(author);
    await page.context().close();
  });

  test('a number carries its proof: formula, inputs as they are now, what the checks found', async () => {
    const { page } = await visit('worked-examples/wider-vent/');
    await page.locator('[data-live]').waitFor();
    await page.locator('scrub-number').first().focus();
    await page.keyboard.press('ArrowUp');
    await page.locator('button.proof').first().click();
    const proof = page.locator('#proof-length');
    await expect.poll(() => proof.isVisible()).toBe(true);
    const text = (await proof.innerText()).replaceAll('\u00a0', ' ');
    expect(text).toContain('lengthForTuning');
    expect(text).toContain(`vent ${(await page.locator('scrub-number').first().innerText()).replace('\u00a0', ' ')}`);
    expect(text).toMatch(/\d+ checks?: .*(read in print|recomputed independently)/);
    expect(text).toMatch(/Worst deviation on \d{4}-/);
    expect(await proof.locator('math').count()).toBe(3);
    for (const width of [390, 1100]) {
      await page.setViewportSize({ width, height: 900 });
      expect(
        await proof
          .locator('.proof-line')
          .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length),
        `at ${width} px`,
      ).toBe(0);
    }
    await page.keyboard.press('Escape');
    expect(await proof.isVisible()).toBe(false);
    await page.context().close();
  });

  test('a range of a driver without a sheet carries its proof', async () => {
    const { page, complaints } = await visit('worked-examples/no-sheet/');
    for (const i of [0, 1]) {
      await page.locator('.answer button.proof').nth(i).click();
      const proof = page.locator('#proof-lossyVentedImpedance');
      await expect.poll(() => proof.isVisible()).toBe(true);
      expect(await proof.innerText()).toMatch(/Worst deviation on \d{4}-/);
      // The whole of it is in sight, or scrolls.
      expect((await proof.boundingBox())?.y).toBeGreaterThanOrEqual(0);
      await page.keyboard.press('Escape');
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test('Tab reaches every number, button and link of the page', async () => {
    const { page } = await open('worked-examples/wider-vent');
    const reached = new Set<string>();
    for (let i = 0; i < 80; i++) {
      await page.keyboard.press('Tab');
      reached.add(
        await page.evaluate(() => {
          const at = document.activeElement as HTMLElement;
          return `${at.tagName} ${at.getAttribute('name') ?? at.textContent?.trim().slice(0, 24)}`;
        }),
      );
    }
    for (const wanted of [
      'SCRUB-NUMBER diameter',
      'SCRUB-NUMBER fb',
      'SCRUB-NUMBER netVolume',
      'BUTTON Run',
      'BUTTON Edit',
      'BUTTON Search',
    ])
      expect([...reached]).toContain(wanted);
    await page.context().close();
  });

  test('a value is typed with its unit, in any unit; what cannot be read is said', async () => {
    const { page } = await open('worked-examples/wider-vent');
    const number = page.locator('scrub-number[name=diameter]');
    await number.focus();
    await page.keyboard.press('Enter');
    const field = page.locator('.scrub-field');
    await field.fill('wide');
    await field.press('Enter');
    expect(await page.locator('.scrub-fault').innerText()).toContain('expected a number, one space, and one of m, mm');
    await field.fill('4 in');
    await field.press('Enter');
    expect((await number.innerText()).replace(/\s/g, ' ')).toBe('102 mm');
    await expect.poll(() => page.locator('output[data-answer=fits]').first().innerText()).toBe('does not fit');
    await page.context().close();
  });

  test('lines move, the axes follow when the hand rests, and a ghost stays', async () => {
    const { page } = await open('worked-examples/wider-vent');
    const line = page.locator('[data-figure=length] .wide [data-trace=length]');
    const before = await line.getAttribute('d');
    await page.locator('scrub-number[name=netVolume]').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => line.getAttribute('d')).not.toBe(before);
    const ghost = page.locator('[data-figure=length] .wide .ghost');
    expect(await ghost.getAttribute('d')).toBe(before);
    await expect.poll(() => ghost.getAttribute('d'), { timeout: 4000 }).not.toBe(before);
    const sentence = await page.locator('[data-figure=length] .wide > svg').getAttribute('aria-label');
    expect(await page.locator('[data-figure=length] [data-label]').innerText()).toBe(sentence);
    await page.context().close();
  });
});
