import { NANOMETRE } from '@airspring/core/quantity';
import type { Phrase } from '../kind/phrase.js';
import type { Fitting } from './row.js';
import type { Bend, Standing, StandingVent } from './standing.js';
import { outerOf } from './tube.js';
import { type Passage, passageBetween, stanceOf, type TooLong } from './tube-change.js';
import { making } from './tube-making.js';
import { drilling, elbow, enlarging, fitting, takingOut, which } from './tube-steps.js';
import type { Step } from './work.js';

/** The work of a hole, of an elbow and of a plug, as metres of vent to print. */
const HOLE = 0.1;
const ELBOW = 0.5;
const PLUG = 0.05;

/** What leads from the vents that stand to others. */
export interface TubeWork {
  readonly steps: readonly Step[];
  readonly fitting: Fitting;
  /** Set where a tube does not fit. */
  readonly way?: TooLong;
  /** How tubes bend, where places are known. */
  readonly bends: readonly Bend[];
  readonly effort: number;
  /** The vents as they will be, one phrase for each that changes. */
  readonly what: readonly Phrase[];
}

const alike = (a: StandingVent, b: StandingVent): boolean =>
  a.diameter === b.diameter && a.wall === b.wall && a.length === b.length && a.rounding === b.rounding;

/** The work that leads from the vents of one box to those of another that differs from it in nothing but vents and drivers. */
export function tubeWork(before: Standing, after: Standing): TubeWork {
  const works = after.vents.flatMap((vent) => {
    const was = before.vents.find(({ index }) => index === vent.index) as StandingVent;
    if (alike(was, vent) && was.count === vent.count) return [];
    return [ventWork(before, after, was, vent)];
  });
  const closed = before.vents
    .filter(({ index }) => !after.vents.some((vent) => vent.index === index))
    .map((vent) => plugOf(before, vent));
  const all = [...works, ...closed];
  const rank = (fitting: Fitting) => ['fits', 'measure', 'does not fit'].indexOf(fitting);
  const worst = all.reduce<TubeWork | undefined>(
    (a, b) => (a && rank(a.fitting) >= rank(b.fitting) ? a : b),
    undefined,
  );
  return {
    steps: all.flatMap(({ steps }) => steps),
    fitting: worst?.fitting ?? 'fits',
    ...(worst?.way && { way: worst.way }),
    bends: all.flatMap(({ bends }) => bends),
    effort: all.reduce((sum, { effort }) => sum + effort, 0),
    what: all.flatMap(({ what }) => what),
  };
}

const plugOf = (before: Standing, vent: StandingVent): TubeWork => ({
  steps: [
    {
      does: 'fit',
      says: ['Turn or print a plug', ...which(before, vent), ', and seal it with closed-cell foam.'],
      ofTubes: true,
      parts: [
        {
          what: 'plug',
          made: 'print',
          count: vent.count,
          size: [[vent.diameter, 'length'], ' wide'],
          board: { plugs: vent.diameter },
        },
      ],
    },
  ],
  fitting: 'fits',
  bends: [],
  effort: PLUG,
  what: [['The vent', ...which(before, vent), ' closed with a tight plug']],
});

function ventWork(before: Standing, after: Standing, was: StandingVent, vent: StandingVent): TubeWork {
  const { panelThickness: t } = before;
  const extra = vent.count - was.count;
  // The tubes that stand stay where only further ones are added.
  const made = alike(was, vent) ? extra : vent.count;
  const outer = outerOf(vent);
  const way = passageBetween(before, was.hole, vent.hole, outer);
  const bored = way.how === 'enlarged' || way.how === 'freehand';
  // A tube may be wider than the hole that was made larger for another.
  const passage: Passage = outer > way.hole + NANOMETRE ? { hole: way.hole, how: 'joined inside' } : way;
  const stance = stanceOf(after, vent, vent);
  const legs = stance.fitting === 'does not fit' ? undefined : stance.legs;
  const bent = stance.fitting !== 'does not fit' && stance.bent;
  const free = vent.length - t + vent.diameter;
  const edge = Math.cbrt(before.airBeforeVents);
  const narrow = free > edge && before.inner === undefined;
  const measure: Phrase = [
    extra > 0 ? `Look for ${extra > 1 ? 'places' : 'a place'} for the new ${extra > 1 ? 'holes' : 'hole'}. ` : '',
    `Measure the clear distance behind ${vent.count > 1 ? 'each' : 'the'} hole`,
    ...which(before, was),
    '. From the inside of the panel, a straight tube needs ',
    [free, 'length'],
    '; this includes free air of one tube diameter in front of its inner end.',
    ...(narrow
      ? [
          ' A cubic box of this volume is only ',
          [edge, 'length'] as const,
          ' wide inside, so look for room to bend the tube.',
        ]
      : []),
  ];
  const steps: Step[] = [
    ...(stance.fitting === 'measure' ? [{ does: 'measure', says: measure } as const] : []),
    ...(alike(was, vent) ? [] : takingOut(before, was)),
    ...(extra > 0 ? [drilling(before, vent.hole, extra)] : []),
    ...(bored ? [enlarging(before, was, way)] : []),
    // A vent as short as its panel is a hole alone.
    ...(vent.length > t
      ? [
          making(before, vent, made, passage, bent ? (legs ?? 'somewhere') : undefined),
          fitting(before, passage, { outer, rounding: vent.rounding, added: alike(was, vent), several: made > 1 }),
        ]
      : []),
    ...(bent ? [elbow(before, vent, made > 1, legs)] : []),
  ];
  return {
    steps: steps.map((step) => ({ ...step, ofTubes: true })),
    fitting: stance.fitting,
    ...(stance.fitting === 'does not fit' && { way: stance.way }),
    bends: legs ? [{ vent: vent.index, ...legs }] : [],
    // What is longer than the box is likely to be asks for an elbow.
    effort: made * vent.length + Math.max(0, extra) * HOLE + (bored ? HOLE : 0) + (bent || narrow ? ELBOW : 0),
    what: [
      [
        `${vent.count > 1 ? `${vent.count} tubes` : 'A tube'} of `,
        [vent.diameter, 'length'],
        ' inner diameter, ',
        [vent.length, 'length'],
        ' long',
        // The hole is a part of the vent, and the tube that is printed is shorter.
        ...(passage.how === 'joined inside'
          ? ([
              ' from the outer face of the panel to the inner end (the first ',
              [t, 'length'],
              ' are the hole, the printed tube is ',
              [vent.length - t, 'length'],
              ')',
            ] as const)
          : []),
        bent ? ', with one bend' : '',
        ...(before.vents.length > 1 ? [', in place of vent ', String(vent.index + 1)] : []),
      ],
    ],
  };
}
