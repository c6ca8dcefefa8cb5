import { logarithmicSlope } from '../numeric/index.js';
import type { FrequencyGrid } from '../quantity/index.js';
import { type Filter, normalisedFilter } from './filter.js';

/**
 * Exact group delay of a filter, from its polynomials.
 *
 * $$ \tau = -\frac{d\varphi}{d\omega} = \mathrm{Re}\!\left(\frac{D'}{D} - \frac{N'}{N}\right)_{s = j\omega} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $N$, $D$ | `filter` | | numerator and denominator of the transfer function |
 * | $\omega/2\pi$ | `grid` | Hz | frequencies |
 * | $\varphi$ | | rad | phase of the transfer function |
 *
 * @validity as `compileFilter`.
 * @neglects the jump of the phase at a zero on the imaginary axis.
 * @returns s, one for each frequency
 * @throws InputError `empty`, `not-finite`, `out-of-range`, `inconsistent`
 * @source zverev1967 ch. 2, group delay
 * @example filterGroupDelay(highPass(butterworthShape(1), '25 Hz'), frequencyGrid([25])) // 0.00318 s
 */
export function filterGroupDelay(filter: Filter, grid: FrequencyGrid): Float64Array {
  const { scale, numerator, denominator } = normalisedFilter(filter);
  const omega = grid.map((f) => (2 * Math.PI * f) / scale);
  const subtracted = logarithmicSlope(numerator, omega);
  return logarithmicSlope(denominator, omega).map((slope, i) => (slope - subtracted[i]!) / scale);
}
