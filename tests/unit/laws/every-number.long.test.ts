/** Every number of our families matters to some law: 2 % more of any is found without rescaling, and so are two exchanged. */
import { standardAir } from '@airspring/core/air';
import { logarithmicCreep, lossyInductor } from '@airspring/core/driver';
import {
  closedFamily,
  type Family,
  fourthOrderBandPassFamily,
  infiniteBaffleFamily,
  mixedFamily,
  parallelBandPassFamily,
  seriesBandPassFamily,
  ventedFamily,
} from '@airspring/core/enclosure';
import type { FamilyTrial } from '@airspring/core/laws';
import { compile } from '@airspring/core/network';
import { expect, test } from 'vitest';
import { eachFamilyLaw } from '../../../packages/core/src/laws/family-laws.js';
import { closed, driver, mixed, vented, walled } from './boxes.js';
import { trials } from './more-boxes.js';

/** Names of slots of which a change goes unnoticed, or an exchange with one of the next. */
function unnoticed<Spec, Input>(
  family: Family<Spec, Input>,
  trial: Omit<FamilyTrial<Spec, Input>, 'family'>,
  reach: number,
): readonly string[] {
  const counts = new Map<string, number>();
  family.values(family.read(trial.spec), standardAir, (name, ...numbers) => counts.set(name, numbers.length));
  const names = [...counts.keys()];
  const isFound = (change: (name: string, numbers: readonly number[]) => readonly [string, readonly number[]]) => {
    const liar: Family<Spec, Input> = {
      ...family,
      values: (one, air, set) =>
        family.values(one, air, (name, ...numbers) => {
          const [other, changed] = change(name, numbers);
          set(other, ...changed);
        }),
    };
    for (const { holds } of eachFamilyLaw({ ...trial, family: liar })) if (!holds) return true;
    return false;
  };
  const places = names.flatMap((name) => Array.from({ length: counts.get(name)! }, (_, place) => ({ name, place })));
  const scaled = places
    .filter(
      (one) =>
        !isFound((name, numbers) => [
          name,
          numbers.map((x, i) => (name === one.name && i === one.place ? 1.02 * x : x)),
        ]),
    )
    .map(({ name, place }) => (place === 0 ? name : `${name}, number ${place}`));
  const pairs = names.flatMap((a, i) => names.slice(i + 1, i + 1 + reach).map((b) => [a, b] as const));
  const exchanged = pairs.filter(
    ([a, b]) => !isFound((name, numbers) => [name === a ? b : name === b ? a : name, numbers]),
  );
  return [...scaled, ...exchanged.map((pair) => pair.join(' and '))];
}

test('closed', () => {
  expect(unnoticed(closedFamily, { spec: closed }, 1)).toEqual([]);
});
test('infinite baffle: two per cent more than infinite is no change', () => {
  expect(unnoticed(infiniteBaffleFamily, { spec: walled }, 1)).toEqual(['behind']);
});
test('vented', () => {
  expect(unnoticed(ventedFamily, { spec: vented }, 1)).toEqual([]);
});
test('mixed', () => {
  expect(unnoticed(mixedFamily, { spec: mixed }, 0)).toEqual([]);
});
const withoutUnits = <T extends object>({ rescaled: _, ...trial }: T & { readonly rescaled: unknown }) => trial;
test('band-pass of fourth order', () => {
  expect(unnoticed(fourthOrderBandPassFamily, withoutUnits(trials.fourth), 1)).toEqual([]);
});
test.each([parallelBandPassFamily, seriesBandPassFamily])('$name', (family) => {
  expect(unnoticed(family, withoutUnits(trials.sixth), 0)).toEqual([]);
});
test('a coil with losses, and a suspension that creeps', () => {
  const coil = lossyInductor({ K: 0.02, exponent: 0.7 });
  const suspension = logarithmicCreep({ lambda: 0.08, at: '27 Hz' });
  const spec = { ...closed, drivers: { ...driver, coil, suspension } };
  expect(unnoticed({ ...closedFamily, compile }, { spec }, 0)).toEqual([]);
});
