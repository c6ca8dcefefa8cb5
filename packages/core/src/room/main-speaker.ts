import { compileFilter, type Filter } from '../filter/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { anySign, frequencyGrid, type LevelInput, readFields } from '../quantity/index.js';
import { REFERENCE_PRESSURE } from '../response/index.js';
import { filterField } from './filter-field.js';

/** A main speaker that a bass box joins: flat above, and a high-pass below. */
export interface MainSpeaker {
  /** In its band, at 1 m in half space, at the drive that is meant. */
  readonly level: LevelInput;
  /** What it does by itself at low frequencies: `highPass(butterworthShape(2), '60 Hz')` for a closed one. */
  readonly highPass: Filter;
}

const shape = { level: anySign('level'), highPass: filterField };

/**
 * The sound pressure of a main speaker that is flat above its natural high-pass.
 *
 * $$ p = p_0\,10^{L/20}\,H(j\omega) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `level` | dB | level in its band, at 1 m in half space |
 * | $H$ | `highPass` | 1 | its high-pass: order 2 for a closed box, 4 for a vented one |
 * | $p_0$ | | Pa | 20 µPa |
 *
 * @validity a few octaves about the crossing
 * @neglects where it beams, its own crossings, what its baffle loses below a few hundred hertz; for those, measure it and use
 *   `soundPressure`
 * @returns Pa rms at 1 m in half space, one complex value for each frequency
 * @throws InputError `empty`, `unit`, `not-finite`, `out-of-range`, `unsorted`, `unknown-field`, `inconsistent`
 * @source zverev1967 ch. 2
 * @example mainPressure({ level: '88 dB', highPass: highPass(butterworthShape(2), '60 Hz') }, grid)
 */
export function mainPressure(main: MainSpeaker, frequencies: ArrayLike<number>): ComplexColumn {
  const { level, highPass } = readFields('main', main, shape);
  const grid = frequencyGrid(frequencies);
  const out = complexColumn(grid.length);
  out.re.fill(REFERENCE_PRESSURE * 10 ** (level / 20));
  compileFilter(highPass)(grid, out);
  return out;
}
