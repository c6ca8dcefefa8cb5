/** Every number of our families matters to some law: 2 % more of any, or any two exchanged, are found without rescaling. */
import { standardAir } from '@airspring/core/air';
import { closedFamily, type Family, mixedFamily, ventedFamily } from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { expect, test } from 'vitest';
import { brokenLaws, closed, mixed, vented } from './boxes.js';

/** Names of slots of which a change, or an exchange, goes unnoticed. */
function unnoticed<Spec, Input>(family: Family<Spec, Input>, spec: Input, exchanges: boolean): readonly string[] {
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
    return brokenLaws(familyLaws({ family: liar, spec })).length > 0;
  };
  const scaled = names.filter(
    (one) => !isFound((name, numbers) => [name, name === one ? numbers.map((x) => 1.02 * x) : numbers]),
  );
  const pairs = exchanges ? names.flatMap((a, i) => names.slice(i + 1).map((b) => [a, b] as const)) : [];
  const exchanged = pairs.filter(
    ([a, b]) => !isFound((name, numbers) => [name === a ? b : name === b ? a : name, numbers]),
  );
  return [...scaled, ...exchanged.map((pair) => pair.join(' and '))];
}

test('closed', () => {
  expect(unnoticed(closedFamily, closed, true)).toEqual([]);
});
test('vented', () => {
  expect(unnoticed(ventedFamily, vented, true)).toEqual([]);
});
test('mixed', () => {
  expect(unnoticed(mixedFamily, mixed, false)).toEqual([]);
});
