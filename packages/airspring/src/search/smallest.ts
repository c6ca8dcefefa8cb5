import { WITHIN } from './axis.js';
import type { Box } from './box.js';
import type { Cost } from './cost.js';
import { explore } from './explore.js';
import { type Search, searchAgain } from './search.js';
import { DECIBEL, LEVEL, missed } from './wishes.js';

/**
 * Cost of a box that must meet every wish at a lower level than the search is for: first by what it misses, then by its outer
 * volume. All that a level asks of drivers, amplifier and air is in proportion to its amplitude, so that one sound serves all levels.
 */
function costOfVolume({ wishes: { list } }: Search, lower: number): Cost {
  const eased = list.map(({ path, easedByLevel }) => (path === LEVEL || easedByLevel ? lower * DECIBEL : 0));
  const over = new Float64Array(list.length);
  return {
    of: (excess, { volume }) => {
      for (let i = 0; i < over.length; i++) over[i] = excess[i]! - eased[i]!;
      const miss = missed(over);
      return miss > 0 ? 1e3 + 20 * miss : 10 * Math.log2(volume);
    },
    slack: 1,
    least: -Infinity,
    // As where points are counted, no walk leads to a box that meets every wish from one that misses more.
    most: 1e3 + 20,
  };
}

/** The smallest box that plays from a frequency upwards, for each level, with every other wish of the brief met. */
export function smallestBoxes(search: Search, lowest: number, levels: readonly number[]): (Box | undefined)[] {
  const { job } = search;
  const loudest = Math.max(...levels);
  const again = searchAgain(search, { ...job, wanted: { ...job.wanted, lowest, level: loudest } });
  const costs = levels.map((level) => costOfVolume(again, loudest - level));
  return explore(again, costs, WITHIN).map((box, k) =>
    box !== undefined && costs[k]!.of(box.excess, box.criteria) < 1e3 ? box : undefined,
  );
}
