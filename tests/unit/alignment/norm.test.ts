import { butterworth, greatestDifference, type Norm, rootMeanSquare, solveAlignment } from '@airspring/core/alignment';
import { ventedFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';

const drivers = {
  ...physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir),
  Le: si('inductance', 1.2e-3),
};
const deviationBy = (norm: Norm) => {
  const found = solveAlignment(butterworth(4), ventedFamily, { drivers, QL: 7 }, { addResistance: true, norm });
  if (!found.ok || found.deviation === undefined) throw new Error('no box');
  return found.deviation;
};

test('each norm makes its own number of the deviation smaller than the other does', () => {
  const [byMean, byGreatest] = [deviationBy(rootMeanSquare), deviationBy(greatestDifference)];
  expect(byGreatest.greatest).toBeLessThan(0.99 * byMean.greatest);
  expect(byMean.rms).toBeLessThan(0.999 * byGreatest.rms);
});
