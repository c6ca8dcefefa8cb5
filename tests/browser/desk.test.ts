/** The desk of a brief: edited in view of its answer, kept, opened, handed on, printed. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';

const path = 'worked-examples/quiet-vent/';
const text = readFileSync(new URL('../../packages/airspring/briefs/whale-bench.json', import.meta.url), 'utf8');
const lower = text.replace('"height": "340 mm"', '"height": "330 mm"').replace('The whale bench', 'A lower bench');
const broken = text.replace('"24 Hz"', '"24 mm"');
const status = (page: Page) => page.locator('brief-desk .status');
const verdict = (page: Page) => page.locator('brief-desk .verdict');
const area = (page: Page) => page.locator('.cm-content');
const designed = (page: Page) =>
  expect.poll(() => status(page).innerText(), { timeout: 30_000 }).toMatch(/Designed in/);
const open = (page: Page, name: string, body: string | Buffer, mimeType = 'application/json') =>
  page.locator('[data-open]').setInputFiles({ name, mimeType, buffer: Buffer.from(body) });

describe.skipIf(!hasBrowser)('the desk of a brief', () => {
  const { visit, address, longestTask } = site();
  const edit = async () => {
    const visited = await visit(path);
    await visited.page.locator('[data-do=edit]').click();
    await area(visited.page).waitFor();
    return visited;
  };

  test('verdict, status and changed numbers stay in view while the end of the brief is edited', async () => {
    const { page } = await edit();
    const editor = await page.locator('.cm-editor').boundingBox();
    expect(editor?.height).toBeLessThan(620);
    await page.keyboard.press('Control+End');
    await area(page).fill(lower);
    await designed(page);
    await page.evaluate(() => document.querySelector('.cm-editor')?.scrollIntoView({ block: 'end' }));
    const box = await verdict(page).boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(900);
    expect(await verdict(page).locator('mark').count()).toBeGreaterThan(0);
    expect(await page.locator('[data-part=answer] mark').count()).toBeGreaterThan(0);
    await page.context().close();
  });

  test('a dip that was measured is compared with the box that was built', async () => {
    const { page } = await visit(path);
    const built = page.locator('built-box');
    await built.locator('select').selectOption('B');
    await built.locator('input').fill('36');
    expect(await built.locator('output').innerText()).toMatch(
      /^That is \d+\s% above .* acts \d+\smm too short would explain it/,
    );
    await built.locator('input').fill('');
    expect(await built.locator('output').innerText()).toBe('');
    await page.context().close();
  });

  test('a reload finds the brief as it was left; the way back is a word', async () => {
    const { page } = await edit();
    await area(page).fill(lower);
    await designed(page);
    await page.reload();
    await designed(page);
    expect(await area(page).innerText()).toContain('A lower bench');
    expect(await page.locator('[data-save=report]').getAttribute('download')).toBe('a-lower-bench-report.txt');
    await page.locator('[data-do=reset]').click();
    await designed(page);
    await page.reload();
    expect(await page.locator('[data-do=edit]').isVisible()).toBe(true);
    await page.context().close();
  });

  test('a link holds the brief; one that is cut off leaves the page alive and says so', async () => {
    const { page } = await edit();
    await area(page).fill(lower);
    await designed(page);
    await page.locator('[data-do=link]').click();
    await expect.poll(() => page.url()).toContain('#brief=');
    const link = page.url();
    const other = await visit(path + new URL(link).hash);
    await designed(other.page);
    expect(await area(other.page).innerText()).toContain('A lower bench');
    const cut = await visit(path + new URL(link).hash.slice(0, 150));
    await expect.poll(() => status(cut.page).innerText()).toContain('cut off or damaged');
    await cut.page.locator('[data-do=edit]').click();
    await area(cut.page).fill(lower);
    await designed(cut.page);
    expect(cut.complaints).toEqual([]);
    for (const each of [page, other.page, cut.page]) await each.context().close();
  });

  test('a saved brief is opened; a picture and another version are refused, the answer before is marked', async () => {
    const { page, complaints } = await visit(path);
    await open(page, 'bench.json', lower);
    await designed(page);
    expect(await area(page).innerText()).toContain('A lower bench');
    await open(page, 'whale.png', Buffer.from([137, 80, 78, 71, 0, 255]), 'image/png');
    await expect.poll(() => status(page).innerText()).toContain('whale.png is not a brief');
    expect(await area(page).innerText()).toContain('A lower bench');
    await open(page, 'next.json', text.replace('"version": 1', '"version": 2'));
    await expect.poll(() => page.locator('[data-faults]').innerText(), { timeout: 20_000 }).toContain('version');
    expect(await page.locator('[data-part=answer]').getAttribute('class')).toContain('stale');
    await open(page, 'next.json', 'null');
    await expect.poll(() => status(page).innerText(), { timeout: 20_000 }).toContain('cannot be read');
    await open(page, 'bench.json', lower);
    await designed(page);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test('with a faulty brief the files that belong to the brief before say so', async () => {
    const { page } = await edit();
    const notes = page.locator('.files [data-stale]:visible');
    expect(await notes.count()).toBe(0);
    await area(page).fill(broken);
    await expect.poll(() => page.locator('[data-faults]').innerText(), { timeout: 20_000 }).toContain('drivers[0].fs');
    expect(await notes.allInnerTexts()).toEqual(Array(3).fill(' (of the previous brief)'));
    expect(await verdict(page).innerText()).toContain('answer below is for the previous version');
    await page.context().close();
  });

  test('the nearest brief is applied at a word', async () => {
    const { page } = await edit();
    await area(page).fill(text.replace('"92 dB"', '"112 dB"'));
    await designed(page);
    expect(await verdict(page).innerText()).toContain('No box meets this brief');
    await page.locator('[data-do=nearest]').click();
    await expect.poll(() => verdict(page).innerText(), { timeout: 30_000 }).not.toContain('No box');
    await designed(page);
    expect(await page.locator('#answer').innerText()).not.toContain('No box meets this brief');
    expect(await area(page).innerText()).not.toContain('112 dB');
    await page.context().close();
  });

  test('the caret on a depth lights that edge of the drawing', async () => {
    const { page } = await edit();
    await area(page).getByText('"420 mm"').click();
    await expect.poll(() => page.locator('[data-drawing]').getAttribute('data-lit')).toBe('depth');
    const ink = (edge: string) =>
      page
        .locator(`[data-drawing] .dimension[data-edge=${edge}]`)
        .first()
        .evaluate((line) => getComputedStyle(line).stroke);
    expect(await ink('depth')).not.toBe('none');
    expect(await ink('width')).toBe('none');
    for (const width of [390, 1100, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width} px`).toBeLessThanOrEqual(
        width,
      );
    }
    await page.context().close();
  });

  test('on paper: a page for each box and one for its templates, to scale, and nothing else', async () => {
    // A4 less margins of 14 mm.
    const { page } = await visit(path, { viewport: { width: 688, height: 1017 } });
    const boxes = await page.locator('.sheet').count();
    expect(boxes).toBeGreaterThan(1);
    const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(2 * boxes);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#sound, header.site, [data-part=answer]').filter({ visible: true }).count()).toBe(0);
    const ruler = await page.locator('.templates svg').first().boundingBox();
    expect(ruler?.width).toBeCloseTo((102 / 25.4) * 96, 0);
    const drawing = await page.locator('.sheet svg').first().boundingBox();
    const list = await page.locator('.sheet table').first().boundingBox();
    expect(drawing && list && drawing.y < list.y + list.height && list.y < drawing.y + drawing.height).toBe(true);
    await page.context().close();
  });

  test('one line through all curves reads them, by pointer and by key, the same after a new answer', async () => {
    const { page } = await visit(path);
    const reads = () => page.locator('#tones .wide [data-read]').allTextContents();
    const curves = await (await page.request.get(`${address()}${path}curves.csv`)).text();
    const rows = curves
      .trim()
      .split('\n')
      .slice(1)
      .map((row) => row.split(',').map(Number));
    const slider = page.locator('#tones input[type=range]');
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(reads).not.toContain('');
    const tone = Number.parseFloat((await slider.getAttribute('aria-valuetext')) ?? '');
    const level = Number(/^A ([\d.]+)/.exec((await reads())[0] ?? '')?.[1]);
    const below = rows.filter(([f]) => (f ?? 0) <= tone * 0.997).at(-1)?.[1] ?? 0;
    const above = rows.find(([f]) => (f ?? 0) >= tone * 1.003)?.[1] ?? 0;
    // Three digits of the tone, and a tenth of a pixel of the picture.
    expect(level).toBeGreaterThan(below - 0.1);
    expect(level).toBeLessThan(above + 0.1);
    expect(await reads()).toHaveLength(4);
    const before = await reads();
    await page.locator('#tones .wide svg.sweep').hover({ position: { x: 500, y: 300 } });
    await expect.poll(reads).not.toEqual(before);
    await page.locator('[data-do=run]').click();
    await designed(page);
    await page.locator('#tones .wide svg.sweep').hover({ position: { x: 200, y: 300 } });
    await expect.poll(reads).not.toContain('');
    await page.context().close();
  });

  test('200 moves over the curves, and no task of the main thread over 50 ms at a quarter of the speed', async () => {
    const { page } = await visit(path);
    const picture = page.locator('#tones .wide svg.sweep');
    await picture.scrollIntoViewIfNeeded();
    const box = await picture.boundingBox();
    if (!box) throw new Error('the picture has no box');
    const longest = await longestTask(page, async () => {
      for (let i = 0; i < 200; i++)
        await page.mouse.move(box.x + box.width * (0.5 + 0.4 * Math.sin(i / 9)), Math.max(box.y, 0) + 200);
    });
    expect(longest).toBeLessThan(50);
    await page.context().close();
  });

  test('without script the sheets are a file as well', async () => {
    const { page } = await visit(path, { javaScriptEnabled: false });
    const got = await page.request.get(`${address()}${path}sheets.html`);
    expect(await got.text()).toContain('Drilling template');
    await page.context().close();
  });

  test('200 keys in the editor, and no task of the main thread over 50 ms at a quarter of the speed', async () => {
    const { page } = await edit();
    await page.keyboard.press('Control+End');
    const longest = await longestTask(page, async () => {
      for (let i = 0; i < 200; i++) await page.keyboard.press(i % 2 ? 'Backspace' : 'Space');
    });
    expect(longest).toBeLessThan(50);
    await page.context().close();
  });
});
