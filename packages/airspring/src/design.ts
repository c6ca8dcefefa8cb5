import { InputError } from '@airspring/core/fault';
import * as v from 'valibot';
import { alignmentField } from './brief/alignment.js';
import { type BriefField, fieldsOf } from './brief/field-list.js';
import { jsonSchemaOf } from './brief/json-schema.js';
import { readBrief } from './brief/read.js';
import { schemaWith } from './brief/schema.js';
import type { AlignmentChoice } from './job/alignment-choice.js';
import { type BriefOptions, completeOptions } from './kind/brief-options.js';
import type { Brief } from './kind/standard.js';
import { listOf } from './kind/wording.js';
import type { Answer, Met, NotMet } from './record/answer.js';
import { assemble } from './record/assemble.js';
import { accountsOf } from './record/driver-account.js';
import { type DriverVerdict, perDriverOf, wishText } from './record/per-driver.js';
import { pricesOf } from './record/prices.js';
import { scatterTold } from './record/scatter.js';
import { bestBoxes } from './search/best.js';
import { conflictOf } from './search/conflict.js';
import { nearestBrief } from './search/nearest.js';
import { type Progress, type Search, searchOf } from './search/search.js';
import { type Selection, select } from './search/select.js';
import { metWithoutPrinter } from './search/without-printer.js';
import { standingFields } from './standing/fields.js';
import { stands } from './standing/read.js';
import { comparison } from './words/comparison.js';
import { phrasing } from './words/phrasing.js';

/** What is told of each design where it is asked for. */
type Told = Pick<DesignOptions, 'scatter' | 'prices'>;

/** The boxes that meet a brief, each for what it is best at. */
function metOf(
  search: Search,
  chosen: Selection,
  { perDriver = [], scatter = false, prices = false }: { readonly perDriver?: readonly DriverVerdict[] } & Told = {},
): Met {
  const { job } = search;
  const [first] = chosen;
  const priced = prices ? pricesOf(search, chosen) : [];
  const without = leftOut(search);
  const designs = chosen.map(({ box, leaning }, i) => {
    const words = i === 0 ? [] : comparison(box.criteria, first.box.criteria);
    const design = assemble(search, box, String.fromCharCode(65 + i), leaning, words);
    return {
      ...design,
      ...(scatter && { scatter: scatterTold(job, box) }),
      ...(priced[i] && { prices: priced[i] }),
    };
  });
  return {
    ok: true,
    version: 1,
    title: job.title,
    asked: job.wanted,
    designs,
    ...(perDriver.length > 0 && { perDriver }),
    ...(without.length > 0 && { leftOut: without }),
    drivers: accountsOf(job),
  };
}

/** The designs of a brief that can be met, from the best box for each of its leanings, or for the first of them. */
export function metBy(search: Search, boxes = bestBoxes(search)): Met | undefined {
  const chosen = select(search, boxes);
  return chosen && metOf(search, chosen);
}

/** The boxes that were left out because they cannot have the alignment of the brief, and why: one sentence for each reason. */
function leftOut({ unsuited, variants }: Search): readonly string[] {
  const places = new Map<string, Set<string>>();
  for (const { kind, choice, because } of unsuited) {
    if (variants.some((one) => one.kind === kind && one.choice.name === choice.name)) continue;
    const known = places.get(because) ?? new Set();
    places.set(because, known.add(`"${choice.name}" in ${kind.called}`));
  }
  return [...places].map(([because, all]) => `${listOf([...all])}: ${because}.`);
}

/** No driver can have the alignment that the brief asks for, in any kind of box that it allows. */
function unsuitedTo(search: Search): NotMet | undefined {
  const { job, unsuited, variants } = search;
  if (variants.length > 0 || unsuited.length === 0) return undefined;
  const { name, takes } = job.alignment as AlignmentChoice;
  const parameters = takes === undefined ? [] : [`alignment.parameters of ${name}: ${takes}.`];
  const because = ['No box of the allowed kinds has the alignment of this brief.', ...leftOut(search), ...parameters];
  const conflict = [{ path: 'alignment.name', wish: `the alignment ${name}` }];
  return { ok: false, version: 1, title: job.title, conflict, because, drivers: accountsOf(job) };
}

/** What the variants ask of their room, each sentence once. */
function asksForRoom({ job, variants }: Search): readonly string[] {
  const { phrase } = phrasing(job.units);
  return [...new Set(variants.flatMap(({ asksForRoom }) => (asksForRoom ? [phrase(asksForRoom)] : [])))];
}

/** The usual printer with which a box meets every wish, where that of the brief is what stands in the way. */
function otherPrinter(search: Search): string[] {
  const met = metWithoutPrinter(search);
  const [design] = met ? metOf(met.search, [{ box: met.box, leaning: 'balanced' }]).designs : [];
  const edges = [design?.vent, ...(design?.vents ?? [])].flatMap((vent) => vent?.printer?.height ?? []);
  if (edges.length === 0) return [];
  const { length } = phrasing(search.job.units);
  return [
    `Another printer helps as well: with one that builds ${length(Math.max(...edges))} in each direction a box meets every wish.`,
  ];
}

function notMet(search: Search, told: Told): Answered {
  const { job } = search;
  const { wishes, fallenAtEnd } = conflictOf(search);
  const conflict = wishes.map((wish) => ({ path: wish.path, wish: wishText(wish) }));
  const named = conflict.map(({ wish }) => wish).join('; ');
  const because =
    conflict.length === 0
      ? [
          'No box of the allowed kinds has room for the drivers and for its other parts. Compare their sizes with the space.',
          ...asksForRoom(search),
        ]
      : conflict.length === 1
        ? [`No box that was tried meets this wish: ${named}.`]
        : [
            `These wishes conflict: ${named}. No box that was tried meets all of them. If you drop any one of them, some box meets the others.`,
          ];
  if (fallenAtEnd) {
    const { highest } = job.written.wanted as { readonly highest: string };
    because.push(
      `At the end of the band, ${highest}, the response of every box has already fallen further than wanted.fall allows. Ask for a lower wanted.highest.`,
    );
  }
  const without = leftOut(search);
  if (without.length > 0) because.push('Other boxes cannot have the alignment of this brief.', ...without);
  because.push(...otherPrinter(search));
  const head = { ok: false, version: 1, title: job.title, conflict, because, drivers: accountsOf(job) } as const;
  const nearest = fallenAtEnd ? undefined : nearestBrief(search);
  if (nearest === undefined) return { answer: head };
  const { changes, brief, box } = nearest;
  // What its boxes sound like and the room in them is known already.
  const again =
    nearest.search.job.choices.length === job.choices.length
      ? nearest.search
      : searchOf(readBrief(brief, search.kinds, search.models, job.alignments, job.shapes), search);
  // Should the leanings find nothing, there is still the box that showed that this brief can be met.
  const chosen = select(again, bestBoxes(again)) ?? [{ box, leaning: 'balanced' }];
  const shown = { search: again, chosen };
  const answer = metOf(again, chosen, told);
  // A look beyond the brief may find a box within it that the search missed.
  if (changes.length === 0) return { answer, shown };
  return { answer: { ...head, nearest: { changes, brief: brief as unknown as Brief, answer } }, shown };
}

/** An answer, and where the designs come from that it shows. */
export interface Answered {
  readonly answer: Answer;
  readonly shown?: { readonly search: Search; readonly chosen: Selection };
}

/** Options of a search, besides its brief. */
export interface DesignOptions extends BriefOptions {
  /** Called from time to time during the search. */
  readonly progress?: Progress;
  /** Whether each design also tells what builds of it will scatter: its field `scatter`. It takes some milliseconds a design. */
  readonly scatter?: boolean;
  /** Whether each design also tells what each wish at its limit costs: its field `prices`. For each of these wishes the search is done again. */
  readonly prices?: boolean;
}

/** As {@link design}, with the boxes of the designs. */
export function answered(brief: unknown, options: DesignOptions): Answered {
  if (stands(brief)) {
    const remedy = 'For an existing box call retrofit(brief). For a new box remove this field.';
    throw new InputError([
      { code: 'conflict', path: 'standing', got: 'an existing box', expected: 'a brief for a new box', remedy },
    ]);
  }
  const { kinds, models, alignments, shapes } = completeOptions(options);
  const { progress, scatter = false, prices = false } = options;
  const search = searchOf(readBrief(brief, kinds, models, alignments, shapes), { kinds, models, progress });
  const unsuited = unsuitedTo(search);
  if (unsuited) return { answer: unsuited };
  const chosen = select(search, bestBoxes(search));
  if (chosen === undefined) return notMet(search, { scatter, prices });
  const perDriver = perDriverOf(search, chosen[0].box);
  return { answer: metOf(search, chosen, { perDriver, scatter, prices }), shown: { search, chosen } };
}

/**
 * The whole job as one call. It turns a brief into up to five boxes that meet it, or into the reasons why none does and the
 * nearest brief that can be met. It searches over volume, tuning, shape, parts and drivers within every limit. The same brief
 * always gives the same answer.
 *
 * @throws InputError with every fault of the brief at its path
 * @example design(brief).ok // true
 */
export const design = (brief: unknown, options: DesignOptions = {}): Answer => answered(brief, options).answer;

/** The schema of a brief about a new box or an existing one. */
const wholeSchema = (options: BriefOptions) => {
  const { kinds, models, alignments, shapes } = completeOptions(options);
  const standing = v.exactOptional(standingFields.standing);
  return schemaWith(
    kinds,
    { ...standingFields, standing, alignment: alignmentField(alignments) },
    models,
    shapes.length > 0 ? shapes : undefined,
  );
};

/**
 * The JSON Schema of a brief about a new box or an existing one, for editors. It is made from the schema that
 * reads briefs.
 *
 * @example JSON.stringify(briefJsonSchema(), null, 2)
 */
export const briefJsonSchema = (options: BriefOptions = {}): object => ({
  ...jsonSchemaOf(wholeSchema(options)),
  anyOf: [{ required: ['space'] }, { required: ['standing'] }],
});

/**
 * Every field of a brief as data, with its unit, default, range and an example. It is made from the schema that reads briefs.
 *
 * @example briefFields().find(({ path }) => path === 'wanted.level')?.units // ['dB']
 */
export const briefFields = (options: BriefOptions = {}): readonly BriefField[] =>
  fieldsOf(wholeSchema(options) as unknown as v.GenericSchema);
