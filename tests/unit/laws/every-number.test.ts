/** Every number of our families matters to some law: 2 % more of any is found without rescaling, and so are two exchanged. */
import { standardAir } from '@airspring/core/air';
import { closedFamily, type Family, infiniteBaffleFamily, mixedFamily, ventedFamily } from '@airspring/core/enclosure';
import { expect, test } from 'vitest';
import { eachFamilyLaw } from '../../../packages/core/src/laws/family-laws.js';
import { closed, mixed, vented, walled } from './boxes.js';

/** Names of slots of which a change goes unnoticed, or an exchange with one of the next. */
function unnoticed<Spec, Input>(family: Family<Spec, Input>, spec: Input, reach: number): readonly string[] {
  const names: string[] = [];
  family.values(family.read(spec), standardAir, (name) => names.push(name));
  const isFound = (change: (name: string, numbers: readonly number[]) => readonly [string, readonly number[]]) => {
    const liar: Family<Spec, Input> = {
      ...family,
      values: (one, air, set) =>
        family.values(one, air, (name, ...numbers) => {
          const [other, changed] = change(name, numbers);
          set(other, ...changed);
        }),
    };
    for (const { holds } of eachFamilyLaw({ family: liar, spec })) if (!holds) return true;
    return false;
  };
  const scaled = names.filter(
    (one) => !isFound((name, numbers) => [name, name === one ? numbers.map((x) => 1.02 * x) : numbers]),
  );
  const pairs = names.flatMap((a, i) => names.slice(i + 1, i + 1 + reach).map((b) => [a, b] as const));
  const exchanged = pairs.filter(
    ([a, b]) => !isFound((name, numbers) => [name === a ? b : name === b ? a : name, numbers]),
  );
  return [...scaled, ...exchanged.map((pair) => pair.join(' and '))];
}

test('closed', () => {
  expect(unnoticed(closedFamily, closed, 1)).toEqual([]);
});
test('infinite baffle: two per cent more than infinite is no change', () => {
  expect(unnoticed(infiniteBaffleFamily, walled, 1)).toEqual(['behind']);
});
test('vented', () => {
  expect(unnoticed(ventedFamily, vented, 1)).toEqual([]);
});
test('mixed', () => {
  expect(unnoticed(mixedFamily, mixed, 0)).toEqual([]);
});
