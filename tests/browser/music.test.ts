/** Music of one's own, on its page: five minutes at once, files that hold none, what is dragged, and what is heard. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, site } from './browser.js';
import { flacBytes } from './flac-bytes.js';
import { wavBytes } from './wav-bytes.js';

const path = 'worked-examples/your-own-music/';
const RATE = 48_000;
const status = (page: Page) => page.locator('own-music .status');
const first = async (page: Page) =>
  (await page.locator('own-music .answer').first().innerText()).replaceAll('\u00a0', ' ');
const says = (page: Page, words: RegExp) =>
  expect.poll(() => status(page).innerText(), { timeout: 30_000, interval: 20 }).toMatch(words);
const file = (name: string, buffer: Uint8Array) => ({ name, mimeType: '', buffer: Buffer.from(buffer) });
const take = (page: Page, what: string | ReturnType<typeof file>) => page.locator('[data-open]').setInputFiles(what);
const bass = (seconds: number, tone = 41.2) =>
  Float64Array.from({ length: seconds * RATE }, (_, i) => 0.5 * Math.sin((2 * Math.PI * tone * i) / RATE));

describe.skipIf(!hasBrowser)('music of one’s own', () => {
  const { visit, address, longestTask, stated } = site();
  const folder = mkdtempSync(join(tmpdir(), 'airspring-music-'));
  // On disk: bytes that are handed to the page from here are a long task of the driver's, in the page's thread.
  const long = join(folder, 'five minutes.wav');
  const short = join(folder, 'short.wav');
  let page: Page;
  let requests: string[];
  let complaints: string[];
  beforeAll(async () => {
    // Two seconds of bass and a little treble, over and over.
    const part = Float64Array.from(bass(2), (sample, i) => sample + 0.2 * Math.sin(0.3 * i));
    const whole = new Float64Array(300 * RATE);
    for (let at = 0; at < whole.length; at += part.length) whole.set(part, at);
    writeFileSync(long, wavBytes(whole, 2));
    writeFileSync(short, wavBytes(bass(1)));
    ({ page, requests, complaints } = await visit(path));
    await page.locator('own-music[data-live]').waitFor();
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('the picture, both tables and the caution are there without script, and nothing that needs one', async () => {
    const { page: plain } = await visit(path, { javaScriptEnabled: false });
    expect(await first(plain)).toMatch(/^Our storm plays through the old thunder box .* Its vent is noisy 5 times/);
    expect(await plain.locator('#timeline .wide > svg').getAttribute('aria-label')).toMatch(
      /^A moves the air in its vent/,
    );
    expect(await plain.locator('own-music table').count()).toBe(2);
    expect(await plain.locator('own-music select:visible, own-music button:visible').count()).toBe(0);
    expect(await plain.locator('.caution:visible').count()).toBe(1);
    await plain.context().close();
  });

  test('five minutes in stereo take less than 6 s, the page stays awake, and nothing is asked of anybody', async () => {
    const times: number[] = [];
    const moves = async () => {
      await take(page, short);
      await says(page, /^Played 0:01/);
      const begun = performance.now();
      await take(page, long);
      // A hand that goes over the page while it works.
      for (let i = 0; i < 200; i++) await page.mouse.move(200 + i, 300);
      await says(page, /^Played 5:00/);
      times.push(stated(performance.now() - begun));
      await page.waitForTimeout(300);
    };
    expect(await longestTask(page, moves)).toBeLessThan(50);
    // Others on the machine only add: the least of up to three.
    while (Math.min(...times) >= 6000 && times.length < 3) await moves();
    expect(Math.min(...times)).toBeLessThan(6000);
    expect(await first(page)).toMatch(/^“five minutes.wav” plays through/);
    expect(await page.locator('[data-told=sound]').innerText()).toMatch(
      /16-bit PCM, 48,000.Hz, the mean of 2.channels, 5:00/,
    );
    expect(requests.filter((url) => !url.startsWith(address()))).toEqual([]);
  });

  test('a number that is dragged takes the other with it, and no task is long', async () => {
    const [drive, level] = ['drive', 'level'].map((name) => page.locator(`scrub-number[name=${name}]`));
    const before = await first(page);
    const box = (await drive!.boundingBox())!;
    const drag = async () => {
      await page.mouse.move(box.x + 10, box.y + 10);
      await page.mouse.down();
      for (let i = 0; i < 200; i++) await page.mouse.move(box.x + 10 - 60 * Math.sin(i / 12), box.y + 10);
      await page.mouse.up();
      await page.waitForTimeout(800);
    };
    expect(await longestTask(page, drag)).toBeLessThan(50);
    expect(await first(page)).not.toBe(before);
    const levelAt = async (volts: string) => {
      await drive!.focus();
      await page.keyboard.press('Enter');
      await page.keyboard.insertText(volts);
      await page.keyboard.press('Enter');
      await page.waitForTimeout(200);
      return Number.parseFloat(await level!.innerText());
    };
    // Told with three digits.
    expect(Math.abs((await levelAt('20 V')) - (await levelAt('2 V')) - 20)).toBeLessThan(0.6);
  });

  test('a file that holds no sound is refused in a sentence, and what stands on the page stays', async () => {
    const before = await first(page);
    const ogg = new TextEncoder().encode(`OggS${' '.repeat(25)}vorbis${'no sound '.repeat(4000)}`);
    const mp3 = new TextEncoder().encode(`ID3${'no sound '.repeat(4000)}`);
    for (const [name, bytes, words] of [
      ['diary.txt', new TextEncoder().encode('Dear diary'), /^diary.txt holds no sound that this page can read/],
      ['empty.wav', new Uint8Array(), /^empty.wav holds no sound at all: no bytes/],
      ['head.wav', wavBytes(bass(1)).subarray(0, 44), /^head.wav holds no sound at all\. Choose/],
      ['no.ogg', ogg, /^no.ogg holds no sound at all/],
      ['no.mp3', mp3, /^no.mp3 holds no sound at all/],
      ['no.json', new TextEncoder().encode('{ "title": "Mine", ]'), /^The brief of “Mine” .*line 1/],
    ] as const) {
      await take(page, file(name, bytes));
      await says(page, words);
      expect(await first(page), name).toBe(before);
    }
  });

  test('odd recordings are played: FLAC, an end that is missing, many channels, 8 bits, silence', async () => {
    for (const [name, bytes, words] of [
      ['bass.flac', flacBytes(bass(2).subarray(0, 20 * 4096)), /: FLAC, 48,000.Hz, one channel/],
      ['cut.wav', wavBytes(bass(2)).subarray(0, 100_000), /The end of the file is missing/],
      ['many.wav', wavBytes(bass(1), 12), /the mean of 12.channels/],
      ['eight.wav', wavBytes(bass(1), 1, 1), /8-bit PCM/],
    ] as const) {
      await take(page, file(name, bytes));
      await expect.poll(() => page.locator('[data-told=sound]').innerText(), { timeout: 10_000 }).toMatch(words);
      expect(await first(page)).toMatch(new RegExp(`^“${name}” plays .* Its vent is (noisy|never noisy|quiet)`));
    }
    await take(page, file('silent.wav', wavBytes(new Float64Array(RATE))));
    await expect.poll(() => first(page)).toMatch(/^“silent.wav” plays through .*\. The recording is silent/);
  });

  test('a brief is a box; a piece that takes long is cancelled', async () => {
    const brief = { title: 'Mine', drivers: [] };
    await take(page, file('mine.json', new TextEncoder().encode(JSON.stringify(brief))));
    await says(page, /^The brief of “Mine” cannot be read/);
    await page.selectOption('[data-choice=a]', 'whale');
    await page.selectOption('[data-choice=sound]', 'song');
    await expect.poll(() => first(page), { timeout: 20_000 }).toMatch(/^Our whale song plays through the whale bench/);
    await take(page, long);
    await page.locator('[data-do=cancel]').click();
    await says(page, /^Cancelled/);
    expect(await page.locator('[data-choice=sound]').inputValue()).toBe('song');
    expect(await first(page)).toMatch(/^Our whale song/);
  });

  test('source and boxes are heard in turn, softly at first, and only after a hand asked for it', async () => {
    const pressed = page.locator('[data-hear][aria-pressed=true]');
    expect(await pressed.count()).toBe(0);
    expect(Number(await page.locator('[data-volume]').inputValue())).toBeLessThanOrEqual(-24);
    await page.locator('[data-hear="1"]').click();
    await expect.poll(() => pressed.allInnerTexts(), { timeout: 20_000 }).toEqual(['Box A']);
    await page.locator('[data-hear="0"]').press('Enter');
    expect(await pressed.allInnerTexts()).toEqual(['The source']);
    await page.locator('[data-do=silence]').click();
    expect(await pressed.count()).toBe(0);
    expect(complaints).toEqual([]);
    expect(requests.filter((url) => !url.startsWith(address()))).toEqual([]);
  });
});
