import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { frequencyGrid, given, readFieldsInto } from '../quantity/index.js';
import { type PathInput, pathKernel, pathShape } from './path.js';
import { copyOf, unlessPressure } from './pressure.js';

/** A box, and the way of its sound to the listener. */
export interface SourceInput extends PathInput {
  /** At 1 m in half space, Pa rms, over the same frequencies for all. `soundPressure` makes it. */
  readonly pressure: ComplexColumn;
}

const sourceShape = { ...pathShape, pressure: given<ComplexColumn>() };

/**
 * The pressure at a listener from several boxes, each with its distance, delay, polarity and level.
 *
 * $$ p = \sum_i p_i\,g_i,\qquad g_i = \pm\,10^{\Delta L_i/20}\,\frac{2\pi}{\Omega_i}\,\frac{1\,\mathrm m}{r_i}\,e^{-j\omega(\tau_i + r_i/c)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p_i$ | `sources[].pressure` | Pa | of each box alone, at 1 m in half space |
 * | $g_i$ | `sources[]` | 1 | its way to the listener, as `compilePath` |
 *
 * Two equal boxes in phase give 6.02 dB more than one, and nothing where one is half a period late.
 *
 * @validity small sources in a free field
 * @neglects the room, and what one box does to the load of another. Boxes nearer than a sixth of the wavelength change each other's cone
 *   a little
 * @returns Pa rms at the listener, one complex value for each frequency
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `unknown-field`, `inconsistent`
 * @source beranek2012 pressure of several simple sources
 * @example sumAtListener([{ pressure, distance: '2 m' }, { pressure, distance: '3 m', delay: '1 ms' }], grid)
 */
export function sumAtListener(
  sources: readonly SourceInput[],
  frequencies: ArrayLike<number>,
  air: Air = standardAir,
): ComplexColumn {
  const grid = frequencyGrid(frequencies);
  readAir(air);
  if (!Array.isArray(sources) || sources.length === 0) {
    const expected = 'a list of at least one box';
    refuse([{ code: 'empty', path: 'sources', got: sources, expected, remedy: 'Give the boxes that play.' }]);
  }
  const faults: Fault[] = [];
  const read = sources.map((source, i) => {
    const one = readFieldsInto(faults, `sources[${i}]`, source, sourceShape);
    if (one !== undefined) faults.push(...unlessPressure(`sources[${i}].pressure`, one.pressure, grid.length));
    return one!;
  });
  refuse(faults);
  const sum = complexColumn(grid.length);
  for (const { pressure, ...path } of read) {
    const there = copyOf(pressure);
    pathKernel(path, air)(grid, there);
    for (let i = 0; i < grid.length; i++) {
      sum.re[i]! += there.re[i]!;
      sum.im[i]! += there.im[i]!;
    }
  }
  return sum;
}
