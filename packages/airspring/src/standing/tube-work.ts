import type { Phrase } from '../kind/phrase.js';
import type { Bend, Legs, Standing, StandingVent } from './standing.js';
import { outerOf, type Passage, passageBetween, piecesOf, type Stance, stanceOf, type TooLong } from './tube-change.js';
import type { Step } from './work.js';

/** The work of a hole, of an elbow and of a plug, as metres of vent to print. */
const HOLE = 0.1;
const ELBOW = 0.5;
const PLUG = 0.05;

/** What leads from the vents that stand to others. */
export interface TubeWork {
  readonly steps: readonly Step[];
  readonly fitting: Stance['fitting'];
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
  const rank = (fitting: Stance['fitting']) => ['fits', 'measure', 'does not fit'].indexOf(fitting);
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

/** Which of several vents is meant. */
export const which = ({ vents }: Standing, { index, diameter, length }: StandingVent): Phrase =>
  vents.length > 1 ? [` (vent ${index + 1}, now `, [diameter, 'length'], ' × ', [length, 'length'], ')'] : [];

const plugOf = (before: Standing, vent: StandingVent): TubeWork => ({
  steps: [
    {
      does: 'fit',
      says: ['Turn or print a plug', ...which(before, vent), ', and seal it with closed-cell foam.'],
      ofTubes: true,
      parts: [{ what: 'plug', made: 'print', count: vent.count, size: [[vent.diameter, 'length'], ' wide'] }],
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
  const passage = passageBetween(before, was.hole, vent.hole, outer);
  const bored = passage.how === 'enlarged' || passage.how === 'freehand';
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
    ...(extra > 0 ? [drilling(vent.hole, extra)] : []),
    ...(bored ? [enlarging(before, was, passage)] : []),
    making(before, vent, made, passage),
    fitting(before, passage, { added: alike(was, vent), several: made > 1 }),
    ...(bent ? [elbow(before, vent, legs)] : []),
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
        bent ? ', with one bend' : '',
        ...(before.vents.length > 1 ? [' in place of vent ', String(vent.index + 1)] : []),
      ],
    ],
  };
}

const drilling = (hole: number, count: number): Step => ({
  does: 'drill',
  says: [
    count > 1 ? `Cut ${count} more holes of ` : 'Cut a second hole of ',
    [hole, 'length'],
    `, ${count > 1 ? 'each ' : ''}at least one tube diameter away from the first. Wear eye protection and a dust mask.`,
  ],
  caution: 'dust',
  holes: [{ what: 'vent', form: 'circle', diameter: hole }],
});

const enlarging = (before: Standing, was: StandingVent, { hole, how }: Passage): Step => ({
  does: 'drill',
  says:
    how === 'enlarged'
      ? [
          'Enlarge the hole',
          ...which(before, was),
          ' with the ',
          [hole, 'length'],
          ' saw. A hole saw has nothing to centre on in an open hole: clamp a board with a hole of that size over it as a guide, and wear eye protection and a dust mask.',
        ]
      : [
          'None of your saws makes the hole that it needs, ',
          [hole, 'length'],
          '. Rout the hole along a template. Wear eye protection and a dust mask.',
        ],
  caution: 'dust',
  holes: [{ what: 'vent', form: 'circle', diameter: hole }],
  ...(how === 'enlarged' && {
    parts: [{ what: 'guide board, with a hole', made: 'cut', count: 1, size: ['of ', [hole, 'length']] }],
  }),
});

/** The tube as it is printed, or cut from a pipe at hand. */
function making(standing: Standing, { diameter, length, wall }: StandingVent, count: number, { how }: Passage): Step {
  const outer = outerOf({ diameter, wall });
  const printed = length - (how === 'joined inside' ? standing.panelThickness : 0);
  const pieces = piecesOf(standing, printed);
  const size: Phrase = [
    [diameter, 'length'],
    ' inner, ',
    [outer, 'length'],
    ' outer diameter, ',
    [printed, 'length'],
    ' long',
  ];
  const pipe = standing.workshop.pipes.some(
    (one) => Math.abs(one.inner - diameter) < 1e-6 && Math.abs(one.outer - outer) < 1e-6,
  );
  if (pipe) {
    return {
      does: 'cut',
      says: ['Cut the pipe of ', [diameter, 'length'], ' inner diameter to ', [printed, 'length'], '.'],
      caution: 'dust',
      parts: [{ what: 'pipe', made: 'cut', count, size }],
    };
  }
  return {
    does: 'print',
    says: [
      `Print ${count > 1 ? `${count} tubes` : 'a tube'} of `,
      [diameter, 'length'],
      ' inner and ',
      [outer, 'length'],
      ' outer diameter, ',
      [printed, 'length'],
      ' long',
      // The hole is a part of the vent: both lengths are told, so that neither is taken for the other.
      ...(printed < length ? [' (', [length, 'length'] as const, ' with the panel)'] : []),
      pieces > 1 ? `, in ${pieces} pieces of ` : '',
      ...(pieces > 1 ? ([[printed / pieces, 'length']] as const) : []),
      '. Print and glue in a ventilated room.',
    ],
    caution: 'fumes',
    parts: [
      {
        what: 'tube',
        made: 'print',
        count,
        size: pieces > 1 ? [...size, `, in ${pieces} pieces of `, [printed / pieces, 'length']] : size,
      },
    ],
  };
}

/** A vent as short as its panel is a hole: there is no tube in it. */
function takingOut({ panelThickness, vents }: Standing, { count, length, index }: StandingVent): Step[] {
  if (!(length > panelThickness)) return [];
  const which = vents.length > 1 ? ` of vent ${index + 1}` : '';
  return [{ does: 'take out', says: [`Take the old ${count > 1 ? 'tubes' : 'tube'}${which} out.`] }];
}

function fitting(
  { panelThickness: t }: Standing,
  { how }: Passage,
  { added, several }: { readonly added: boolean; readonly several: boolean },
): Step {
  const says: Phrase =
    how === 'joined inside'
      ? [
          `Take a driver out, bring the ${several ? 'tubes' : 'tube'} in through the cutout, and glue ${several ? 'each' : 'it'} to the inside of the panel around ${several ? 'its' : 'the'} hole. The hole itself is the first `,
          [t, 'length'],
          ' of the vent.',
        ]
      : [
          added
            ? `Push the new ${several ? 'tubes' : 'tube'} through the new ${several ? 'holes' : 'hole'}, and glue ${several ? 'them' : 'it'} in, airtight.`
            : several
              ? `Push the new tubes through their holes, and glue them in, airtight.`
              : `The new tube fits through the ${how === 'as it is' ? 'existing' : 'enlarged'} hole. Glue it in, airtight.`,
        ];
  return { does: 'fit', says };
}

function elbow({ drivers }: Standing, vent: StandingVent, legs?: Legs): Step {
  const { cutoutDiameter = 0 } = drivers.driver;
  const shape: Phrase = legs
    ? [
        'Straight for ',
        [legs.first, 'length'],
        ' from the outside of the panel, an elbow of ',
        [legs.arc, 'length'],
        ` along its middle towards the ${legs.towards}, and straight for `,
        [legs.second, 'length'],
        '. ',
      ]
    : [];
  return {
    does: 'fit',
    says:
      outerOf(vent) <= cutoutDiameter
        ? [
            ...shape,
            'Join the elbow inside: take a driver out, and pass the elbow through its cutout, which is ',
            [cutoutDiameter, 'length'],
            ' wide.',
          ]
        : [...shape, 'The elbow is wider than the cutouts: take a panel off to put it in.'],
  };
}
