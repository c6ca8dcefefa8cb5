import { complexColumn } from '../numeric/index.js';
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
  const out = new Float64Array(grid.length);
  compileFilterLevel(filter)(grid, out);
  return out;
}

/** The same for many grids: fills `out`. It allocates only when it sees more frequencies than before. */
export function compileFilterLevel(filter: Filter): (grid: FrequencyGrid, out: Float64Array) => void {
  const apply = compileFilter(filter);
  let room = complexColumn(1);
  return (grid, out) => {
    if (room.re.length < grid.length) room = complexColumn(grid.length);
    const { re, im } = room;
    re.fill(1);
    im.fill(0);
    apply(grid, room);
    for (let i = 0; i < grid.length; i++) out[i] = 20 * Math.log10(Math.max(Math.hypot(re[i]!, im[i]!), 1e-150));
  };
}
