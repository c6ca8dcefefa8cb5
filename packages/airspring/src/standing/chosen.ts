import type { Phrase } from '../kind/phrase.js';
import { tubeRow } from './changes/vents.js';
import { type Chain, chainOf } from './combinations.js';
import { type MarkedSet, markedSets } from './marked-tubes.js';
import { changesNamed, isNamed, type NumberedChange, numberedChanges } from './named.js';
import type { WorkedOut } from './retrofit.js';
import type { RowDone } from './row.js';
import type { Standing } from './standing.js';
import { tunedBy, ventOf } from './state.js';
import type { Purpose, TubeSet } from './tubes.js';
import { type ChangedDesign, wholeOf } from './whole.js';

/** A changed box, and which part of the flow goes through each of its vents, by the place of the vent in the brief. */
export interface Changed {
  readonly design: ChangedDesign;
  readonly flows: ReadonlyMap<number, number>;
}

/** What is chosen to be built: a change or a combination of them, or a set of tubes for one flange. */
export type Chosen =
  | ({ readonly what: 'change'; readonly number: number; readonly row: RowDone } & Changed)
  | ({ readonly what: 'design' } & Changed)
  | {
      readonly what: 'set';
      readonly number: number;
      readonly set: TubeSet;
      /** From the shortest to the longest. */
      readonly tubes: readonly (Changed & {
        readonly mark: string;
        readonly length: number;
        readonly bent: boolean;
        readonly purpose: Purpose;
      })[];
    };

/** Which part of the flow goes through each vent. */
function flowsOf({ vents, airBeforeVents, panelThickness, job }: Standing): Map<number, number> {
  if (vents.length === 0) return new Map();
  const tuned = tunedBy(vents.map(ventOf), airBeforeVents, panelThickness, job.air);
  return new Map(vents.map(({ index }, i) => [index, tuned.ok ? tuned.shares[i]!.flow : 1] as const));
}

function changedBy({ now }: WorkedOut, chain: Chain, name: string): Changed {
  const after = chain.made.at(-1)?.after;
  return {
    design: wholeOf(now, chain, name, 'the nearest to what you want'),
    flows: after ? flowsOf(after) : new Map(),
  };
}

/** What is told of a change after which nothing of the box is another. */
const NOTHING: Phrase = ['there is nothing to build; see its steps in the report'];

/** What can be chosen, as the report names it. */
function choicesOf({ answer, made }: WorkedOut): string {
  const rows = numberedChanges(made).length;
  const sets = markedSets(answer.tubeSets).map(
    ({ number, proposed }) => `set ${number} (${proposed.map(({ mark }) => mark).join(', ')})`,
  );
  const changes = rows === 0 ? [] : [rows === 1 ? '1' : `1 to ${rows}`];
  return [...changes, ...answer.designs.map(({ name }) => name), ...sets].join(', ');
}

/** A set of tubes, or one tube of it. */
function setOf(worked: WorkedOut, { number, tubes: set, proposed }: MarkedSet, only?: string): Chosen | Phrase {
  const { now } = worked;
  const vent = now.standing.vents.find(({ index }) => index === set.vent)!;
  const wall = (set.outerDiameter - set.diameter) / 2;
  const asked = proposed.filter(({ mark }) => only === undefined || isNamed(mark, only));
  const tubes = asked.flatMap(({ mark, option: { length, bent }, purpose }) => {
    const tube = { ...vent, diameter: set.diameter, wall, hole: set.hole.hole, length };
    const chain = chainOf(now, [tubeRow(now, `set ${number}`, tube, [], [])]);
    return chain ? [{ ...changedBy(worked, chain, `set ${number}`), mark, length, bent, purpose }] : [];
  });
  return tubes.length > 0 ? { what: 'set', number, set, tubes } : ['none of its tubes can be built'];
}

const asChange = (worked: WorkedOut, { number, row, made }: NumberedChange): Chosen | Phrase => {
  const chain = chainOf(worked.now, [made]);
  return chain ? { what: 'change', number, row, ...changedBy(worked, chain, String(number)) } : NOTHING;
};

const asDesign = (worked: WorkedOut, i: number): Chosen => ({
  what: 'design',
  ...changedBy(worked, worked.chains[i]!, worked.answer.designs[i]!.name),
  design: worked.answer.designs[i]!,
});

/**
 * The change that is asked for: a number or a name of the list of changes, the letter of a combination, 'set' and a number, or
 * the mark of one tube. Where none is named, what the report says to do first. A phrase tells why there is none.
 */
export function chosenOf(worked: WorkedOut, only: string | undefined): Chosen | Phrase {
  const { answer, made } = worked;
  if (only === undefined) {
    const first = numberedChanges(made).find((one) => one.made === made[answer.first ?? -1]);
    if (first) return asChange(worked, first);
    if (answer.designs.length > 0) return asDesign(worked, 0);
    return [`no change brings the box nearer to what you want; choose one with --only: ${choicesOf(worked)}`];
  }
  const design = answer.designs.findIndex(({ name }) => isNamed(name, only));
  if (design >= 0) return asDesign(worked, design);
  const sets = markedSets(answer.tubeSets);
  const set = sets.find(({ number }) => isNamed(`set ${number}`, only));
  if (set) return setOf(worked, set);
  const ofTube = sets.find(({ proposed }) => proposed.some(({ mark }) => isNamed(mark, only)));
  if (ofTube) return setOf(worked, ofTube, only);
  const [found] = changesNamed(made, only);
  if (found) return asChange(worked, found);
  const refused = made.find(({ row }) => !row.ok && isNamed(row.change, only))?.row;
  if (refused && !refused.ok) return refused.because;
  return [`there is no change, combination, set or tube "${only}"; there is ${choicesOf(worked)}`];
}
