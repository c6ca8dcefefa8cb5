import { refuse } from '@airspring/core/fault';
import { answered, type DesignOptions } from './design.js';
import type { Answer } from './record/answer.js';
import type { Design } from './record/design-record.js';
import { easedOf, pricesTold } from './record/prices.js';
import { type ScatterTold, scatterTold } from './record/scatter.js';
import type { Chosen } from './search/select.js';
import { builds } from './workers/builds.js';
import { easedWish } from './workers/eased.js';
import { inPlace } from './workers/in-place.js';
import type { Watched, Workers } from './workers/workers.js';

/** How many builds are worked out, and where. */
export interface ScatteredOptions extends Watched, Pick<DesignOptions, 'prices'> {
  /** Builds of each design, 2 to 1,000,000; default 10,000. */
  readonly builds?: number;
  /** The same seed gives the same builds; default 1. */
  readonly seed?: number;
  /** Workers that share the work; default none: it is done in place. */
  readonly workers?: Workers;
}

/** How many builds are worked out at once: some hundredths of a second. */
const RUN = 1000;
const MOST = 1e6;

/**
 * As `design`, with many builds of each design: what they scatter, in the field `scatter`. The builds hang on the seed and on their
 * numbers alone, so that the answer is the same with any number of workers. Workers share what each wish costs (`prices`) as well.
 *
 * @throws InputError with every fault of the brief at its path; for workers in which briefs may name other things
 * @example const answer = await scattered(brief, { builds: 10_000, workers: two })
 */
export async function scattered(brief: unknown, options: ScatteredOptions = {}): Promise<Answer> {
  const { builds: count = 10_000, seed = 1, workers = inPlace, prices = false, ...watched } = options;
  if (!(Number.isInteger(count) && count >= 2 && count <= MOST)) {
    const expected = `a whole number from 2 to ${MOST}`;
    refuse([{ code: 'out-of-range', path: 'options.builds', got: count, expected, remedy: 'Ask for some thousands.' }]);
  }
  const { progress, signal: _, ...named } = watched;
  const { answer, shown } = answered(brief, { ...named, ...(progress && { progress }) });
  if (shown === undefined) return answer;
  const { search, chosen } = shown;
  const runs = Array.from({ length: Math.ceil(count / RUN) }, (_, i) => i * RUN);
  const told = async ({ box }: Chosen) => {
    const { written: brief } = search.job;
    const { point } = box;
    const variant = search.variants.indexOf(box.variant);
    const inputs = runs.map((first) => ({ brief, variant, point, seed, first, count: Math.min(RUN, count - first) }));
    return scatterTold(search.job, box, await workers.run(builds, inputs, watched));
  };
  const scatters: ScatterTold[] = [];
  for (const one of chosen) scatters.push(await told(one));
  const eased = prices ? easedOf(search, chosen) : [];
  const inputs = eased.map(({ brief, count }) => ({ brief, count }));
  const priced = prices ? pricesTold(search, chosen, eased, await workers.run(easedWish, inputs, watched)) : [];
  const withAll = (designs: readonly Design[]) =>
    designs.map((one, i) => ({ ...one, scatter: scatters[i]!, ...(priced[i] && { prices: priced[i] }) }));
  if (answer.ok) return { ...answer, designs: withAll(answer.designs) };
  const nearest = answer.nearest!;
  return {
    ...answer,
    nearest: { ...nearest, answer: { ...nearest.answer, designs: withAll(nearest.answer.designs) } },
  };
}
