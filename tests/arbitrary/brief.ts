import { type Answer, type Brief, type Design, design, type Met } from 'airspring';
import whaleBench from '../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { readBrief } from '../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../packages/airspring/src/brief/standard-models.js';
import { metBy } from '../../packages/airspring/src/design.js';
import type { BoxKind } from '../../packages/airspring/src/kind/box-kind.js';
import type { BriefOptions } from '../../packages/airspring/src/kind/brief-options.js';
import { standard } from '../../packages/airspring/src/kind/standard.js';
import { bestBoxes } from '../../packages/airspring/src/search/best.js';
import { memory, type Search, searchOf } from '../../packages/airspring/src/search/search.js';

/** The brief of the demonstration. */
export const demo = whaleBench as Brief;

/** A passive radiator that goes with its driver, invented. */
export const demoRadiator = {
  name: 'ten-inch radiator, invented',
  Sd: '330 cm²',
  fs: '17 Hz',
  Vas: '110 L',
  Qms: 6,
  Xmax: '14 mm',
  outerDiameter: '260 mm',
  cutoutDiameter: '232 mm',
  depth: '70 mm',
} as const;

type Sections = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** A brief with one field changed; without a value the field is left out. */
export function put(brief: Brief, path: string, value: unknown): Brief {
  const [section, field] = path.split('.') as [string, string];
  const { [field]: _, ...rest } = ((brief as unknown as Sections)[section] ?? {}) as Record<string, unknown>;
  return { ...brief, [section]: value === undefined ? rest : { ...rest, [field]: value } } as Brief;
}

const answers = memory((brief: string): Answer => design(JSON.parse(brief)));
/** The answer to a brief, worked out once for all tests that ask. A test that is about working it out calls `design`. */
export const answerTo = (brief: unknown): Answer => answers(JSON.stringify(brief));

/** The answer to a brief that can be met. */
export function met(brief: unknown): Met {
  const answer = answerTo(brief);
  if (!answer.ok) throw new Error(answer.because.join(' '));
  return answer;
}

/** The designs of a search for the weights of its brief, or for so many of its leanings. */
export const balanced = (search: Search, leanings = 1): Met | undefined => metBy(search, bestBoxes(search, leanings));

const weighed = memory((asked: string): Met | undefined => {
  const { brief, leanings } = JSON.parse(asked);
  return balanced(searchFor(brief), leanings);
});

/**
 * The answer to a brief that can be met, by its own weights alone, worked out once. Boxes that lean to one wish take several times as
 * long; a test that asks of every box whether something holds of it has two with the first leaning.
 */
export function metByWeights(brief: unknown, leanings = 1): Met {
  const answer = weighed(JSON.stringify({ brief, leanings }));
  if (answer === undefined) throw new Error('no box meets the brief');
  return answer;
}

/** The best box of such an answer. */
export const bestOf = (brief: unknown): Design => metByWeights(brief).designs[0] as Design;

/** Whether the search that a design comes from finds a box; without telling why not, which takes longer. */
export const possible = (brief: Brief): boolean => bestBoxes(searchFor(brief)).some((box) => box !== undefined);

/** The search of a brief, by default among the kinds that are tried when none are passed in. */
export const searchFor = (
  brief: unknown,
  kinds: readonly BoxKind[] = standard,
  { alignments, shapes }: Pick<BriefOptions, 'alignments' | 'shapes'> = {},
): Search => searchOf(readBrief(brief, kinds, standardModels, alignments, shapes), { kinds, models: standardModels });
