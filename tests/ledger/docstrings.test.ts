import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { docstrings } from '../../.config/docstrings.js';

test('each formula says where it holds, where it comes from, how it is called, and which checks it passed', () => {
  const core = fileURLToPath(new URL('../../packages/core/src', import.meta.url));
  expect(docstrings(core).lacking).toEqual([]);
});

const source = mkdtempSync(join(tmpdir(), 'docstrings-'));
afterAll(() => rmSync(source, { recursive: true }));
const write = (file: string, text: string) => {
  mkdirSync(dirname(join(source, file)), { recursive: true });
  writeFileSync(join(source, file), text);
};
write('duct/index.ts', `export { bare, flange, whole } from './pipe.js';`);
write(
  'duct/pipe.ts',
  `/**
 * @validity all
 * @source own
 * @check pipe.a, pipe.b,
 * pipe.c
 * @example whole()
 */
export function whole() {}
export function bare() {}
/** @source own */
export const flange = () => 1;
export function internal() {}`,
);

test('names what is lacking, and only of what the floor exports', () => {
  expect(docstrings(source).lacking).toEqual([
    'duct/bare lacks @validity, @source, @example, @check',
    'duct/flange lacks @validity, @example, @check',
  ]);
});
test('collects the ids of checks, over lines', () => {
  expect([...docstrings(source).cited]).toEqual([
    ['pipe.a', 'duct/pipe.ts'],
    ['pipe.b', 'duct/pipe.ts'],
    ['pipe.c', 'duct/pipe.ts'],
  ]);
});
