/** Boxes of sizes that are built obey the laws of their families: no honest box is accused. */
import { closedFamily, infiniteBaffleFamily, mixedFamily, ventedFamily } from '@airspring/core/enclosure';
import { familyLaws, type LawResult } from '@airspring/core/laws';
import { expect } from 'vitest';
import { closedBoxArbitrary, ventedBoxArbitrary } from '../../arbitrary/box.js';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { mixedBoxArbitrary } from '../../arbitrary/mixed-box.js';
import { test } from '../../arbitrary/property.js';

const accused = (laws: readonly LawResult[]) => laws.filter(({ holds }) => !holds);

test.prop([closedBoxArbitrary], { numRuns: cases(30) })('closed', (spec) => {
  expect(accused(familyLaws({ family: closedFamily, spec }))).toEqual([]);
});
test.prop([closedBoxArbitrary], { numRuns: cases(20) })(
  'infinite baffle',
  ({ drivers, sourceResistance = '0 ohm' }) => {
    expect(accused(familyLaws({ family: infiniteBaffleFamily, spec: { drivers, sourceResistance } }))).toEqual([]);
  },
);
test.prop([ventedBoxArbitrary], { numRuns: cases(30) })('vented', (spec) => {
  expect(accused(familyLaws({ family: ventedFamily, spec, frequencies: [spec.fb as number] }))).toEqual([]);
});
test.prop([mixedBoxArbitrary], { numRuns: cases(12) })('mixed', (spec) => {
  expect(accused(familyLaws({ family: mixedFamily, spec }))).toEqual([]);
});
