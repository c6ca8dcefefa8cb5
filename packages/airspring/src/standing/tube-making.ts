import type { Phrase } from '../kind/phrase.js';
import { cutInto, type Printer, SPIGOT } from '../kind/printed-tube.js';
import type { Legs, Standing, StandingVent } from './standing.js';
import { outerOf } from './tube.js';
import { isPrinted, LEAST_LEG, type Passage, usualFor } from './tube-change.js';
import type { Part, Step } from './work.js';

/** The pieces that a printer makes of a tube: straight parts as long as it takes, and an elbow by itself. Of a vent that begins with a bare hole in its panel that part is left out. */
function piecesTold(
  printer: Printer,
  printed: number,
  outer: number,
  inPanel: number,
  bend: Legs | 'somewhere' | undefined,
): Phrase {
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
    ...cutInto(bend.first - inPanel, printer),
    bend.arc,
    ...(bend.second > LEAST_LEG ? cutInto(bend.second, printer) : []),
  ]);
}

const inPieces = (lengths: readonly number[]): Phrase => [
  `, in ${lengths.length} pieces of `,
  ...lengths.flatMap((one, i): Phrase => [i === 0 ? '' : i === lengths.length - 1 ? ' and ' : ', ', [one, 'length']]),
];

/** How thick the wall is, and how its pieces are joined. */
const joining = (wall: number, pieces: Phrase): Phrase => [
  ' The wall is ',
  [wall, 'length'],
  ' thick.',
  ...(pieces.length > 0
    ? ([
        ' Each piece but the last has a spigot of ',
        [SPIGOT, 'length'],
        ' besides, which is glued into the next.',
      ] as const)
    : []),
];

/** A tube cut from a pipe at hand; its elbow is a part of its own. */
function ofPipe(
  size: Phrase,
  [diameter, outer, length]: readonly [diameter: number, outer: number, length: number],
  count: number,
  inPanel: number,
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
          [bend.first - inPanel, 'length'],
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
  const usual = usualFor(standing, { diameter, wall, rounding, length: printed }, passage, bend);
  const pieces = piecesTold(usual ?? printer, printed, outer, length - printed, bend);
  const assumed: Phrase =
    usual && pieces.length > 0
      ? [
          '. The brief states no printer: this is for one that builds ',
          [usual.height, 'length'],
          ' in each direction (common practice)',
        ]
      : [];
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
      ...(rounding > 0
        ? [
            `, its ${how === 'joined inside' ? 'inner end' : 'ends'} rounded with a radius of `,
            [rounding, 'length'] as const,
          ]
        : []),
      // The hole is a part of the vent. Both lengths are stated, so that neither is taken for the other.
      ...(printed < length ? [' (', [length, 'length'] as const, ' with the panel)'] : []),
      ...pieces,
      ...assumed,
      '.',
      ...joining(wall, pieces),
      ' Print and glue in a ventilated room.',
    ],
    ...(Number.isFinite((usual ?? printer).height) && {
      making: [
        ...(pieces.length > 0 ? ['It is printed', ...pieces, ...assumed, '.'] : ['It is printed in one piece.']),
        ...joining(wall, pieces),
      ],
    }),
    caution: 'fumes',
    parts: [
      {
        what: 'tube',
        made: 'print',
        count,
        size: [...size, ...pieces],
        tube: {
          vent: index,
          diameter,
          length,
          wall,
          rounding,
          hole,
          how,
          ...(bend && { bend }),
          ...(usual && { printer: usual }),
        },
      },
    ],
  };
}
