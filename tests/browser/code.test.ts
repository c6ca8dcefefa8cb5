/** Code on the page: edited, and broken in each way it can be; `times.test.ts` runs it as it is. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const pinned = readFileSync(
  new URL('../../docs-site/examples/printed/wider-vent-in-short.txt', import.meta.url),
  'utf8',
);
const printed = (page: Page) => page.locator('runnable-example [data-printed]');
const faults = (page: Page) => page.locator('runnable-example [data-faults]');

describe.skipIf(!hasBrowser)('code on the page', () => {
  const { visit } = site();
  const edit = async () => {
    const { page, requests } = await visit('worked-examples/wider-vent/');
    await page.locator('[data-do=edit]').click();
    const area = page.locator('.cm-content');
    await area.waitFor();
    const write = async (code: string) => {
      await area.fill(code);
      await page.locator('[data-do=run]').click();
    };
    return { page, write, requests };
  };

  test('what is edited runs; reset brings the author back', async () => {
    const { page, write } = await edit();
    await write(
      "import { read as get } from '@airspring/core/quantity';\nconst v: number = get('length', '2 in');\nconsole.log('half', v / 2);",
    );
    await expect.poll(() => printed(page).innerText()).toBe('half 0.0254');
    await page.locator('[data-do=reset]').click();
    await expect.poll(() => printed(page).innerText()).toBe(pinned);
    await page.context().close();
  });

  test.each([
    ['broken words', 'const a = 1;\nconst = 2;\n', 'Line 2: ', 'Unexpected'],
    [
      'a throw',
      "const a = 1;\nconsole.log(a);\nthrow new RangeError('too wide');\n",
      'Line 3: ',
      'RangeError: too wide',
    ],
    [
      'a name that a module lacks',
      "const a = 1;\nimport { cutof } from '@airspring/core/response';\nconsole.log(a, cutof);\n",
      'Line 2: ',
      "'@airspring/core/response' has no 'cutof'",
    ],
    [
      'an unknown module',
      "const a = 1;\nimport { x } from 'nowhere';\nconsole.log(a, x);\n",
      'Line 2: ',
      "There is no module 'nowhere' here. There are @airspring/core/air",
    ],
    [
      'input that the library refuses',
      "import { lengthForTuning } from '@airspring/core/vent';\nlengthForTuning({\n  vent: { diameter: '75 mm' },\n  netVolume: '40 L',\n  fb: '40 mm' as never,\n});\n",
      'Line 5: ',
      'fb: got 40 mm, expected a number',
    ],
    ['a loop without an end', 'let n = 0;\nfor (;;) n++;\n', 'Line 2: ', 'Stopped after 2 s'],
    [
      'something else without an end',
      'let n = 0;\nconst ever = { [Symbol.iterator]: () => ({ next: () => ({ value: 1 }) }) };\nfor (const one of ever) n += one;\n',
      'Somewhere in this text: ',
      'stopped after 2 s',
    ],
  ])('%s is said at its line; the last good answer stays, marked; the page lives', async (_, code, line, words) => {
    const { page, write } = await edit();
    await write(code);
    await expect.poll(() => faults(page).innerText(), { timeout: 20_000 }).toContain(line);
    expect(await faults(page).innerText()).toContain(words);
    if (line.startsWith('Line'))
      expect(await page.locator('.cm-lintRange, .cm-lint-marker').count()).toBeGreaterThan(0);
    expect(await printed(page).evaluate((element) => element.textContent)).toBe(pinned);
    expect(await printed(page).getAttribute('class')).toContain('stale');
    expect(await page.locator('runnable-example [data-head]').innerText()).toContain('last code that ran');
    await write("console.log('alive');");
    await expect.poll(() => printed(page).innerText()).toBe('alive');
    expect(await faults(page).isVisible()).toBe(false);
    await page.context().close();
  });

  test('Escape and Tab leave the editor', async () => {
    const { page } = await edit();
    await page.locator('.cm-content').focus();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('.cm-editor') === null)).toBe(true);
    await page.context().close();
  });
});
