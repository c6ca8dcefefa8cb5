import type { Finished, KindRecord } from './box-kind.js';
import { holeAt } from './build-record.js';
import type { Phrase } from './phrase.js';
import { airSpeedNote, inWords } from './wording.js';

/** What the words about a line need beside its box. */
interface LineTold {
  readonly folds: number;
  readonly panel: number;
  readonly flowResistivity: number;
  readonly filled: number;
  readonly endCorrection: number;
  readonly speedOfSound: number;
  readonly assumed: readonly Phrase[];
}

const TIMES = ['', 'once', 'twice'] as const;
const often = (folds: number): string => TIMES[folds] ?? `${inWords(folds)} times`;

/** How the line runs in its box, what to cut and glue, and where it resonates. */
export function lineRecord({ edges, point }: Finished, told: LineTold): KindRecord {
  const { folds, panel: t, flowResistivity, filled, endCorrection, speedOfSound } = told;
  const [, length = 0] = point;
  const [width, height, depth] = edges.map((edge) => edge - 2 * t) as [number, number, number];
  const channel = (depth - folds * t) / (folds + 1);
  const first = speedOfSound / (4 * (length + endCorrection));
  const last = t + folds * (channel + t) + channel / 2;
  const isFolded = folds > 0;
  // The fill lowers the resonances; here they are those of the air alone.
  const isFilled = flowResistivity > 0;
  const empty = isFilled ? ', without the fill' : '';
  const start = folds % 2 === 0 ? 'bottom' : 'top';
  const board = height - channel;
  return {
    holes: [holeAt('mouth', 'top', [width, 0, channel], [t + width / 2, 0, last])],
    boards: isFolded
      ? [{ name: 'inner boards of the line (width × height)', count: folds, length: width, width: board }]
      : [],
    summary: [
      'Behind the driver runs a line of ',
      [length, 'length'],
      isFolded ? `, folded ${often(folds)}` : '',
      `, that is closed at one end and open at the other. Its first resonance${isFilled ? ', without the fill,' : ''} is at `,
      [first, 'frequency'],
      '.',
    ],
    brief: [[length, 'length'], isFolded ? `, folded ${often(folds)}` : ''],
    building: [
      isFolded
        ? [
            `Glue ${inWords(folds)} inner ${folds > 1 ? 'boards' : 'board'} between the sides, ${folds > 1 ? 'each ' : ''}`,
            [channel, 'length'],
            ` behind the one in front, so that there are ${inWords(folds + 1)} channels of this depth. The line begins at the ${start} of the channel behind the front, where it is closed. `,
            folds > 1
              ? 'Each board leaves a gap as deep as a channel at one end, the first board at the end away from the beginning, the next at the opposite end, and so on.'
              : 'The board leaves a gap as deep as a channel at the other end.',
          ]
        : ['The line is the box itself: it begins at the bottom, where it is closed.'],
      [
        'Leave the last channel open at the top: cut an opening of ',
        [width, 'length'],
        ' by ',
        [channel, 'length'],
        ' into the top panel, flush with the inside of the walls. Keep it clear of walls and furniture by at least its own depth.',
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
      { what: 'channel, width × depth', value: [[width, 'bareLength'], ' × ', [channel, 'length']] },
      { what: `first resonance of the line${empty}`, value: [[first, 'frequency']] },
      { what: `second resonance, three quarter waves${empty}`, value: [[3 * first, 'frequency']] },
    ],
    assumed: [
      ...told.assumed,
      [
        'It is assumed that the driver plays into the middle of the first channel, and that the line bends along its centre.',
      ],
    ],
    margins: [],
    warnings: [],
    givesOut: { vent: 'the air speed in the opening', 'quiet vent': 'an onset of noise in the opening' },
    printed: isFolded,
  };
}
