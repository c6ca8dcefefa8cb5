import type { Builds } from '@airspring/core/tolerance';
import { readBrief } from '../brief/read.js';
import type { Written } from '../job/job.js';
import type { Variant } from '../kind/box-kind.js';
import { completeOptions } from '../kind/brief-options.js';
import type { Point } from '../kind/point.js';
import { buildsOf } from '../record/scatter.js';
import { searchOf } from '../search/search.js';
import type { Chunk } from './chunk.js';

/** Some builds of one box of a brief. */
export interface BuildsWanted {
  readonly brief: Written;
  /** The place of its variant among those of the brief, and its point. */
  readonly variant: number;
  readonly point: Point;
  readonly seed: number;
  readonly first: number;
  readonly count: number;
}

/** Works out some builds of a box. They hang on the seed and on the number of each build alone. */
export const builds: Chunk<BuildsWanted, Builds> = {
  name: 'builds',
  work: ({ brief, variant, point, seed, first, count }, options) => {
    const { kinds, models, alignments, shapes } = completeOptions(options);
    const { variants, job } = searchOf(readBrief(brief, kinds, models, alignments, shapes), { kinds, models });
    const kernel = buildsOf(job, { variant: variants[variant] as Variant, point });
    return kernel?.(seed, first, count) ?? { first, count: 0, levels: new Float64Array(0), f3: new Float64Array(0) };
  },
  columns: ({ levels, f3, greatestLevels }) => [levels, f3, ...(greatestLevels ? [greatestLevels] : [])],
};
