import type { Phrase } from '../../kind/phrase.js';
import type { Account } from '../account.js';
import { accountOf } from '../account.js';
import type { Kept } from '../fields.js';
import type { ChangedBox, Holds, Row, RowDone } from '../row.js';
import type { Standing, Tube } from '../standing.js';
import { type State, soundingOf } from '../state.js';

/** What every change starts from. */
export interface Now {
  readonly standing: Standing;
  readonly state: State;
  readonly account: Account;
}

/** One change, or several of one sort; none where there is nothing to change. */
export type Change = (now: Now) => readonly Row[];

/** A row that may be made, before it is known what it does. */
export interface Proposed {
  readonly change: string;
  readonly what: Phrase;
  readonly holds: readonly Holds[];
  readonly state: State;
  readonly tubes?: readonly Tube[];
  readonly box?: Pick<ChangedBox, 'slot' | 'radiator' | 'highPass'>;
  readonly fitting: RowDone['fitting'];
  readonly measure?: Phrase;
  readonly steps: readonly Phrase[];
  /** What it changes that a brief may keep. */
  readonly touches: readonly Kept[];
}

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
): Row => ({ ok: false, change, what, holds, because, ...more });

/** The row of a change: refused where the brief keeps what it touches, otherwise with everything that it does. */
export function rowOf({ standing }: Now, proposed: Proposed): Row {
  const { change, what, holds, state, tubes = [], box, fitting, measure, steps, touches } = proposed;
  const kept = touches.find((one) => standing.keep.has(one));
  if (kept !== undefined) return refused(proposed, [`You keep ${KEPT[kept]}, which this would change.`], { kept });
  const sounding = soundingOf(standing, state);
  if (!sounding.ok) return refused(proposed, [sounding.because.map(({ text }) => text).join(' ')]);
  const { series, parallel, isobaric } = state.drivers;
  return {
    ok: true,
    change,
    what,
    holds,
    box: {
      wiring: { series, parallel, isobaric },
      netVolume: sounding.netVolume,
      ...(sounding.fb !== undefined && { fb: sounding.fb }),
      ...(sounding.ventArea !== undefined && { ventArea: sounding.ventArea }),
      tubes: tubes.map(({ diameter, length, count }) => ({ diameter, length, count })),
      ...box,
    },
    account: accountOf(standing.job, state, sounding),
    fitting,
    ...(measure && { measure }),
    steps,
  };
}
