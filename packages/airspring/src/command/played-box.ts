import type { System } from '@airspring/core/enclosure';
import { InputError } from '@airspring/core/fault';
import type { Filter } from '@airspring/core/filter';
import type { Limit } from '@airspring/core/limit';
import type { ShapeChoice } from '@airspring/core/space';
import type { TimelineVent } from '@airspring/transient/timeline';
import { answered } from '../design.js';
import { completeOptions } from '../kind/brief-options.js';
import { limitsOf } from '../record/limits.js';
import type { Progress } from '../search/search.js';
import { readStanding, stands } from '../standing/read.js';
import { soundingOf, stateOf } from '../standing/state.js';

/** A box that a recording is played through, with everything that limits it. */
export interface PlayedBox {
  readonly title: string;
  /** In words: 'design A, a vented box'. */
  readonly called: string;
  readonly system: System;
  readonly limits: readonly Limit[];
  readonly vents: readonly TimelineVent[];
  readonly filter?: Filter;
  /** Greatest sine of the amplifier, V rms. */
  readonly voltage: number;
}

/** A box of a brief, or why there is none. */
export type Playable = ({ readonly ok: true } & PlayedBox) | { readonly ok: false; readonly lines: readonly string[] };

/** What a vent is judged by is told once, by its onsets. */
const ownOf = (limits: readonly Limit[]) => limits.filter(({ name }) => name !== 'quiet vent');

/**
 * The box that a brief is about: the first design, that of a name, or the box that stands. Where no box meets the brief, the designs
 * of the nearest brief are played.
 *
 * @throws InputError with every fault of the brief at its path
 */
export const playedBox = (
  brief: unknown,
  only: string | undefined,
  progress: Progress,
  shapes: readonly ShapeChoice[] = [],
): Playable => (stands(brief) ? standingBox(brief, only) : designedBox(brief, only, progress, shapes));

function designedBox(
  brief: unknown,
  only: string | undefined,
  progress: Progress,
  shapes: readonly ShapeChoice[],
): Playable {
  const { answer, shown } = answered(brief, { progress, shapes });
  if (!shown) return { ok: false, lines: answer.ok ? [] : answer.because };
  const { search, chosen } = shown;
  const names = chosen.map((_, i) => String.fromCharCode(65 + i));
  const at = only === undefined ? 0 : names.indexOf(only.toUpperCase());
  const box = chosen[at]?.box;
  if (box === undefined) {
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
  const { variant, point } = box;
  const system = variant.system(point);
  const vent = Object.hasOwn(system.network.topology.probes, 'ventAirSpeed') ? variant.vent?.(point) : undefined;
  const { filter, voltage } = job.amplifier;
  return {
    ok: true,
    title: job.title,
    called: `design ${names[at]}, ${variant.kind.called}${answer.ok ? '' : ' of the nearest brief that can be met'}`,
    system,
    limits: limitsOf(job, variant.choice.drivers, ownOf(variant.limits(point))),
    vents: vent ? [{ vent }] : [],
    ...(filter && { filter }),
    voltage,
  };
}

function standingBox(brief: unknown, only: string | undefined): Playable {
  if (only !== undefined) {
    const remedy = 'Leave it out: the box is played as it stands.';
    throw new InputError([{ code: 'conflict', path: '--only', got: only, expected: 'a brief for a new box', remedy }]);
  }
  const { kinds, models } = completeOptions({});
  const standing = readStanding(brief, kinds, models);
  const state = stateOf(standing);
  const sounding = soundingOf(standing, state);
  if (!sounding.ok) return { ok: false, lines: sounding.because.map(({ text }) => text) };
  return {
    ok: true,
    title: standing.job.title,
    called: 'the box as it stands',
    system: sounding.system,
    limits: ownOf(sounding.limits),
    vents: sounding.openings.map(({ share }, i) => ({ vent: state.vents[i]!, share })),
    ...(state.filter && { filter: state.filter }),
    voltage: standing.job.amplifier.voltage,
  };
}
