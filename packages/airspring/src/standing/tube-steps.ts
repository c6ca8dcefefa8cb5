import type { Phrase } from '../kind/phrase.js';
import { cutInto } from '../kind/printed-tube.js';
import type { Legs, Standing, StandingVent } from './standing.js';
import { outerOf } from './tube.js';
import { isPrinted, LEAST_LEG, type Passage, sawn } from './tube-change.js';
import type { Part, Step } from './work.js';

/** A hole that is wider than its tube by more is no joint for glue alone, m (common practice). */
const LOOSE = 2e-3;

/** Which of several vents is meant. */
export const which = ({ vents }: Standing, { index, diameter, length }: StandingVent): Phrase =>
  vents.length > 1 ? [` (vent ${index + 1}, now `, [diameter, 'length'], ' × ', [length, 'length'], ')'] : [];

/** Further holes beside one that is there. */
export const drilling = ({ workshop: { holeSaws } }: Standing, hole: number, count: number): Step => ({
  does: 'drill',
  says: [
    count > 1 ? `Cut ${count} more holes of ` : 'Cut a second hole of ',
    [hole, 'length'],
    `, ${count > 1 ? 'each ' : ''}at least one tube diameter away from the first. `,
    holeSaws.length > 0 && !sawn(holeSaws, hole)
      ? `None of your saws is that wide: rout ${count > 1 ? 'them' : 'it'} along a template. `
      : '',
    'Wear eye protection and a dust mask.',
  ],
  caution: 'dust',
  holes: [{ what: 'vent', form: 'circle', diameter: hole }],
});

/** A hole made as wide as a tube needs it. */
export const enlarging = (before: Standing, was: StandingVent, { hole, how }: Passage): Step => ({
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
    parts: [
      {
        what: 'guide board, with a hole',
        made: 'cut',
        count: 1,
        size: ['of ', [hole, 'length']],
        board: { guides: hole },
      },
    ],
  }),
});

/** The pieces that a printer makes of a tube: straight parts as long as it takes, and an elbow by itself. */
function piecesTold(
  standing: Standing,
  printed: number,
  outer: number,
  hole: number,
  bend: Legs | 'somewhere' | undefined,
): Phrase {
  const { printer } = standing.workshop;
  if (!Number.isFinite(printer.height)) return [];
  if (bend === undefined) {
    const pieces = cutInto(printed, printer);
    return pieces.length > 1 ? inPieces(pieces) : [];
  }
  if (bend === 'somewhere') {
    // The radius of an elbow is the outer diameter.
    const arc = (Math.PI / 2) * outer;
    return [
      ', in pieces: an elbow of ',
      [arc, 'length'],
      ' along its middle, and ',
      [printed - arc, 'length'],
      ' of straight parts, each at most ',
      [printer.height, 'length'],
      ' long',
    ];
  }
  return inPieces([
    ...cutInto(bend.first - hole, printer),
    bend.arc,
    ...(bend.second > LEAST_LEG ? cutInto(bend.second, printer) : []),
  ]);
}

const inPieces = (lengths: readonly number[]): Phrase => [
  `, in ${lengths.length} pieces of `,
  ...lengths.flatMap((one, i): Phrase => [i === 0 ? '' : i === lengths.length - 1 ? ' and ' : ', ', [one, 'length']]),
];

/** A tube cut from a pipe at hand; its elbow is a part of its own. */
function ofPipe(
  size: Phrase,
  [diameter, outer, length]: readonly [diameter: number, outer: number, length: number],
  count: number,
  hole: number,
  bend: Legs | 'somewhere' | undefined,
): Step {
  const head: Phrase = ['Cut the pipe of ', [diameter, 'length'], ' inner diameter '];
  const pipe: Part = { what: 'pipe', made: 'cut', count, size };
  if (bend === undefined)
    return { does: 'cut', says: [...head, 'to ', [length, 'length'], '.'], caution: 'dust', parts: [pipe] };
  const arc = bend === 'somewhere' ? (Math.PI / 2) * outer : bend.arc;
  const straight: Phrase =
    bend === 'somewhere'
      ? ['into straight parts of together ', [length - arc, 'length']]
      : [
          'to ',
          [bend.first - hole, 'length'],
          ...(bend.second > LEAST_LEG ? ([' and ', [bend.second, 'length']] as const) : []),
        ];
  const elbow: Phrase = [[diameter, 'length'], ' inner diameter, ', [arc, 'length'], ' along its middle'];
  return {
    does: 'cut',
    says: [...head, ...straight, `, and buy an elbow of `, ...elbow, ', for each tube.'],
    caution: 'dust',
    parts: [pipe, { what: 'elbow', made: 'buy', count, size: elbow }],
  };
}

/** The tube as it is printed, or cut from a pipe at hand. */
export function making(
  standing: Standing,
  { diameter, length, wall, rounding, index }: StandingVent,
  count: number,
  passage: Passage,
  bend?: Legs | 'somewhere',
): Step {
  const { hole, how } = passage;
  const { printer } = standing.workshop;
  const outer = outerOf({ diameter, wall });
  const printed = length - (how === 'joined inside' ? standing.panelThickness : 0);
  const pieces = piecesTold(standing, printed, outer, length - printed, bend);
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
  if (pipe) return ofPipe(size, [diameter, outer, printed], count, length - printed, bend);
  if (!isPrinted(standing, { diameter, wall, rounding }, passage, bend)) {
    return {
      does: 'buy',
      says: [
        `Your printer takes parts up to `,
        [printer.width, 'length'],
        ' wide',
        ...(bend === undefined ? [] : ([' and ', [printer.height, 'length'], ' high, with their joints'] as const)),
        `. Buy ${count > 1 ? `${count} tubes` : 'a tube'} of `,
        ...size,
        bend === undefined ? '.' : ', with an elbow.',
      ],
      parts: [{ what: 'tube', made: 'buy', count, size }],
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
      // The hole is a part of the vent. Both lengths are stated, so that neither is taken for the other.
      ...(printed < length ? [' (', [length, 'length'] as const, ' with the panel)'] : []),
      ...pieces,
      '. Print and glue in a ventilated room.',
    ],
    caution: 'fumes',
    parts: [
      {
        what: 'tube',
        made: 'print',
        count,
        size: [...size, ...pieces],
        tube: { vent: index, diameter, length, wall, rounding, hole, how, ...(bend && { bend }) },
      },
    ],
  };
}

/** A vent as short as its panel is a hole: there is no tube in it. */
export function takingOut({ panelThickness, vents }: Standing, { count, length, index }: StandingVent): Step[] {
  if (!(length > panelThickness)) return [];
  const which = vents.length > 1 ? ` of vent ${index + 1}` : '';
  return [{ does: 'take out', says: [`Take the old ${count > 1 ? 'tubes' : 'tube'}${which} out.`] }];
}

/** How tubes get into their holes. */
export function fitting(
  { panelThickness: t }: Standing,
  { hole, how }: Passage,
  { outer, added, several }: { readonly outer: number; readonly added: boolean; readonly several: boolean },
): Step {
  const gap = hole - outer;
  const closed: Phrase =
    gap > LOOSE
      ? [
          ` ${several ? 'The holes are' : 'The hole is'} `,
          [gap, 'length'],
          ` wider than the ${several ? 'tubes' : 'tube'}: close the gap all round with a flange on ${several ? 'each' : 'the'} tube, or with a ring of board.`,
        ]
      : [];
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
          ...closed,
        ];
  return { does: 'fit', says };
}

/** How bent tubes are joined. */
export function elbow({ drivers }: Standing, vent: StandingVent, several: boolean, legs?: Legs): Step {
  const { cutoutDiameter = 0 } = drivers.driver;
  const shape: Phrase = legs
    ? [
        `${several ? 'Each tube runs straight' : 'Straight'} for `,
        [legs.first, 'length'],
        ' from the outside of the panel, an elbow of ',
        [legs.arc, 'length'],
        ` along its middle towards the ${legs.towards}`,
        ...(legs.second > LEAST_LEG ? ([', and straight for ', [legs.second, 'length']] as const) : []),
        '. ',
      ]
    : [];
  const [them, are] = several ? ['the elbows', 'The elbows are'] : ['the elbow', 'The elbow is'];
  if (cutoutDiameter === 0) {
    const says = `Join ${them} inside: take a driver out. If its cutout does not pass ${several ? 'an elbow' : 'it'}, take a panel off.`;
    return { does: 'fit', says: [...shape, says] };
  }
  return {
    does: 'fit',
    says:
      outerOf(vent) <= cutoutDiameter
        ? [
            ...shape,
            `Join ${them} inside: take a driver out, and pass ${them} through its cutout, which is `,
            [cutoutDiameter, 'length'],
            ' wide.',
          ]
        : [...shape, `${are} wider than the cutouts: take a panel off to put ${several ? 'them' : 'it'} in.`],
  };
}
