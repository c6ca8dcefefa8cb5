import type { Filter } from '../filter/index.js';
import { compileFilterLevel } from '../filter/level.js';
import type { FrequencyGrid } from '../quantity/index.js';
import { type LevelOf, NEPER } from './level.js';

/** Half the step over which the slope of a filter is taken, as a change of ln f. */
const STEP = 1e-4;

/** The level of a system behind a filter. */
export function levelBehindFilter(level: LevelOf, filter: Filter): LevelOf {
  const fill = compileFilterLevel(filter);
  const passed = (frequencies: Float64Array, out: Float64Array) => fill(frequencies as FrequencyGrid, out);
  const [one, lowered] = [new Float64Array(1), new Float64Array(1)];
  const at = (frequency: number): number => {
    one[0] = frequency;
    passed(one, lowered);
    return lowered[0]!;
  };
  return {
    at: (frequency) => level.at(frequency) + at(frequency),
    slope: (frequency) => {
      const change = at(frequency * Math.exp(STEP)) - at(frequency * Math.exp(-STEP));
      return level.slope(frequency) + change / (2 * STEP * NEPER);
    },
    column: (frequencies, swept) => {
      const out = new Float64Array(frequencies.length);
      passed(frequencies, out);
      const bare = level.column(frequencies, swept);
      for (let i = 0; i < out.length; i++) out[i]! += bare[i]!;
      return out;
    },
  };
}
