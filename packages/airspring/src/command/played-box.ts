import type { System } from '@airspring/core/enclosure';
import { InputError } from '@airspring/core/fault';
import type { Filter } from '@airspring/core/filter';
import type { Limit } from '@airspring/core/limit';
import type { TimelineVent } from '@airspring/transient/timeline';
import { answered } from '../design.js';
import type { Job, LargeSignal } from '../job/job.js';
import { type BriefOptions, completeOptions } from '../kind/brief-options.js';
import { hasWaves } from '../kind/vent-waves.js';
import { listOf } from '../kind/wording.js';
import { GIVES_OUT, limitsOf, PARTS_GIVE_OUT } from '../record/limits.js';
import { probeOf } from '../record/vent-noise.js';
import type { Box } from '../search/box.js';
import type { Progress } from '../search/search.js';
import { changesTo } from '../standing/changes-to.js';
import { markedSets } from '../standing/marked-tubes.js';
import { changesNamed, isNamed, type NumberedChange, numberedChanges } from '../standing/named.js';
import { readStanding, stands } from '../standing/read.js';
import type { Standing } from '../standing/standing.js';
import { type Sounding, type State, soundingOf, stateOf } from '../standing/state.js';
import { filledWith, tubeSets } from '../standing/tubes.js';
import { wholeOf } from '../standing/whole.js';

/** A box that a recording is played through, with everything that limits it. */
export interface PlayedBox {
  readonly title: string;
  /** In words: 'design A, a vented box'. */
  readonly called: string;
  readonly system: System;
  /** What to change in the brief where the system cannot be played over time, as a sentence. */
  readonly remedy?: string;
  readonly limits: readonly Limit[];
  readonly vents: readonly TimelineVent[];
  /** The names of limits as nouns. */
  readonly givesOut: Readonly<Record<string, string>>;
  readonly filter?: Filter;
  /** Greatest sine of the amplifier, V rms. */
  readonly voltage: number;
  /** What its drivers do when they are played loud: their place in the brief, how many there are, and what is told of one. */
  readonly loud?: { readonly driver: number; readonly count: number; readonly told: LargeSignal };
}

/** A box of a brief, or why there is none. */
export type Playable = ({ readonly ok: true } & PlayedBox) | { readonly ok: false; readonly lines: readonly string[] };

/** What a vent is judged by is told once, by its onsets. */
const ownOf = (limits: readonly Limit[]) => limits.filter(({ name }) => !/^quiet vent( |$)/.test(name));

/**
 * The box that a brief is about: the first design, that of a name, the box that stands, or what a change makes of it. Where no box meets the brief, the designs
 * of the nearest brief are played.
 *
 * @throws InputError with every fault of the brief at its path
 */
export const playedBox = (
  brief: unknown,
  only: string | undefined,
  progress: Progress,
  named: Pick<BriefOptions, 'shapes' | 'flares'> = {},
): Playable => (stands(brief) ? standingBox(brief, only) : designedBox(brief, only, progress, named));

function designedBox(
  brief: unknown,
  only: string | undefined,
  progress: Progress,
  named: Pick<BriefOptions, 'shapes' | 'flares'>,
): Playable {
  const { answer, shown } = answered(brief, { progress, ...named });
  if (!shown) return { ok: false, lines: answer.ok ? [] : answer.because };
  const { search, chosen } = shown;
  const names = chosen.map((_, i) => String.fromCharCode(65 + i));
  const at = only === undefined ? 0 : names.indexOf(only.toUpperCase());
  const [box, design] = [chosen[at]?.box, (answer.ok ? answer : answer.nearest?.answer)?.designs[at]];
  if (box === undefined || design === undefined) {
    throw new InputError([
      {
        code: 'unknown-field',
        path: '--only',
        got: only,
        expected: `one of ${names.join(', ')}`,
        remedy: 'Name a design.',
      },
    ]);
  }
  const { job } = search;
  return {
    ok: true,
    title: job.title,
    called: `design ${names[at]}, ${box.variant.kind.called}${answer.ok ? '' : ' of the nearest brief that can be met'}`,
    givesOut: design.loudness.givesOut,
    ...asPlayed(job, box),
  };
}

/** A box of a variant as it is played. */
export function asPlayed(
  job: Job,
  { variant, point }: Pick<Box, 'variant' | 'point'>,
): Omit<PlayedBox, 'title' | 'called' | 'givesOut'> {
  const { filter, voltage } = job.amplifier;
  const { driverIndex, drivers, largeSignal } = variant.choice;
  return {
    system: variant.system(point),
    ...(hasWaves(job, variant.kind) && { remedy: 'Leave vent.waves out of the brief to play it.' }),
    limits: limitsOf(job, drivers, ownOf(variant.limits(point))),
    vents: (variant.openings?.(point) ?? []).map(({ section, length, ...one }) => ({
      vent: { ...section, ...(length !== undefined && { length }) },
      probe: probeOf(one),
    })),
    ...(filter && { filter }),
    voltage,
    ...(largeSignal && { loud: { driver: driverIndex, count: drivers.count, told: largeSignal } }),
  };
}

/** What a box that stands is played as: itself, a change by its name or number, a combination by its letter, or a tube by its mark. */
function standingBox(brief: unknown, only: string | undefined): Playable {
  if (only !== undefined) return changedBox(brief, only);
  const { kinds, models } = completeOptions({});
  const standing = readStanding(brief, kinds, models);
  const state = stateOf(standing);
  const sounding = soundingOf(standing, state);
  if (!sounding.ok) return { ok: false, lines: sounding.because.map(({ text }) => text) };
  return played(standing, state, sounding, 'the box as it stands');
}

function changedBox(brief: unknown, only: string): Playable {
  const { standing, now, made, chains } = changesTo(brief);
  // To play softer changes nothing of the box.
  const canPlay = ({ row, made: { done } }: NumberedChange) => done !== undefined && row.box.level === undefined;
  const alike = changesNamed(made, only).filter(canPlay);
  const [found] = alike;
  if (found?.made.done && alike.length === 1) {
    const { state, sounding } = found.made.done;
    return played(standing, state, sounding, `the box with ${found.row.change}`);
  }
  const all = chains();
  const chain = all.find(({ name }) => isNamed(name, only));
  if (chain) {
    const { name, leaning } = chain;
    const { state, sounding } = chain.chain.done;
    const parts = wholeOf(now, chain.chain, name, leaning).changes;
    return played(standing, state, sounding, `design ${name}, the box with ${listOf(parts)}`);
  }
  const marked = markedSets(tubeSets(standing).sets).flatMap(({ tubes, proposed }) =>
    proposed.map((one) => ({ ...one, tubes })),
  );
  const tube = marked.find(({ mark }) => isNamed(mark, only));
  const filled = tube && filledWith(standing, tube.tubes, tube.option);
  if (filled?.sounding.ok) {
    return played(standing, filled.state, filled.sounding, `the box with the tube ${tube?.mark}`);
  }
  const changes = numberedChanges(made).filter(canPlay);
  const names = [
    ...all.map(({ name }) => name),
    ...changes.map(({ number, row }) => `${number} (${row.change})`),
    ...marked.map(({ mark }) => mark),
  ];
  const remedy = 'Name a design, a change or a tube as the report does, or give the number of a change.';
  const expected = names.length > 0 ? `one of ${names.join(', ')}` : 'no name: nothing can be changed';
  throw new InputError([
    { code: alike.length > 1 ? 'conflict' : 'unknown-field', path: '--only', got: only, expected, remedy },
  ]);
}

function played({ job }: Standing, { drivers, vents, filter }: State, sounding: Sounding, called: string): Playable {
  const [choice] = job.choices;
  return {
    ok: true,
    title: job.title,
    called,
    system: sounding.system,
    limits: ownOf(sounding.limits),
    vents: sounding.openings.map(({ share }, i) => ({ vent: vents[i]!, share })),
    givesOut: { ...GIVES_OUT, ...PARTS_GIVE_OUT },
    ...(filter && { filter }),
    voltage: job.amplifier.voltage,
    ...(choice?.largeSignal && {
      loud: { driver: choice.driverIndex, count: drivers.count, told: choice.largeSignal },
    }),
  };
}
