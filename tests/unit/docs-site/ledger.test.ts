/** The ledger is fresh where it is younger than every file that its rows follow from. */
import { existsSync, mkdirSync, mkdtempSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { behind, isFresh } from '../../../docs-site/src/ledger.js';

function treeWith(ledger: number | undefined, source: number): string {
  const top = mkdtempSync(join(tmpdir(), 'airspring-ledger-'));
  const write = (file: string, time: number) => {
    mkdirSync(dirname(join(top, file)), { recursive: true });
    writeFileSync(join(top, file), '');
    utimesSync(join(top, file), time, time);
  };
  for (const each of behind) write(each.endsWith('.ts') ? each : `${each}/some/file.ts`, source);
  if (ledger !== undefined) write('.cache/ledger.json', ledger);
  return top;
}

test('a ledger that is missing or older than a source is not fresh', () => {
  expect(isFresh(treeWith(undefined, 100))).toBe(false);
  expect(isFresh(treeWith(100, 200))).toBe(false);
  expect(isFresh(treeWith(200, 100))).toBe(true);
});

test('what the ledger follows from is there', () => {
  const top = new URL('../../../', import.meta.url);
  expect(behind.filter((each) => !existsSync(new URL(each, top)))).toEqual([]);
});
