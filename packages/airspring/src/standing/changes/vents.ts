import type { Phrase } from '../../kind/phrase.js';
import type { Row } from '../row.js';
import type { StandingVent, Tube } from '../standing.js';
import {
  type Bore,
  boresFor,
  lengthOrNone,
  outerOf,
  type Passage,
  passageOf,
  stanceOf,
  tubeSteps,
} from '../tube-change.js';
import { type Change, type Made, type Now, refused, rowOf } from './change.js';

const MM = 1e-3;
/** The work of a hole and of an elbow, as metres of vent to print. */
const HOLE = 0.1;
const ELBOW = 0.5;

/** The row of a tube in the place of the first vent. */
function tubeRow(
  now: Now,
  change: string,
  tube: Tube,
  holds: Row['holds'],
  touches: Parameters<typeof rowOf>[1]['touches'],
  through?: Passage,
): Made {
  const { standing } = now;
  const [vent] = standing.vents as [StandingVent];
  const head = {
    change,
    holds,
    what: [
      `${tube.count > 1 ? `${tube.count} tubes` : 'A tube'} of `,
      [tube.diameter, 'length'] as const,
      ' inner diameter, ',
      [tube.length, 'length'] as const,
      ' long',
    ],
  };
  const stance = stanceOf(standing, vent, tube);
  if (stance.fitting === 'does not fit') {
    const { needed, free } = stance.way;
    return refused(
      head,
      [
        'It needs ',
        [needed, 'length'],
        ' inwards from the outside of its panel; there is room for ',
        [free, 'length'],
        ' at most.',
      ],
      { way: stance.way },
    );
  }
  const passage = through ?? passageOf(standing, vent.hole, outerOf(tube));
  const bored = passage.how === 'enlarged' || passage.how === 'freehand';
  const free = tube.length - standing.panelThickness + tube.diameter;
  const edge = Math.cbrt(standing.airBeforeVents);
  const [made, ...rest] = tubeSteps(standing, tube, stance.bent, passage) as [Phrase, ...Phrase[]];
  return rowOf(now, {
    ...head,
    what: [...head.what, stance.bent ? ', with one bend' : ''],
    after: { ...standing, vents: [{ ...vent, ...tube, hole: Math.max(vent.hole, passage.hole) }] },
    fitting: stance.fitting,
    ...(stance.fitting === 'measure' && {
      measure: [
        'Measure the clear distance behind the hole. From the inside of the panel, a straight tube needs ',
        [free, 'length'],
        '; this includes free air of one tube diameter in front of its inner end.',
        ...(free > edge
          ? [
              ' A cubic box of this volume is only ',
              [edge, 'length'] as const,
              ' wide inside, so look for room to bend the tube.',
            ]
          : []),
      ],
    }),
    // What is longer than the box is likely to be asks for an elbow.
    effort: tube.count * tube.length + (bored ? HOLE : 0) + (stance.bent || free > edge ? ELBOW : 0),
    steps: [made, ...(vent.length > standing.panelThickness ? [['Take the old tube out.']] : []), ...rest],
    touches: [...touches, ...(bored ? (['holes'] as const) : [])],
  });
}

/** The widest tube of the same tuning for each hole that it may pass: straight, and with a bend. */
export const widerVent: Change = (now) => {
  const { standing, account } = now;
  const [vent, ...others] = standing.vents;
  if (vent === undefined || others.length > 0 || account.fb === undefined) return [];
  const fb = account.fb;
  const tubeOf = ({ bore, wall }: Bore): Tube | undefined => {
    const section = { ...vent, diameter: bore, wall };
    const length = lengthOrNone(standing, section, fb);
    return length === undefined ? undefined : { ...section, length };
  };
  const rowFor = (more: string, tube: Tube, { passage }: Bore) =>
    tubeRow(now, `a wider vent${more}`, tube, ['tuning'], [], passage);
  return boresFor(standing, vent).flatMap((widest): Made[] => {
    const rows: Made[] = [];
    let first: Tube | undefined;
    for (const way of ['straight', 'with one bend'] as const) {
      for (let bore = widest.bore; bore > vent.diameter + 1e-9; bore -= MM) {
        const tube = tubeOf({ ...widest, bore });
        if (tube === undefined) continue;
        first ??= tube;
        const stance = stanceOf(standing, vent, tube);
        if (stance.fitting !== 'does not fit' && (way === 'straight') !== stance.bent) {
          rows.push(rowFor(`, ${way}`, tube, widest));
          break;
        }
        // A pipe has one width.
        if (widest.fixed) break;
      }
    }
    const tried = rows.some(({ row }) => row.ok && row.box.tubes[0]?.diameter === first?.diameter);
    return first && !tried ? [...rows, rowFor('', first, widest)] : rows;
  });
};

/** A tube as wide as now, for a lower and for a higher tuning. */
export const otherLength: Change = (now) => {
  const { standing, account } = now;
  const [vent, ...others] = standing.vents;
  if (vent === undefined || others.length > 0 || account.fb === undefined) return [];
  const fb = account.fb;
  return (
    [
      ['a longer vent', 2 ** (-1 / 4)],
      ['a shorter vent', 2 ** (1 / 4)],
    ] as const
  ).flatMap(([change, ratio]) => {
    const length = lengthOrNone(standing, vent, fb * ratio);
    if (length === undefined || length === vent.length) return [];
    return [tubeRow(now, change, { ...vent, length }, [], ['tuning'])];
  });
};

/** A second vent like the first, and two of the tuning as it is. */
export const secondVent: Change = (now) => {
  const { standing, account } = now;
  const [vent, ...others] = standing.vents;
  if (vent === undefined || others.length > 0 || account.fb === undefined || vent.count > 3) return [];
  const count = 2 * vent.count;
  const twice: Tube = { ...vent, count };
  const drill = [
    'Cut a second hole of ',
    [vent.hole, 'length'] as const,
    ', at least one tube diameter away from the first. Wear eye protection and a dust mask.',
  ] as const;
  const beside = rowOf(now, {
    change: 'a second vent beside the first',
    what: ['A second tube like the first: ', [vent.diameter, 'length'], ' × ', [vent.length, 'length']],
    holds: ['length'],
    after: { ...standing, vents: [{ ...vent, ...twice }] },
    fitting: 'measure',
    measure: [
      'Find a place for it with a clear distance of ',
      [vent.length + vent.diameter, 'length'],
      ' behind the panel.',
    ],
    effort: vent.length + HOLE,
    steps: [drill, ...tubeSteps(standing, vent, false, { hole: vent.hole, how: 'as it is' })],
    touches: ['holes', 'tuning'],
  });
  const length = lengthOrNone(standing, twice, account.fb);
  if (length === undefined) return [beside];
  const both = tubeRow(now, 'two vents of the same tuning', { ...twice, length }, ['tuning'], ['holes']);
  const { row } = both;
  return [
    beside,
    row.ok
      ? { ...both, row: { ...row, fitting: 'measure', effort: row.effort + HOLE, steps: [drill, ...row.steps] } }
      : both,
  ];
};

/** The vent closed with a plug. */
export const ventClosed: Change = (now) => {
  const { standing, state } = now;
  if (standing.vents.length === 0) return [];
  const taken = standing.airBeforeVents - now.account.netVolume;
  return [
    rowOf(now, {
      change: 'the vent closed',
      what: ['The vent closed with a tight plug: a closed box'],
      holds: ['volume'],
      // The tube stays where it is and keeps the air that it took.
      state: { ...state, airBeforeVents: state.airBeforeVents - taken, vents: [] },
      fitting: 'fits',
      effort: 0.05,
      steps: [['Turn or print a plug, and seal it with closed-cell foam.']],
      touches: ['tuning'],
    }),
  ];
};
