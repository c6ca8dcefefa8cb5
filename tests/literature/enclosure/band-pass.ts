/** The road of the textbooks for band-pass boxes: each response as a quotient of polynomials over s/ωs, without losses of the box. */
import type { Driver } from '@airspring/core/driver';
import { fourthOrderBandPass, parallelBandPass, type System, seriesBandPass } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { at, type Complex, over, product, sum } from '../complex.js';
import { paperAir, physical, split } from './textbook.js';

/** A band-pass box in the terms of the textbooks; volumes in litres. */
export interface BandPassRow {
  readonly fs: number;
  readonly Qts: number;
  readonly Vas: number;
  readonly rearVolume: number;
  readonly frontVolume: number;
  readonly frontTuning: number;
  /** Only of sixth order. */
  readonly rearTuning?: number;
}

export const driverOf = ({ fs, Qts, Vas }: BandPassRow): Driver =>
  physical({ fs, ...split(Qts), Vas: Vas / 1e3, Sd: 0.033, Re: 5.6 }, paperAir);

const fieldsOf = (row: BandPassRow) => ({
  drivers: driverOf(row),
  rearVolume: si('volume', row.rearVolume / 1e3),
  frontVolume: si('volume', row.frontVolume / 1e3),
  frontTuning: si('frequency', row.frontTuning),
});
const sixth = (row: BandPassRow) => ({ ...fieldsOf(row), rearTuning: si('frequency', row.rearTuning ?? 30) });

export const boxes = {
  fourth: (row: BandPassRow): System => fourthOrderBandPass(fieldsOf(row), paperAir),
  parallel: (row: BandPassRow): System => parallelBandPass(sixth(row), paperAir),
  series: (row: BandPassRow): System => seriesBandPass(sixth(row), paperAir),
};

const parts = ({ fs, Qts, Vas, rearVolume, frontVolume, frontTuning, rearTuning = 30 }: BandPassRow) => ({
  Q: Qts,
  r: (rearTuning / fs) ** 2,
  f: (frontTuning / fs) ** 2,
  a: Vas / rearVolume,
  b: Vas / frontVolume,
});

/** p/p∞ of each; r and f are squares of the tunings over fs, a and b the compliance ratios of rear and front. */
export const responses = {
  fourth: (row: BandPassRow) => (s: Complex) => {
    const { Q, f, a, b } = parts(row);
    return over(at(s, 0, 0, f), sum(product(at(s, 1 + a, 1 / Q, 1), at(s, f, 0, 1)), at(s, 0, 0, b)));
  },
  parallel: (row: BandPassRow) => (s: Complex) => {
    const { Q, r, f, a, b } = parts(row);
    const driver = product(at(s, 1, 1 / Q, 1), at(s, r, 0, 1), at(s, f, 0, 1));
    const air = product(at(s, 0, 0, 1), sum(at(s, a * f, 0, a), at(s, b * r, 0, b)));
    return over(at(s, 0, 0, 0, 0, f - r), sum(driver, air));
  },
  series: (row: BandPassRow) => (s: Complex) => {
    const { Q, r, f, a, b } = parts(row);
    const vents = sum(product(at(s, f, 0, 1), at(s, r, 0, 1)), at(s, 0, 0, (b / a) * r));
    const air = product(at(s, 0, 0, 1), sum(at(s, a * f, 0, a), at(s, 0, 0, b)));
    return over(at(s, 0, 0, 0, 0, f), sum(product(at(s, 1, 1 / Q, 1), vents), air));
  },
};
