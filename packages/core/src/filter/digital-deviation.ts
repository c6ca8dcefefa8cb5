import { refuse } from '../fault/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { type Frequency, type FrequencyInput, logarithmicGrid, positive, readFields, si } from '../quantity/index.js';
import type { DigitalFilter } from './biquads.js';
import { compileFilter, type FilterKernel } from './compile.js';
import { compileBiquads } from './compile-biquads.js';
import type { Filter } from './filter.js';

/** How far two responses are apart at worst. */
export interface DigitalDeviation {
  /** Greatest difference of level, dB; positive where the digital filter is louder. */
  readonly level: number;
  /** Where that is. */
  readonly levelAt: Frequency;
  /** Greatest difference of phase, rad; positive where the digital filter is ahead. */
  readonly phase: number;
  /** Where that is. */
  readonly phaseAt: Frequency;
}

const POINTS = 400;
const bandShape = { from: positive('frequency'), to: positive('frequency') };

const responseOf = (kernel: FilterKernel, grid: Parameters<FilterKernel>[0]): ComplexColumn => {
  const column = complexColumn(grid.length);
  column.re.fill(1);
  kernel(grid, column);
  return column;
};

/** The worst differences of two kernels at 400 frequencies of a band. */
export function deviationOf(first: FilterKernel, second: FilterKernel, from: number, to: number): DigitalDeviation {
  const grid = logarithmicGrid(from, to, POINTS);
  const [one, other] = [responseOf(first, grid), responseOf(second, grid)];
  const size = ({ re, im }: ComplexColumn, i: number) => Math.max(Math.hypot(re[i]!, im[i]!), 1e-150);
  const levels = grid.map((_, i) => 20 * Math.log10(size(other, i) / size(one, i)));
  const phases = grid.map((_, i) => {
    const [a, b, c, d] = [one.re[i]!, one.im[i]!, other.re[i]!, other.im[i]!];
    return Math.atan2(d * a - c * b, c * a + d * b);
  });
  const worst = (list: Float64Array) =>
    list.reduce((at, value, i) => (Math.abs(value) > Math.abs(list[at]!) ? i : at), 0);
  const [level, phase] = [worst(levels), worst(phases)];
  return {
    level: levels[level]!,
    levelAt: si('frequency', grid[level]!),
    phase: phases[phase]!,
    phaseAt: si('frequency', grid[phase]!),
  };
}

/**
 * How far a digital filter is from the analog one in a band: near half the sample rate the bilinear transform squeezes the frequencies.
 *
 * $$ \Delta L = \max_f 20\log_{10}\frac{|H_d(f)|}{|H(f)|}, \quad \Delta\varphi = \max_f \arg\frac{H_d(f)}{H(f)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $H$ | `filter` | 1 | analog filter |
 * | $H_d$ | `digital` | 1 | digital filter |
 * | $f$ | `from`, `to` | Hz | band |
 *
 * @validity up to half the sample rate; the worst of 400 frequencies that divide the band into equal ratios
 * @neglects the delay of the converter
 * @returns the greatest difference of level and that of phase, with their signs, each with its frequency
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`, `unsorted`, `unknown-field`
 * @source oppenheim1975 ch. 5, warping of the frequency axis
 * @example digitalDeviation(filter, biquads(filter, { sampleRate: '48 kHz' }), { from: '20 Hz', to: '20 kHz' }).level // dB
 */
export function digitalDeviation(
  filter: Filter,
  digital: DigitalFilter,
  band: { readonly from: FrequencyInput; readonly to: FrequencyInput },
): DigitalDeviation {
  const { from, to } = readFields('deviation', band, bandShape);
  const { sampleRate } = digital;
  if (to > sampleRate / 2) {
    const remedy = 'Lower it: beyond, the digital filter repeats itself.';
    const expected = `at most half the sample rate of ${sampleRate} Hz`;
    refuse([{ code: 'out-of-range', path: 'deviation.to', got: to, expected, remedy }]);
  }
  return deviationOf(compileFilter(filter), compileBiquads(digital), from, to);
}
