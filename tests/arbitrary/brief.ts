import type { Brief } from 'airspring';
import whaleBench from '../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { readBrief } from '../../packages/airspring/src/brief/read.js';
import { costByPoints } from '../../packages/airspring/src/search/cost.js';
import { explore } from '../../packages/airspring/src/search/explore.js';
import { leanings, missed, points } from '../../packages/airspring/src/search/wishes.js';

/** The brief of the demonstration. */
export const demo = whaleBench as Brief;

type Sections = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** A brief with one field changed; without a value the field is left out. */
export function put(brief: Brief, path: string, value: unknown): Brief {
  const [section, field] = path.split('.') as [string, string];
  const { [field]: _, ...rest } = ((brief as unknown as Sections)[section] ?? {}) as Record<string, unknown>;
  return { ...brief, [section]: value === undefined ? rest : { ...rest, [field]: value } } as Brief;
}

/** Whether the search that a design comes from finds a box; without telling why not, which takes longer. */
export function possible(brief: Brief): boolean {
  const job = readBrief(brief);
  const costs = leanings(job).map((weights) => costByPoints((criteria) => points(job, weights, criteria)));
  return explore(job, costs, { volume: 1, diameter: 1, step: 1 }).some(
    (build) => build !== undefined && missed(build.excess) === 0,
  );
}
