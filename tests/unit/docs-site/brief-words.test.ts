/** The page of all fields of a brief has every field of the schema, once. */
import { standardShapes } from '@airspring/workshop/shape';
import { briefFields } from 'airspring';
import { expect, test } from 'vitest';
import { briefSections, wordsOfBrief } from '../../../docs-site/src/brief-words.js';
import { documentOf } from './document.js';

const rowsOf = (section: string, until?: number) => {
  const document = documentOf(`<html lang="en"><body>${wordsOfBrief(section, until).markup}</body></html>`);
  return [...document.querySelectorAll('tbody tr')].map((row) =>
    [...row.querySelectorAll('th, td')].map((cell) => (cell.textContent ?? '').replace(/\u00a0/g, ' ')),
  );
};

test('every field has its row, with what it is', () => {
  const fields = briefFields({ shapes: standardShapes });
  const told = briefSections.flatMap((section) => rowsOf(section));
  expect(told.length).toBe(fields.length);
  for (const { path, what } of fields) {
    const row = told.find(([name = '', says]) => says === what && path.endsWith(name));
    expect(row, path).toBeDefined();
  }
});

test('the short table of a box that stands has its own words, needed or with what counts where they are left out', () => {
  const rows = rowsOf('standing', 1);
  const names = rows.map(([name]) => name);
  expect(names).toContain('panelThickness');
  expect(names).toContain('keep');
  expect(names.some((name) => name?.includes('.'))).toBe(false);
  expect(rows.find(([name]) => name === 'panelThickness')?.[2]).toMatch(/mm; needed$/);
  expect(rows.find(([name]) => name === 'keep')?.[2]).toMatch(/default: the box$/);
});
