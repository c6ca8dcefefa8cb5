/** Everything to build a box from, made on the page: the same bytes as those of the command. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { describe, expect, test, vi } from 'vitest';
import { hasBrowser, site } from './browser.js';

vi.setConfig({ testTimeout: 180_000 });

const path = 'worked-examples/quiet-vent/';
const top = fileURLToPath(new URL('../..', import.meta.url));
const bench = join(top, 'packages/airspring/briefs/whale-bench.json');
const text = readFileSync(bench, 'utf8');
const building = (page: Page) => page.locator('[data-building]');

const old = join(top, 'packages/airspring/briefs/old-thunder-box.json');

/** What the command writes, by its path. */
function byCommand(brief: string, only: string): Map<string, Buffer> {
  const folder = join(mkdtempSync(join(tmpdir(), 'airspring-')), 'box');
  const command = ['--import', 'tsx', '--conditions=@airspring/source', 'packages/airspring/src/command/main.ts'];
  execFileSync(process.execPath, [...command, 'build', brief, '--only', only, '--into', folder], { cwd: top });
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const files = paths.filter((each) => statSync(join(folder, each)).isFile());
  return new Map(files.map((each) => [each, readFileSync(join(folder, each))]));
}

describe.skipIf(!hasBrowser)('files to build a box from', () => {
  const { visit } = site();
  const saved = async (page: Page, only: string) => {
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 120_000 }),
      page.locator(`[data-do=build][data-only="${only}"]`).click(),
    ]);
    return { name: download.suggestedFilename(), files: unzipSync(readFileSync(await download.path())) };
  };

  test.each([
    [path, bench, 'C', 'the-whale-bench-box-c'],
    ['worked-examples/it-chuffs/', old, 'A', undefined],
  ])(
    '%s: they are those of the command, to the last byte; nothing is loaded for them before',
    async (at, brief, only, called) => {
      const { page, requests, complaints } = await visit(at);
      expect(requests.filter((url) => /build-worker|dossier|fflate/.test(url))).toEqual([]);
      const { name, files } = await saved(page, only);
      const folder = name.replace(/\.zip$/, '');
      if (called) expect(folder).toBe(called);
      expect(await building(page).innerText()).toMatch(/^\d+ files, [\d.]+.MB: open build.html first/);
      const expected = byCommand(brief, only);
      expect(expected.size).toBeGreaterThan(3);
      expect(Object.keys(files).sort()).toEqual([...expected.keys()].map((each) => `${folder}/${each}`).sort());
      for (const [each, bytes] of expected) expect(Buffer.compare(bytes, files[`${folder}/${each}`]!), each).toBe(0);
      expect(complaints).toEqual([]);
      await page.context().close();
    },
  );

  test('belong to the brief whose answer is on the page, and say how far they are', async () => {
    const { page } = await visit(path);
    await page.locator('[data-do=edit]').click();
    const area = page.locator('.cm-content');
    const status = page.locator('brief-desk .status');
    await area.fill(
      text.replace('"height": "340 mm"', '"height": "330 mm"').replace('The whale bench', 'A lower bench'),
    );
    await expect.poll(() => status.innerText(), { timeout: 30_000 }).toMatch(/Designed in/);
    await area.fill(text.replace('"24 Hz"', '"24 mm"'));
    await expect.poll(() => page.locator('[data-faults]').innerText(), { timeout: 20_000 }).toContain('drivers[0].fs');
    expect(await page.locator('#build').locator('xpath=..').innerText()).toContain('(of the previous brief)');
    const last = await page.locator('[data-do=build]').last().getAttribute('data-only');
    // What is said may be gone before anyone asks.
    await building(page).evaluate((element) => {
      const told = (element as HTMLElement).dataset;
      new MutationObserver(() => {
        told.said = `${told.said ?? ''}|${element.textContent}`;
      }).observe(element, { childList: true, subtree: true, characterData: true });
    });
    const { name, files } = await saved(page, last as string);
    expect(await building(page).getAttribute('data-said')).toMatch(/\|Making the files/);
    expect(name).toBe(`a-lower-bench-box-${last?.toLowerCase()}.zip`);
    const [[first, html] = ['', new Uint8Array()]] = Object.entries(files);
    expect(first).toMatch(/build\.html$/);
    expect(new TextDecoder().decode(html)).toContain('A lower bench');
    await page.context().close();
  });
});
