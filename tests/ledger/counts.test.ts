import { expect, test } from 'vitest';
import { quotedCount, readInPrint, rowCounts, tooFewInPrint } from './counts.js';

const row = (formula: string, status: 'seen' | 'derived' | 'practice' | 'memory', readIn = 'itself') =>
  ({ formula, status, kind: 'table', source: { key: 'book1950', locator: 'p. 1', readIn } }) as const;
const rows = [
  row('air/one', 'seen'),
  row('air/one', 'derived'),
  row('duct/two', 'derived'),
  row('limit/three', 'practice'),
  row('limit/three', 'memory'),
];

test('rows are counted by what they rest on', () => {
  expect(rowCounts(rows)).toEqual({ 'read in print': 1, 'recomputed independently': 2, 'rule of thumb': 1 });
});

test('of the rows read in print those are counted that another text quotes', () => {
  const quoted = row('duct/two', 'seen', 'the tests of a library');
  expect(quotedCount([...rows, quoted])).toBe(1);
  expect(readInPrint([...rows, quoted, row('air/one', 'seen', 'a note')], []).slice(0, 2)).toEqual([
    { floor: 'air', read: ['one'], quoted: [], unread: [] },
    { floor: 'duct', read: ['two'], quoted: ['two'], unread: [] },
  ]);
});

test('a formula of whose result a part alone was read does not count as read', () => {
  const part = { ...row('limit/three', 'seen'), part: 'a constant' };
  expect(readInPrint([...rows, part], []).find(({ floor }) => floor === 'limit')?.read).toEqual([]);
});

test('formulas are counted by floor, those without any row too', () => {
  expect(readInPrint(rows, ['air/one', 'air/alone', 'limit/three'])).toEqual([
    { floor: 'air', read: ['one'], quoted: [], unread: ['alone'] },
    { floor: 'duct', read: [], quoted: [], unread: ['two'] },
    { floor: 'limit', read: [], quoted: [], unread: ['three'] },
  ]);
});

test('half of the formulas of four floors together must have a value read in print', () => {
  expect(tooFewInPrint(readInPrint(rows, ['air/one']))).toEqual([]);
  expect(tooFewInPrint(readInPrint(rows, ['air/one', 'filter/more']))).toEqual([
    '1 of 3 formulas of air, numeric, duct, filter have a value read in print; it must be half',
  ]);
  expect(tooFewInPrint(readInPrint(rows, ['limit/more', 'vent/more', 'driver/more']))).toEqual([]);
});
