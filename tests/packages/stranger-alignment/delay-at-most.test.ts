import {
  boxesThatSuit,
  butterworth,
  candidate,
  type Goal,
  quasiThirdOrder,
  solveAlignment,
} from '@airspring/core/alignment';
import { closedFamily, type VentedBoxSpec, ventedBox, ventedFamily } from '@airspring/core/enclosure';
import { alignmentLaws } from '@airspring/core/laws';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';
import { delayAtMost } from './delay-at-most.js';

const driver = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const fine = logarithmicGrid(10, 200, 400);
const delayOf = (spec: VentedBoxSpec) => Math.max(...respond(ventedBox(spec), fine).groupDelay);
const depthOf = (spec: VentedBoxSpec) => {
  const reach = cutoff(ventedBox(spec));
  return reach.ok ? reach.frequency : Number.NaN;
};

test('it obeys the laws of its seam', () => {
  expect(alignmentLaws(delayAtMost(0.01)).filter(({ holds }) => !holds)).toEqual([]);
});

test.each([0.013, 0.016, 0.02])('a limit of %d s is kept, and no neighbour that keeps it reaches deeper', (limit) => {
  const found = solveAlignment(delayAtMost(limit), ventedFamily, { drivers: driver, QL: 7 });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { spec } = found.system;
  expect(found.least).toBe((delayAtMost(limit).target as Goal).least(found.system));
  // A limit that is kept leaves the cut-off alone.
  expect(found.least).toBeCloseTo(depthOf(spec), 1);
  expect(delayOf(spec)).toBeLessThan(1.003 * limit);
  for (const [volume, tuning] of [
    [1.1, 1],
    [0.9, 1],
    [1, 1.06],
    [1, 0.94],
    [1.15, 0.95],
    [0.87, 1.05],
  ] as const) {
    const other = {
      ...spec,
      netVolume: si('volume', volume * spec.netVolume),
      fb: si('frequency', tuning * spec.fb),
    };
    if (delayOf(other) <= limit) expect(depthOf(other)).toBeGreaterThan(0.999 * depthOf(spec));
  }
});

test('it stands in the table of boxes that suit a driver, beside those of the literature', () => {
  const rows = boxesThatSuit(driver, [
    candidate(butterworth(2), closedFamily),
    candidate(quasiThirdOrder, ventedFamily, { QL: 7 }),
    candidate(butterworth(4), ventedFamily, { QL: 7 }),
    candidate(delayAtMost(0.016), ventedFamily, { QL: 7 }),
  ]);
  expect(rows.map(({ alignment, result }) => [alignment.name, result.ok])).toEqual([
    ['B2', true],
    ['QB3', true],
    ['B4', false],
    ['delay of 16 ms', true],
  ]);
  const [, , flat] = rows;
  expect(!flat!.result.ok && flat!.result.because[0]!.text).toBe(
    'B4 takes a total Q of 0.405 at QL 7; the driver has 0.327.',
  );
});
