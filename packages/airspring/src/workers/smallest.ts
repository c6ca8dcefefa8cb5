import { readBrief } from '../brief/read.js';
import type { Written } from '../job/job.js';
import { completeOptions } from '../kind/brief-options.js';
import type { Box } from '../search/box.js';
import { searchOf } from '../search/search.js';
import { smallestBoxes } from '../search/smallest.js';
import type { Chunk } from './chunk.js';

/** The smallest box that plays so loud from so low a frequency upwards. */
export interface SmallestBox {
  /** Hz. */
  readonly lowest: number;
  /** dB. */
  readonly level: number;
  /** Outer volume, m³, and outer edges, m. */
  readonly volume: number;
  readonly outer: readonly [width: number, height: number, depth: number];
  readonly netVolume: number;
  /** The kind of box: its name, and its noun in a sentence. */
  readonly kind: string;
  readonly called: string;
  readonly drivers: { readonly name: string; readonly index: number; readonly count: number };
}

/** One beginning of the band, and some levels. */
export interface SmallestWanted {
  readonly brief: Written;
  readonly lowest: number;
  readonly levels: readonly number[];
}

const toldOf = ({ variant, edges, point, criteria }: Box, lowest: number, level: number): SmallestBox => ({
  lowest,
  level,
  volume: criteria.volume,
  outer: edges,
  netVolume: point[0]!,
  kind: variant.kind.name,
  called: variant.kind.called,
  drivers: { name: variant.choice.name, index: variant.choice.driverIndex, count: variant.choice.drivers.count },
});

/** Searches for the smallest boxes of one beginning of the band, one for each level that can be played. */
export const smallest: Chunk<SmallestWanted, readonly SmallestBox[]> = {
  name: 'smallest boxes',
  work: ({ brief, lowest, levels }, options) => {
    const { kinds, models, alignments, shapes } = completeOptions(options);
    const search = searchOf(readBrief(brief, kinds, models, alignments, shapes), { kinds, models });
    return smallestBoxes(search, lowest, levels).flatMap((box, k) => (box ? [toldOf(box, lowest, levels[k]!)] : []));
  },
};
