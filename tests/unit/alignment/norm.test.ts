import {
  butterworth,
  type ComparedBand,
  greatestDifference,
  type Norm,
  rootMeanSquare,
  solveAlignment,
} from '@airspring/core/alignment';
import { ventedFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';

const drivers = {
  ...physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir),
  Le: si('inductance', 1.2e-3),
};
const deviationBy = (norm: Norm, band?: ComparedBand) => {
  const found = solveAlignment(
    butterworth(4),
    ventedFamily,
    { drivers, QL: 7 },
    { addResistance: true, norm, ...(band && { band }) },
  );
  if (!found.ok || found.deviation === undefined) throw new Error('no box');
  return found.deviation;
};

test('each norm makes its own number of the deviation smaller than the other does', () => {
  const [byMean, byGreatest] = [deviationBy(rootMeanSquare), deviationBy(greatestDifference)];
  expect(byGreatest.greatest).toBeLessThan(0.99 * byMean.greatest);
  expect(byMean.rms).toBeLessThan(0.999 * byGreatest.rms);
});

test('a band of its own, as multiples of the frequency of the target, is met nearer than by a box for the usual one', () => {
  const narrow = { from: 0.9, to: 1.6 };
  const [usual, own] = [deviationBy(rootMeanSquare), deviationBy(rootMeanSquare, narrow)];
  expect(usual.to / usual.from).toBeCloseTo(8, 9);
  expect(own.to / own.from).toBeCloseTo(1.6 / 0.9, 9);
  expect(own.rms).toBeLessThan(0.5 * usual.rms);
  expect(deviationBy(rootMeanSquare, { from: 0.5, to: 4 })).toEqual(usual);
  for (const band of [
    { from: 2, to: 1 },
    { from: 0, to: 4 },
    { from: 0.5, to: 40 },
    { from: '20 Hz', to: '80 Hz' },
  ]) {
    expect(() => deviationBy(rootMeanSquare, band as ComparedBand)).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ path: 'options.band', code: 'out-of-range' })] }),
    );
  }
});
