/** What the trials of the laws take, and what must not compile. */
import { closedFamily, ventedFamily } from '@airspring/core/enclosure';
import { familyLaws, type LawResult, lawElementLaws, limitLaws } from '@airspring/core/laws';
import { losslessLine } from '@airspring/core/network';
import { expectTypeOf, test } from 'vitest';

declare const closed: Parameters<typeof closedFamily.read>[0];

test('a family is tried on a spec of its own, as people write it or as it was read', () => {
  expectTypeOf(familyLaws({ family: closedFamily, spec: closed })).toEqualTypeOf<readonly LawResult[]>();
  familyLaws({ family: closedFamily, spec: closedFamily.read(closed) });
  // @ts-expect-error a vented box has a tuning
  familyLaws({ family: ventedFamily, spec: { drivers: closed.drivers, netVolume: '40 L' } });
});

test('an element is tried with values, a limit on a system', () => {
  // @ts-expect-error no values
  lawElementLaws(losslessLine('duct', ['box', 'ground']), {});
  // @ts-expect-error no system
  limitLaws({ name: 'travel', greatestRms: 1, basis: 'own' }, {});
});
