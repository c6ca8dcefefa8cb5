import type { FrequencyGrid } from '../quantity/index.js';
import { compileFilter } from './compile.js';
import type { Filter } from './filter.js';

/**
 * Change of level caused by a filter.
 *
 * $$ L(f) = 20 \log_{10} |H(j 2\pi f)| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $H$ | `filter` | 1 | transfer function |
 * | $f$ | `grid` | Hz | frequencies |
 *
 * @validity as `compileFilter`.
 * @neglects nothing; −3000 dB stands for minus infinity, where nothing passes.
 * @returns dB, one for each frequency
 * @throws InputError `empty`, `not-finite`, `out-of-range`, `inconsistent`
 * @source zverev1967 ch. 2
 * @example filterLevel(highPass(butterworthShape(2), '25 Hz'), frequencyGrid([25])) // -3.0103 dB
 */
export function filterLevel(filter: Filter, grid: FrequencyGrid): Float64Array {
  const re = new Float64Array(grid.length).fill(1);
  const im = new Float64Array(grid.length);
  compileFilter(filter)(grid, { re, im });
  return re.map((a, i) => 20 * Math.log10(Math.max(Math.hypot(a, im[i]!), 1e-150)));
}
