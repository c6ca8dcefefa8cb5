import { LEAST_OF_NOMINAL } from '../../job/load.js';
import type { Phrase } from '../../kind/phrase.js';
import { loadOf } from '../../record/load.js';
import type { Account } from '../account.js';
import { accountOf, type Glance, glanceOf } from '../account.js';
import type { Kept } from '../fields.js';
import { type ChangedBox, type Holds, type Row, type RowDone, withBends } from '../row.js';
import type { Bend, Standing, StandingVent } from '../standing.js';
import { type Sounding, type State, soundingOf, stateOf } from '../state.js';
import type { Step } from '../work.js';

/** What every change starts from. */
export interface Now {
  readonly standing: Standing;
  readonly state: State;
  readonly account: Account;
}

/** A row, whose account is made when it is read, and the box as the change leaves it, for a further change; left out where none follows. */
export interface Made {
  readonly row: Row;
  readonly after?: Standing;
  /** The box as it is left where `after` does not tell it, with its own numbers and its work; left out of a refused row. */
  readonly done?: {
    readonly glance: Glance;
    readonly state: State;
    readonly sounding: Sounding;
    readonly steps: readonly Step[];
  };
}

/** One change, or several of one sort; none where there is nothing to change. */
export type Change = (now: Now) => readonly Made[];

/** A row that may be made, before it is known what it does. */
export interface Proposed {
  readonly change: string;
  readonly what: Phrase;
  readonly holds: readonly Holds[];
  /** The box as the change leaves it; or its state alone, where its parts are of another sort than those that stand. */
  readonly after?: Standing;
  readonly state?: State;
  /** Its tubes, where the state alone is told. */
  readonly tubes?: readonly StandingVent[];
  readonly box?: Pick<ChangedBox, 'slot' | 'radiator' | 'highPass' | 'level'>;
  readonly fitting: RowDone['fitting'];
  readonly bends?: readonly Bend[];
  readonly effort: number;
  readonly steps: readonly Step[];
  /** What it changes that a brief may keep. */
  readonly touches: readonly Kept[];
}

/** A tuning that moves by less than this, as a ratio, is kept. */
export const RETUNED = 0.01;

/** Whether a brief keeps the tuning, and a change would move it. */
export const retuned = (
  { standing, account: { fb = 0 } }: Pick<Now, 'standing' | 'account'>,
  after: { readonly fb?: number },
): boolean => standing.keep.has('tuning') && !(Math.abs((after.fb ?? Infinity) - fb) <= RETUNED * fb);

const KEPT: Readonly<Record<Kept, string>> = {
  box: 'the box',
  drivers: 'the drivers',
  wiring: 'the wiring',
  holes: 'the holes',
  tuning: 'the tuning',
};

/** A change that cannot be made. */
export const refused = (
  { change, what, holds }: Pick<Proposed, 'change' | 'what' | 'holds'>,
  because: Phrase,
  more: Pick<Extract<Row, { ok: false }>, 'kept' | 'way'> = {},
): Made => ({ row: { ok: false, change, what, holds, because, ...more } });

/** The row of a change: refused where the brief keeps what it touches, otherwise with everything that it does. */
export function rowOf({ standing, account }: Now, proposed: Proposed): Made {
  const { change, what, holds, after, box, fitting, effort, steps, touches } = proposed;
  const kept = touches.find((one) => standing.keep.has(one));
  if (kept !== undefined)
    return refused(proposed, [`You want to keep ${KEPT[kept]}, which this would change.`], { kept });
  const state = proposed.state ?? stateOf(after ?? standing);
  const sounding = soundingOf(standing, state);
  if (!sounding.ok) return refused(proposed, [sounding.because.map(({ text }) => text).join(' ')]);
  if (retuned({ standing, account }, sounding)) {
    const { fb = 0 } = account;
    const by: Phrase =
      sounding.fb === undefined ? ['.'] : [': from ', [fb, 'frequency'], ' to ', [sounding.fb, 'frequency'], '.'];
    return refused(proposed, ['You want to keep the tuning, which this would change', ...by], { kept: 'tuning' });
  }
  const measure = steps.filter(({ does }) => does === 'measure').map(({ says }) => says);
  const { leastLoad } = standing.job.amplifier;
  const least = leastLoad === undefined ? Infinity : loadOf(sounding.system, standing.job.wanted.highest).least.value;
  // A load that is too low already is no reason against a change that does not lower it.
  if (
    leastLoad !== undefined &&
    least < LEAST_OF_NOMINAL * leastLoad &&
    least < account.leastLoad.value * (1 - RETUNED)
  ) {
    return refused(proposed, [
      'The impedance would fall to ',
      [least, 'impedance'],
      '. Your amplifier takes nominal loads of ',
      [leastLoad, 'impedance'],
      ' or more; their impedance may fall to ',
      [LEAST_OF_NOMINAL * leastLoad, 'impedance'],
      '.',
    ]);
  }
  let told: Account | undefined;
  return {
    row: {
      ok: true,
      change,
      what,
      // A closed box has no vent, and no tuning beside its air.
      holds: standing.vents.length > 0 ? holds : holds.filter((one) => one === 'volume'),
      box: { ...withBends(boxOf(state, sounding, after?.vents ?? proposed.tubes), proposed.bends ?? []), ...box },
      // Combinations are compared by a glance: the account is made where it is read.
      get account() {
        told ??= accountOf(standing.job, state, sounding);
        return told;
      },
      fitting,
      ...(measure.length > 0 && { measure: measure.flatMap((says, i) => (i > 0 ? [' ', ...says] : says)) }),
      effort,
      steps: steps.filter(({ does }) => does !== 'measure').map(({ says }) => says),
    },
    ...(after && { after }),
    done: { glance: glanceOf(standing.job, state, sounding), state, sounding, steps },
  };
}

/** The numbers of a box. */
export function boxOf(
  { drivers }: State,
  { netVolume, fb, ventArea }: Sounding,
  tubes: readonly StandingVent[] = [],
): ChangedBox {
  const { series, parallel, isobaric } = drivers;
  return {
    wiring: { series, parallel, isobaric },
    netVolume,
    ...(fb !== undefined && { fb }),
    ...(ventArea !== undefined && { ventArea }),
    tubes: tubes.map(({ index, diameter, length, count }) => ({ vent: index, diameter, length, count })),
  };
}
