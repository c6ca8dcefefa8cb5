import { holeAt } from './build-record.js';
import type { Finished, KindRecord } from './kind-record.js';
import { lineBoards } from './line-boards.js';
import { depthAt, depthsOf, type LineForm, type Stretch } from './line-form.js';
import { lineResonances } from './line-resonance.js';
import type { Phrase } from './phrase.js';
import { airSpeedNote, inWords } from './wording.js';

/** What the words about a line need beside its box. */
interface LineTold {
  readonly form: LineForm;
  readonly folds: number;
  readonly panel: number;
  /** Section of the mouth over that of the closed end, and depth of the channel there, m. */
  readonly mouth: number;
  readonly first: number;
  readonly stretches: readonly Stretch[];
  /** Shares of the length; the driver is in the middle of the first channel where none is said. */
  readonly driverAt?: number;
  readonly openAt: number;
  readonly flowResistivity: number;
  readonly filled: number;
  readonly endCorrection: number;
  readonly speedOfSound: number;
  readonly assumed: readonly Phrase[];
}

const TIMES = ['', 'once', 'twice'] as const;
const often = (folds: number): string => TIMES[folds] ?? `${inWords(folds)} times`;

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

/** How deep the channels are, as a builder makes them. */
function channelsTold({ form, folds, mouth, first }: LineTold): Phrase {
  const depths = Array.from({ length: folds + 1 }, (_, i) => depthsOf(form, i, folds + 1, mouth));
  if (form.told === 'uniform') return [`${inWords(folds + 1)} channels of this depth`];
  return [
    `${inWords(folds + 1)} channels: `,
    ...depths.flatMap(
      ([begins, ends], i): Phrase => [
        i === 0 ? '' : i === folds ? ' and ' : ', ',
        [first * begins, 'length'],
        ...(form.slants ? ([' to ', [first * ends, 'length']] as const) : []),
      ],
    ),
    ' deep, from the closed end on',
  ];
}

/** Which boards to glue in, and how they stand. */
function boardsTold(told: LineTold): Phrase {
  const { form, folds, mouth, first } = told;
  if (folds === 0) return ['The line is the box itself: it begins at the bottom, where it is closed.'];
  const start = folds % 2 === 0 ? 'bottom' : 'top';
  const many = folds > 1;
  const gap =
    form.told === 'uniform' ? 'a gap as deep as a channel' : 'a gap as deep as the channel that it leads into';
  return [
    `Glue ${inWords(folds)} inner ${many ? 'boards' : 'board'} between the sides, `,
    ...(form.told === 'uniform'
      ? ([many ? 'each ' : '', [first, 'length'], ' behind the one in front, so that there are '] as const)
      : ['so that there are ']),
    ...channelsTold(told),
    `. The line begins at the ${start} of the channel behind the front, where it is closed. `,
    many
      ? `Each board leaves ${gap} at one end, the first board at the end away from the beginning, the next at the opposite end, and so on.`
      : `The board leaves ${gap} at the other end: `,
    ...(many ? [] : ([[first * form.after(1, folds + 1, mouth), 'length'], '.'] as const)),
    ...(form.slants
      ? [' The boards slant: bevel their edges, and measure each depth where its channel begins and ends.']
      : []),
  ];
}

/** How the line runs in its box, what to cut and glue, and where it resonates. */
export function lineRecord(finished: Finished, told: LineTold): KindRecord {
  const { edges, point } = finished;
  const { form, folds, panel: t, mouth, first, stretches, driverAt, openAt } = told;
  const { flowResistivity, filled, endCorrection, speedOfSound } = told;
  const [, length = 0] = point;
  const [width, height, depth] = edges.map((edge) => edge - 2 * t) as [number, number, number];
  const open = first * depthAt(stretches, openAt * length);
  const [lowest = 0, second = 0] = lineResonances({
    stretches,
    length,
    openAt: openAt * length,
    endCorrection,
    speedOfSound,
  });
  // From the beginning of the last channel, which is at the bottom.
  const up = height - (1 - openAt) * length;
  const hole =
    openAt === 1
      ? holeAt('mouth', 'top', [width, 0, open], [t + width / 2, 0, t + depth - open / 2])
      : holeAt('mouth', 'back', [width, open, 0], [t + width / 2, t + up, 0]);
  const isFolded = folds > 0;
  // The fill lowers the resonances; here they are those of the air alone.
  const isFilled = flowResistivity > 0;
  const empty = isFilled ? ', without the fill' : '';
  const section =
    form.told === 'uniform'
      ? ''
      : `, ${form.told === 'stepped' ? 'stepped' : 'tapering'} to ${percent(mouth)} of its section`;
  return {
    holes: [hole],
    boards: lineBoards(edges, { form, folds, board: t, first, mouth }).panels,
    summary: [
      'Behind the driver runs a line of ',
      [length, 'length'],
      isFolded ? `, folded ${often(folds)}` : '',
      section,
      openAt === 1
        ? ', that is closed at one end and open at the other.'
        : `, that is closed at both ends and open in the side, at ${percent(openAt)} of its length.`,
      ` Its first resonance${isFilled ? ', without the fill,' : ''} is at `,
      [lowest, 'frequency'],
      '.',
    ],
    brief: [[length, 'length'], isFolded ? `, folded ${often(folds)}` : ''],
    building: [
      boardsTold(told),
      openAt === 1
        ? [
            'Leave the last channel open at the top: cut an opening of ',
            [width, 'length'],
            ' by ',
            [open, 'length'],
            ' into the top panel, flush with the inside of the walls. Keep it clear of walls and furniture by at least its own depth.',
          ]
        : [
            'The last channel is closed at the top. Cut an opening of ',
            [width, 'length'],
            ' by ',
            [open, 'length'],
            ' into the back panel, its middle ',
            [t + up, 'length'],
            ' above the lower edge of the box. Keep it clear of walls and furniture by at least its own height.',
          ],
      ...(isFilled
        ? [
            [
              `Fill ${filled < 1 ? `the first ${Math.round(100 * filled)} % of the line, from its closed end,` : 'the whole line'} evenly with fibre of a flow resistivity of ${Math.round(flowResistivity)} Pa·s/m². Keep it in place with netting, and away from the cone. Ask the maker of the fibre for this number at the density at which you pack it.`,
            ] as const,
          ]
        : []),
    ],
    ...(isFilled && { filled: ['line'] }),
    playing: [airSpeedNote],
    numbers: [
      { what: 'length of the line, along its centre', value: [[length, 'length']] },
      ...(form.told === 'uniform'
        ? [{ what: 'channel, width × depth', value: [[width, 'bareLength'], ' × ', [first, 'length']] as Phrase }]
        : [
            {
              what: 'depth of the line, closed end to far end',
              value: [[first, 'bareLength'], ' to ', [first * mouth, 'length']] as Phrase,
            },
          ]),
      { what: `first resonance of the line${empty}`, value: [[lowest, 'frequency']] },
      {
        what: `second resonance${form.told === 'uniform' && openAt === 1 ? ', three quarter waves' : ''}${empty}`,
        value: [[second, 'frequency']],
      },
    ],
    assumed: [
      ...told.assumed,
      driverAt === undefined
        ? [
            'It is assumed that the driver plays into the middle of the first channel, and that the line bends along its centre.',
          ]
        : [
            'It is assumed that the driver plays into the line where its middle is, ',
            [driverAt * length, 'length'],
            ' from the closed end, and that the line bends along its centre.',
          ],
    ],
    margins: [],
    warnings: [],
    givesOut: { vent: 'the air speed in the opening', 'quiet vent': 'an onset of noise in the opening' },
    printed: isFolded,
  };
}
