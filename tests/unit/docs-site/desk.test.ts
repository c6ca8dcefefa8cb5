/** What the page of a brief does with the text of a reader, apart from any browser. */
import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import { partAt, withValues } from '../../../docs-site/src/brief-changes.js';
import { briefText, fileName, titleOf } from '../../../docs-site/src/brief-text.js';
import { changedNumbers } from '../../../docs-site/src/changed-numbers.js';
import { opened, packed, unpacked } from '../../../docs-site/src/elements/kept-brief.js';
import { jsonListing } from '../../../docs-site/src/json-listing.js';
import { whaleBench } from './brief.js';
import { documentOf } from './document.js';

const text = briefText(whaleBench);

test('a brief as text is the same brief, short in height, and no pair is broken', () => {
  expect(JSON.parse(text)).toEqual(whaleBench);
  const lines = text.trimEnd().split('\n');
  expect(lines.length).toBeLessThan(40);
  for (const line of lines) {
    if (!line.includes('"note"')) expect(line.length).toBeLessThanOrEqual(76);
    expect(line.trimEnd()).not.toMatch(/:$/);
  }
  expect(briefText({ a: [], b: {}, c: [{ d: 'x'.repeat(90) }] })).toContain('"a": []');
});

test('the listing to read says the text, sign for sign', () => {
  const { body } = documentOf(`<html lang="en"><body>${jsonListing(text).markup}</body></html>`);
  expect(body.querySelector('code')?.textContent).toBe(text);
  const pairs = [...body.querySelectorAll('.pair')].map((each) => each.textContent);
  expect(pairs).toContain('"width": "480 mm",');
});

test('numbers that were not there before are told from those that were', () => {
  const before = 'A vent of 74\u00a0mm in a box of 406 × 328\u00a0mm, 74\u00a0mm clear.';
  const now = 'A vent of 74\u00a0mm in a box of 406 × 330\u00a0mm, 75\u00a0mm clear.';
  expect(changedNumbers(before, now).map(([from, to]) => now.slice(from, to))).toEqual(['330\u00a0mm', '75\u00a0mm']);
  expect(changedNumbers(now, now)).toEqual([]);
});

test('the nearest brief is written into the text of the reader, whose layout stays', () => {
  const nearest = { ...whaleBench, wanted: { ...whaleBench.wanted, level: '90 dB', lowest: '31 Hz' } } as Brief;
  const changed = withValues(text, ['wanted.level', 'wanted.lowest'], nearest) ?? '';
  expect(JSON.parse(changed)).toEqual(nearest);
  expect(changed.split('\n').length).toBe(text.split('\n').length);
  // A value that the text left to its default has no place in it.
  expect(withValues(text, ['vent.flare'], { ...nearest })).toBeUndefined();
});

test('the caret lights the part of the drawing that its field is about', () => {
  const at = (needle: string) => partAt(text, text.indexOf(needle) + 3);
  expect(at('"depth": "420 mm"')).toBe('depth');
  expect(at('"depth": "118 mm"')).toBe('driver');
  expect(at('"collar"')).toBe('vent');
  expect(at('"fs"')).toBeUndefined();
  expect(partAt('{ "space": ', 4)).toBeUndefined();
});

test('a brief goes through an address; one that is cut off says so', async () => {
  const address = await packed(text);
  expect(address.length).toBeLessThan(1200);
  expect(address).toMatch(/^#brief=[\w-]+$/);
  expect(await unpacked(address)).toEqual({ ok: true, text });
  for (const cut of [address.slice(0, 200), address.slice(0, -3), '#brief=', '#brief=%%%']) {
    const said = await unpacked(cut);
    expect(said?.ok === false && said.because, cut).toContain('cut off or damaged');
  }
  expect(await unpacked('#sources')).toBeUndefined();
});

test('a file that is not a brief is refused by name', async () => {
  const said = async (file: File) => {
    const brief = await opened(file);
    return brief.ok ? brief.text : brief.because;
  };
  expect(await said(new File([text], 'a.json'))).toBe(text);
  expect(await said(new File(['x'], 'whale.png', { type: 'image/png' }))).toContain('whale.png is not a brief');
  expect(await said(new File([new Uint8Array([137, 80, 0, 255])], 'whale'))).toContain('it is not text');
  expect(await said(new File(['x'.repeat(300_000)], 'long.json'))).toContain('too long');
});

test('files are named by the title, whatever stands in it', () => {
  expect(fileName(titleOf(text), '-report.txt')).toBe('the-whale-bench-report.txt');
  expect(titleOf(text.replace('"version": 1,', '"version": '))).toBe('The whale bench');
  expect(fileName('Größe / ../ 2', '.json')).toBe('größe-2.json');
  expect(fileName('', '.json')).toBe('brief.json');
});
