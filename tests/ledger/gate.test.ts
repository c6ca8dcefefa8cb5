import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { auditedExports, isPrivatePage, ledgerFaults } from '../../.config/ledger-gate.js';

const source = mkdtempSync(join(tmpdir(), 'ledger-gate-'));
afterAll(() => rmSync(source, { recursive: true }));
const write = (file: string, text: string) => {
  mkdirSync(dirname(join(source, file)), { recursive: true });
  writeFileSync(join(source, file), text);
};
write('numeric/index.ts', `export * from './roots.js';`);
write('numeric/roots.ts', 'export function roots() {}');
write(
  'duct/index.ts',
  `export { inertance, type Pipe, wide as broad } from './pipe.js';\nexport * from './flange.js';`,
);
write(
  'duct/pipe.ts',
  'export interface Pipe {}\nexport function inertance() {}\nexport const wide = () => 1;\nexport function hidden() {}',
);
write(
  'duct/flange.ts',
  'export const flanged = Object.assign((k: number) => k, { sources: [] });\nexport const limit = 3;',
);

const exported = auditedExports(source);
const references = [
  { id: 'book1950', type: 'book' },
  { id: 'someones', type: 'webpage', URL: 'https://boxes.example/vented.html' },
];
const row = (formula: string, id = formula, key = 'book1950') => ({
  ...{ id, formula, status: 'seen' as const, kind: 'table' as const },
  source: { key, locator: 'table 1' },
});
const whole = [row('duct/inertance'), row('duct/broad'), row('duct/flanged')];

test('finds what the floors export, by the exported name, functions apart from values', () => {
  expect(Object.fromEntries(exported)).toEqual({
    'duct/inertance': true,
    'duct/broad': true,
    'duct/flanged': true,
    'duct/limit': false,
  });
});

test('is content when each function has an outside row or an exception', () => {
  expect(ledgerFaults(whole, exported, {}, references)).toEqual([]);
  expect(ledgerFaults(whole.slice(1), exported, { 'duct/inertance': 'a definition' }, references)).toEqual([]);
});

test('names a function without one; rows from memory do not count', () => {
  const recalled = { ...row('duct/inertance'), status: 'memory' as const };
  expect(ledgerFaults([recalled, ...whole.slice(1)], exported, {}, references)).toEqual([
    'duct/inertance has no outside check',
  ]);
});

test('refuses exceptions for nothing, without need, or without a reason', () => {
  expect(ledgerFaults(whole, exported, { 'duct/gone': 'was here' }, references)).toHaveLength(1);
  expect(ledgerFaults(whole, exported, { 'duct/limit': 'no function' }, references)).toHaveLength(1);
  expect(ledgerFaults(whole, exported, { 'duct/broad': 'checked all the same' }, references)).toHaveLength(1);
  expect(ledgerFaults(whole.slice(1), exported, { 'duct/inertance': ' ' }, references)).toHaveLength(1);
});

test('refuses an id used twice and a formula that is not there', () => {
  expect(ledgerFaults([...whole, row('duct/limit', 'duct/broad')], exported, {}, references)).toEqual([
    'duct/broad is the id of two rows',
  ]);
  expect(ledgerFaults([...whole, row('duct/inertanse')], exported, {}, references)).toHaveLength(1);
});

test('wants more than a private web page behind a formula, on every floor', () => {
  const page = (formula: string) => row(formula, `${formula} by a page`, 'someones');
  expect(ledgerFaults([...whole, page('duct/broad')], exported, {}, references)).toEqual([]);
  expect(ledgerFaults([...whole.slice(1), page('duct/inertance')], exported, {}, references)).toEqual([
    'duct/inertance is checked by a private web page alone; add a check by a firmer source',
  ]);
  expect(ledgerFaults([...whole, page('numeric/roots')], exported, {}, references)).toHaveLength(1);
});

test('wants a value read in print for half of the formulas of air, numeric, duct and filter', () => {
  const derived = (formula: string) => ({ ...row(formula), status: 'derived' as const });
  const [first, ...others] = whole;
  expect(ledgerFaults([derived(first!.formula), ...others], exported, {}, references)).toEqual([]);
  expect(ledgerFaults([first!, ...others.map(({ formula }) => derived(formula))], exported, {}, references)).toEqual([
    '1 of 3 formulas of air, numeric, duct, filter have a value read in print; it must be half',
  ]);
});

test('tells the pages of public bodies from private ones', () => {
  const isPrivate = (URL?: string, type = 'webpage') => isPrivatePage({ id: 'one', type, ...(URL && { URL }) });
  for (const address of [
    'https://dlmf.nist.gov',
    'http://physics.school.edu/a',
    'https://x.ac.uk',
    'https://iso.org/1',
  ])
    expect(isPrivate(address)).toBe(false);
  for (const address of ['https://edu.example.com', 'https://boxes.example/x.gov', 'https://notiso.org', undefined])
    expect(isPrivate(address)).toBe(true);
  expect(isPrivate('https://boxes.example', 'book')).toBe(false);
});
