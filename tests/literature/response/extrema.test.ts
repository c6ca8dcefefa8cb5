/** Extrema where their slope vanishes, and the greatest level itself as a reference: against closed forms. */
import { type CutoffOptions, features, levelCrossings, referenceLevel } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import { closedOf, paperAir } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const fc = 43.7;
const Qtc = [0.75, 0.9, 1.1, 1.6, 3];
const source = {
  key: 'small1972closed1',
  locator: 'peak of the response: fmax = fc/√(1 − 1/2Q²), |G|max = Q²/√(Q² − ¼)',
} as const;
const shared = { source, status: 'derived', kind: 'example', given: { Qtc: { value: Qtc, unit: '1' } } } as const;

check('response.extrema.frequency', {
  ...shared,
  formula: 'response/features',
  got: ({ Qtc }) => features(closedOf({ Qtc, fc })).peaks[0]?.frequency ?? Number.NaN,
  expected: Qtc.map((Q) => fc / Math.sqrt(1 - 1 / (2 * Q * Q))),
  unit: 'Hz',
  tolerance: { relative: 1e-13, why: 'the root of a slope that is exact but for rounding' },
});
check('response.extrema.impedance', {
  ...shared,
  formula: 'response/features',
  source: { key: 'small1972direct', locator: 'greatest driver impedance at the resonance, its phase zero there' },
  got: ({ Qtc }) => features(closedOf({ Qtc, fc })).impedanceMaxima[0]?.frequency ?? Number.NaN,
  expected: Qtc.map(() => fc),
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'the root of a slope that is exact but for rounding' },
});
/** (1 − x²)² + x²/Q² = x⁴/g² for a level g above the asymptote: x² by its formula. */
const crossing = (Q: number, g: number): number => {
  const [a, b] = [1 - 1 / (g * g), 1 / (Q * Q) - 2];
  return fc * Math.sqrt((-b - Math.sqrt(b * b - 4 * a)) / (2 * a));
};
const belowTop = (Q: number) => Q ** 2 / Math.sqrt(Q ** 2 - 0.25) / Math.SQRT2;
const resonant = Qtc.filter((Q) => belowTop(Q) > 1);
check('response.extrema.below-maximum', {
  ...shared,
  given: { Qtc: { value: resonant, unit: '1' } },
  formula: 'response/levelCrossings',
  got: ({ Qtc }) => levelCrossings(closedOf({ Qtc, fc }), { reference: 'maximum' })[0] ?? Number.NaN,
  expected: resonant.map((Q) => crossing(Q, belowTop(Q))),
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'the greatest level itself, not that of a sample: rounding alone' },
});

test.each(resonant)("Q %d: from 'maximum' it is what it is from that level", (Q) => {
  const system = closedOf({ Qtc: Q, fc });
  const level = referenceLevel(system) + 20 * Math.log10(Q ** 2 / Math.sqrt(Q ** 2 - 0.25));
  const at = (reference: NonNullable<CutoffOptions['reference']>) => {
    return levelCrossings(system, { reference })[0] ?? Number.NaN;
  };
  expect(at('maximum') / at({ level: level as never })).toBeCloseTo(1, 11);
});
