import type { KindRecord } from './box-kind.js';
import type { Contents } from './drivers.js';
import type { Phrase } from './phrase.js';
import type { VentTold } from './vents.js';
import { leaksAssumed } from './wording.js';

/** What the words about a band-pass box depend on. */
interface Told {
  readonly axis: 0 | 1 | 2;
  /** Length of the vented chamber, m. */
  readonly at: number;
  readonly volumes: readonly [front: number, rear: number];
  /** Where the level is within half power of its maximum; 0 where an end was not found. */
  readonly band: readonly [lower: number, upper: number];
  /** The lowest standing wave along the longest way, Hz. */
  readonly resonance: number;
  readonly told: VentTold;
  readonly contents: Contents;
  /** QL as the brief says it, and as it is. */
  readonly written: number | undefined;
  readonly QL: number;
  readonly many: boolean;
}

/** Where the partition stands, seen from the panel that its vented chamber begins at. */
const PLACE = [
  ['stands upright, its near side ', ' to the right of the inside of the left panel'],
  ['lies flat, its near side ', ' above the inside of the bottom panel'],
  ['stands upright, its near side ', ' behind the inside of the front panel'],
] as const;

/** What a reader is told about the chambers and the partition, beside what is told about the vent. */
export function bandPassWords({
  axis,
  at,
  volumes: [front, rear],
  band: [lower, upper],
  resonance,
  told,
  contents,
  written,
  QL,
  many,
}: Told): Pick<KindRecord, 'summary' | 'building' | 'playing' | 'numbers' | 'assumed'> {
  const [stands, from] = PLACE[axis];
  const drivers = many ? 'drivers' : 'driver';
  const building: Phrase[] = [
    [
      `A partition divides the box into a vented chamber and a closed one. It ${stands}`,
      [at, 'length'],
      `${from}. The ${drivers} stand${many ? '' : 's'} in it, with the frame in the vented chamber and the magnet in the closed one. Glue and seal it all around: a leak between the chambers spoils both.`,
    ],
    [
      `Screw on one panel of the vented chamber with a seal, so that you can reach the ${drivers}. The centres of the holes in the partition are measured on it, from its own edges, as you see it from the vented chamber.`,
    ],
    ...told.building,
  ];
  return {
    summary: [
      `The ${drivers} play${many ? '' : 's'} from a closed chamber of `,
      [rear, 'volume'],
      ' into a vented one of ',
      [front, 'volume'],
      ', and the box is heard through its vent alone. ',
      ...told.summary,
      ...(lower > 0 && upper > 0
        ? ([
            ' Its level is within 3 dB of its maximum from ',
            [lower, 'frequency'],
            ' to ',
            [upper, 'frequency'],
            '.',
          ] as const)
        : []),
    ],
    building,
    playing: [
      ...told.playing,
      [
        'How deep the response reaches, and how far it falls, is counted from its maximum, since the level of a band-pass falls on both sides. Above its band the chambers and the vent have resonances, the lowest near ',
        [resonance, 'frequency'],
        '. Feed the box through a low-pass filter above its band, so that they are not heard.',
      ],
    ],
    numbers: [
      { what: 'air of the closed chamber', value: [[rear, 'volume']] },
      { what: 'air of the vented chamber', value: [[front, 'volume']] },
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
      [
        'It is assumed that the closed chamber does not leak, that the bracing is in it, and that the frame of a driver stands out 10 mm from the partition, which is common practice.',
      ],
    ],
  };
}
