import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { docstringFaults } from '../../.config/docstrings.js';
import { auditedSources } from '../../.config/ledger-gate.js';

test('each formula says where it holds, where it comes from, and how it is called', () => {
  const top = fileURLToPath(new URL('../..', import.meta.url));
  expect(auditedSources(top).flatMap(docstringFaults)).toEqual([]);
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
 * @example whole()
 */
export function whole() {}
export function bare() {}
/** @source own */
export const flange = () => 1;
export function internal() {}`,
);

test('names what is lacking, and only of what the floor exports', () => {
  expect(docstringFaults(source)).toEqual([
    'duct/bare lacks @validity, @source, @example',
    'duct/flange lacks @validity, @example',
  ]);
});
