import { expect, test } from 'vitest';
import { checkedModule } from '../../../docs-site/src/elements/checked-module.js';
import { tableLines } from '../../../docs-site/src/example/printed.js';

test('an import that is not there is named, with what there is', async () => {
  const module = (await checkedModule('air', { air: 1, density: 2 })) as Record<string, unknown>;
  expect(module.air).toBe(1);
  expect(() => module.cutof).toThrow("'air' has no 'cutof'. It has air, density.");
});

test('a table is printed row by row', () => {
  expect(tableLines([{ f: 20, level: 80.123456789 }, 7])).toEqual(['0 f: 20 level: 80.1235', '1 7']);
  expect(tableLines('words')).toEqual(['words']);
});
