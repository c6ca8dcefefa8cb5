import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import { WITHIN } from '../../../packages/airspring/src/search/axis.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { compileBox } from '../../../packages/airspring/src/search/box.js';
import { costByPoints } from '../../../packages/airspring/src/search/cost.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';

// No lattice, no shapes and no walk: every edge, the height of the slot and its length are spread evenly over the part of what
// the brief allows where boxes stand. The width of a slot from side to side is that of the box.
const BOXES = fuzzRuns < 300 ? 60_000 : 180_000;

/** Its powers spread points evenly over five dimensions, without a pattern: x⁶ = x + 1. */
const ROOT = 1.1347241384015194;
const STEPS = [1, 2, 3, 4, 5].map((power) => ROOT ** -power);

/** What a box costs at least that misses a wish; any other costs its points. */
const MISSED = 1e3;

/** Parts of the range of each number: the three edges, the height of the slot, and its length, which may be up to 20 m. */
const RANGES = [
  [0.4, 1],
  [0.4, 1],
  [0.4, 1],
  [0, 0.35],
  [0, 0.06],
] as const;

/** A slot as wide as the box is low and long: few of these boxes stand, and none elsewhere. */
const RANGES_WIDE = [
  [0.3, 1],
  [0.5, 1],
  [0.5, 1],
  [0, 0.15],
  [0, 0.05],
] as const;

const { printer: _, ...rest } = demo;
const briefs: readonly (readonly [string, Partial<Brief>, typeof RANGES | typeof RANGES_WIDE])[] = [
  ['from side to side', {}, RANGES_WIDE],
  ['along one panel', { slot: { width: '180 mm', along: ['one'] } }, RANGES],
  ['in a corner', { slot: { width: '180 mm', along: ['two'] } }, RANGES],
];

test.each(briefs)(
  'no box of a grid beats the box that is found by a hundredth of what was asked for: %s',
  (_name, more, ranges) => {
    const brief = {
      ...rest,
      ...more,
      box: { ...demo.box, kinds: ['slot-vented'] },
      wanted: { ...demo.wanted, level: '88 dB' },
    } as Brief;
    const search = searchFor(brief);
    const { job, wishes } = search;
    const [best] = bestBoxes(search, 1);
    if (best === undefined) throw new Error('the brief is met');
    const cost = costByPoints(job, job.weights);
    const least = cost.of(best.excess, best.criteria);
    // A hundredth of each thing asked for: ten points are an octave, a halving, ten decibels.
    const hundredth = 10 * Math.log2(1.01);
    let stood = 0;
    const better: string[] = [];
    for (const variant of search.variants) {
      const { priceAt, boxAt, stands, lower, upper } = compileBox(
        job,
        wishes,
        variant,
        search.demandOf(variant),
        WITHIN,
      );
      for (let n = 1; n <= BOXES; n++) {
        const cell = lower.map((low, i) => {
          const [from, to] = ranges[i] as readonly [number, number];
          return low + Math.round((from + (to - from) * ((n * STEPS[i]!) % 1)) * (upper[i]! - low));
        });
        const price = priceAt(cell, cost, MISSED);
        if (price >= MISSED) continue;
        stood++;
        if (price < least - hundredth && stands(boxAt(cell)!)) better.push(`${cell}: ${least - price}`);
      }
    }
    expect(stood).toBeGreaterThan(100);
    expect(better.slice(0, 5)).toEqual([]);
  },
);
