import { holeAt } from './build-record.js';
import type { Finished, KindRecord } from './kind-record.js';

/** What the words about an aperiodic vent need beside the box. */
interface Told {
  readonly diameter: number;
  readonly thickness: number;
  readonly resistance: number;
  readonly flowResistivity: number;
  /** Whether the brief says it. */
  readonly isStated: boolean;
  /** How much the mass of the air in the vent opposes the air at the resonance, as a share of the resistance. */
  readonly massShare: number;
}

/** What to cut, what to fill it with, and how far the numbers can be trusted. `base` tells of the box without its vent. */
export function aperiodicRecord(
  base: KindRecord,
  { fit: { placement } }: Finished,
  { diameter, thickness, resistance, flowResistivity, isStated, massShare }: Told,
): KindRecord {
  const { face = 'back', centres = [] } = placement.vent ?? {};
  const resistivity = `${Math.round(flowResistivity)} Pa·s/m²`;
  return {
    ...base,
    holes: centres.map((centre) => holeAt('vent', face, diameter, centre)),
    summary: [
      'An aperiodic vent of ',
      [diameter, 'length'],
      ', filled with felt or fibre ',
      [thickness, 'length'],
      ' thick, damps it. Without the vent, its resonance in the box is ',
      ...base.summary.slice(1),
    ],
    brief: [[diameter, 'bareLength'], ' × ', [thickness, 'length'], ' of felt'],
    building: [
      [
        'Fill the vent evenly with felt or fibre of a flow resistivity of ',
        `${resistivity}, in a layer `,
        [thickness, 'length'],
        ' thick. Hold it between two open grilles, in a ring if it is thicker than the panel, so that all air goes through it and none past it. Ask the maker for the flow resistivity at the density at which you pack it. The whole vent then has a flow resistance of ',
        [resistance, 'acousticResistance'],
        '.',
      ],
      [
        'Every other joint must be airtight. Fibres irritate skin and lungs: wear gloves and a mask that fits, and cover the fibre with cloth.',
      ],
      ...base.building,
    ],
    filled: ['vent', ...(base.filled ?? [])],
    playing: [
      [
        'The model of the vent is good for slow air. A limit on the air speed in it is a rule of thumb: in faster air, the resistance grows with the speed, and the vent damps more when the box plays loudly.',
      ],
      [
        `At the resonance of the box, the mass of the air in the vent opposes the air ${Math.round(100 * massShare)} % as much as the felt does. The design leaves it out.`,
      ],
    ],
    numbers: [
      { what: 'flow resistance of the vent', value: [[resistance, 'acousticResistance']] },
      ...base.numbers.map(({ what, value }) => ({ what: `${what}, vent shut`, value })),
    ],
    assumed: [
      ...base.assumed,
      ...(isStated
        ? []
        : [
            [
              `It is assumed that the felt or fibre has a flow resistivity of ${resistivity}. This is a rule of thumb for dense mineral wool or soft felt; other materials have from a fifth to five times as much.`,
            ] as const,
          ]),
    ],
    givesOut: { vent: 'the air speed in the vent', 'quiet vent': 'an onset of noise in the vent' },
  };
}
