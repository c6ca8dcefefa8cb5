import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LOST, refuseLostTexts } from '../../../docs-site/src/lost-texts.js';

test('a text without a page is told, whatever its kind and folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'airspring-texts-'));
  mkdirSync(join(folder, 'vent'));
  for (const file of ['index.mdx', 'start.mdx', 'vent/index.md', 'vent/tuning.md', 'vent/drawing.svg'])
    writeFileSync(join(folder, file), '');
  const pages = ['', 'start/', 'vent/', 'vent/tuning/', '404/'].map((pathname) => ({ pathname }));
  expect(() => refuseLostTexts(folder, pages)).not.toThrow();
  expect(() => refuseLostTexts(folder, pages.slice(0, 2))).toThrow(`${LOST}: vent, vent/tuning.`);
});
