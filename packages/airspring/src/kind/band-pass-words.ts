import type { Contents } from './drivers.js';
import type { ChamberTold, Rear } from './finished-chambers.js';
import type { KindRecord } from './kind-record.js';
import type { Phrase } from './phrase.js';
import { leaksAssumed, listOf } from './wording.js';

/** What the words about a band-pass box depend on. */
interface Told {
  readonly rear: Rear;
  readonly axis: 0 | 1 | 2;
  /** Length of the front chamber, m. */
  readonly at: number;
  readonly volumes: readonly [front: number, rear: number];
  /** Where its level is within 3 dB of its maximum in the band of the brief, Hz; 0 for an end that lies beyond. */
  readonly band: readonly [lower: number, upper: number];
  /** The lowest standing wave along the longest way, Hz. */
  readonly resonance: number;
  /** Those that have vents, the front one first. */
  readonly chambers: readonly ChamberTold[];
  readonly contents: Contents;
  /** Whether the brief says what braces take in the front chamber. */
  readonly frontBraced: boolean;
  /** QL as the brief says it, and as it is. */
  readonly written: number | undefined;
  readonly QL: number;
  readonly many: boolean;
}

/** Where the partition stands, seen from the panel that its front chamber begins at. */
const PLACE = [
  ['stands upright, its near side ', ' to the right of the inside of the left panel'],
  ['lies flat, its near side ', ' above the inside of the bottom panel'],
  ['stands upright, its near side ', ' behind the inside of the front panel'],
] as const;

/** The panel that the front chamber begins at. */
const NEAR = ['left', 'bottom', 'front'] as const;

/** The chambers by name, the one in front of the cones first. */
export const NAMES = { closed: ['vented', 'closed'], out: ['front', 'rear'], through: ['front', 'rear'] } as const;

/** From where to where the box plays. */
function plays(rear: Rear, [front, behind]: readonly [number, number], drivers: string, s: string): Phrase {
  if (rear === 'closed') {
    return [
      `The ${drivers} play${s} from a closed chamber of `,
      [behind, 'volume'],
      ' into a vented one of ',
      [front, 'volume'],
      ', and the box is heard through its vent alone. ',
    ];
  }
  return [
    `The ${drivers} stand${s} between a front chamber of `,
    [front, 'volume'],
    ' and a rear one of ',
    [behind, 'volume'],
    rear === 'out'
      ? ', and the box is heard through the vents of both. '
      : '. The vents of the rear chamber open into the front one, and the box is heard through the vents of the front one alone. ',
  ];
}

/** What a reader is told about the chambers and the partition, beside what is told about the vents. */
export function bandPassWords({
  rear,
  axis,
  at,
  volumes,
  band: [lower, upper],
  resonance,
  chambers,
  contents,
  frontBraced,
  written,
  QL,
  many,
}: Told): Pick<KindRecord, 'summary' | 'building' | 'playing' | 'numbers' | 'assumed'> & {
  readonly tunings: KindRecord['numbers'];
} {
  const [stands, from] = PLACE[axis];
  const [front, behind] = NAMES[rear];
  const drivers = many ? 'drivers' : 'driver';
  const s = many ? '' : 's';
  const building: Phrase[] = [
    [
      `A partition divides the box into a ${front} chamber and a ${behind} one. It ${stands}`,
      [at, 'length'],
      `${from}. The ${drivers} stand${s} in it, with the frame in the ${front} chamber and the magnet in the ${behind} one. Glue and seal it all around: a leak between the chambers spoils both.`,
    ],
    [
      `Screw on the ${NEAR[axis]} panel, which is the one opposite to the partition in the ${front} chamber, with a seal and without glue, so that you can reach the ${drivers}. The centres of the holes in the partition are measured on it, from its own edges, as you see it from the ${front} chamber.`,
    ],
    ...chambers.flatMap(({ building: own }) => own),
  ];
  const taken = [
    ...(rear === 'closed' ? ['that the closed chamber does not leak'] : []),
    ...(frontBraced ? [] : [`that no bracing is in the ${front} chamber`]),
    'that the frame of a driver stands out 10 mm from the partition',
  ];
  return {
    summary: [
      ...plays(rear, volumes, drivers, s),
      ...chambers.flatMap(({ summary }, i): Phrase => (i > 0 ? [' ', ...summary] : summary)),
      ...(lower > 0
        ? ([
            ' Its level is within 3 dB of its maximum from ',
            [lower, 'frequency'],
            ' to ',
            ...(upper > 0 ? ([[upper, 'frequency']] as const) : ['the end of the band']),
            '.',
          ] as const)
        : []),
    ],
    building,
    playing: [
      ...chambers[0]!.playing,
      [
        `How deep the response reaches, and how far it falls, is counted from its maximum, since the level of a band-pass falls on both sides. Above its band the chambers and the ${rear === 'closed' ? 'vent' : 'vents'} have resonances, the lowest near `,
        [resonance, 'frequency'],
        '. Feed the box through a low-pass filter above its band, so that they are not heard.',
      ],
    ],
    tunings: chambers.map(({ fb }, i) => ({
      what: `tuning of the ${NAMES[rear][i]} chamber`,
      value: [[fb, 'frequency']],
    })),
    numbers: [
      { what: `air of the ${behind} chamber`, value: [[volumes[1], 'volume']] },
      { what: `air of the ${front} chamber`, value: [[volumes[0], 'volume']] },
      ...(lower > 0
        ? [{ what: 'half power below the maximum, lower end', value: [[lower, 'frequency']] as const }]
        : []),
      ...(upper > 0
        ? [{ what: 'half power below the maximum, upper end', value: [[upper, 'frequency']] as const }]
        : []),
    ],
    assumed: [
      ...contents.assumed,
      ...leaksAssumed(written, QL),
      [`It is assumed ${listOf(taken)}, which is common practice.`],
    ],
  };
}
