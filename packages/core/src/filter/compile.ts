import { type ComplexColumn, polynomialOnImaginaryAxis } from '../numeric/index.js';
import type { FrequencyGrid } from '../quantity/index.js';
import { type Filter, normalisedFilter } from './filter.js';

/** Multiplies the first `grid.length` points of a complex response by the filter, in place. It allocates nothing. */
export type FilterKernel = (grid: FrequencyGrid, response: ComplexColumn) => void;

/**
 * Compiles a filter into a kernel that multiplies any response by its transfer function.
 *
 * $$ H(j\omega) = \frac{\sum_k b_k (j\omega)^k}{\sum_k a_k (j\omega)^k} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $b_k$ | `numerator` | sᵏ | coefficients, ascending |
 * | $a_k$ | `denominator` | sᵏ | coefficients, ascending |
 *
 * @validity order up to 8, corner of 10⁻⁵ to 10⁹ rad/s, stable.
 * @neglects nothing; it uses powers of ω over the corner, so that none overflows.
 * @returns a {@link FilterKernel}; exp(+jωt)
 * @throws InputError `empty`, `not-finite`, `out-of-range`, `inconsistent`
 * @source zverev1967 ch. 2
 * @example compileFilter(highPass(butterworthShape(2), '25 Hz'))(grid, pressure) // pressure is filtered now
 */
export function compileFilter(filter: Filter): FilterKernel {
  const { scale, numerator, denominator } = normalisedFilter(filter);
  const toOmega = (2 * Math.PI) / scale;
  const value = new Float64Array(2);
  return (grid, { re, im }) => {
    for (let i = 0; i < grid.length; i++) {
      const w = grid[i]! * toOmega;
      polynomialOnImaginaryAxis(numerator, w, value);
      const a = value[0]!;
      const b = value[1]!;
      polynomialOnImaginaryAxis(denominator, w, value);
      const c = value[0]!;
      const d = value[1]!;
      const inverse = 1 / (c * c + d * d);
      const gainRe = (a * c + b * d) * inverse;
      const gainIm = (b * c - a * d) * inverse;
      const r = re[i]!;
      const j = im[i]!;
      re[i] = r * gainRe - j * gainIm;
      im[i] = r * gainIm + j * gainRe;
    }
  };
}
