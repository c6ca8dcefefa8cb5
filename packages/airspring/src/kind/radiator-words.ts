import type { Air } from '@airspring/core/air';
import { passiveRadiatorTuning } from '@airspring/core/enclosure';
import { type Mass, si } from '@airspring/core/quantity';
import { type Hole, holeAt } from './build-record.js';
import { forcesCancel } from './forces-cancel.js';
import type { Finished, KindRecord } from './kind-record.js';
import type { Phrase } from './phrase.js';
import type { RadiatorChoice } from './radiator-fields.js';
import { inWords } from './wording.js';

/** Standard gravity, m/s². */
const GRAVITY = 9.80665;

/** A radiator that lies flat sags under its own weight. */
function sagWords(holes: readonly Hole[], sag: number): Phrase[] {
  if (!holes.some(({ face }) => face === 'top' || face === 'bottom')) return [];
  return [
    [
      'A radiator in the top or the bottom panel sags by ',
      [sag, 'travel'],
      ' under its own weight. The travel in this report does not include that. Ask the maker whether the radiator may lie flat.',
    ],
  ];
}

/** How a sentence calls one of some radiators. */
export const eachOf = (count: number): string => (count > 1 ? 'each radiator' : 'the radiator');

/** What a record of a box with radiators is made of. */
interface Told {
  readonly radiators: RadiatorChoice;
  /** What is added to each cone. */
  readonly addedMass: Mass;
  /** The air that each is assumed to take, m³; left out where it is stated. */
  readonly displaced: number | undefined;
  readonly assumed: readonly Phrase[];
  readonly air: Air;
}

/** What is told of a finished box with radiators. */
export function radiatorRecord(
  { point, fit: { placement } }: Finished,
  { radiators, addedMass, displaced, assumed, air }: Told,
): KindRecord {
  const { radiator, count, path, name, greatestAddedMass } = radiators;
  const { Sd, Mms, Cms, Xmax = Infinity, cutoutDiameter = 0, depth = 0 } = radiator;
  const many = count > 1;
  const each = eachOf(count);
  const [netVolume = 0] = point;
  const { fb, notch, warnings } = passiveRadiatorTuning(
    { netVolume: si('volume', netVolume), radiator, count, addedMass },
    air,
  );
  const holes = placement.radiators.flatMap(({ face, centres }) =>
    centres.map((centre) => holeAt('radiator', face, cutoutDiameter, centre)),
  );
  const mass: Phrase =
    addedMass > 0 ? [many ? 'each with ' : 'with ', [addedMass, 'mass'], ' added to its cone'] : ['without added mass'];
  return {
    holes,
    ...(addedMass > 0 && { weights: { count, mass: addedMass, coneDiameter: Math.sqrt((4 * Sd) / Math.PI) } }),
    summary: [
      'It is tuned to ',
      [fb, 'frequency'],
      ` by ${inWords(count)} passive ${many ? 'radiators' : 'radiator'} "${name}", `,
      ...mass,
      '.',
    ],
    brief: [`${count} × `, ...(addedMass > 0 ? ([[addedMass, 'mass'], ' added'] as const) : ['no mass added'])],
    building: [
      [
        `Fit ${inWords(count)} passive ${many ? 'radiators' : 'radiator'} "${name}". `,
        ...(addedMass > 0
          ? ([
              'Add ',
              [addedMass, 'mass'],
              ` to the middle of ${many ? 'each' : 'its'} cone. Weigh what you add, and fix it so that it cannot come loose. `,
            ] as const)
          : [`Add no mass to ${many ? 'them' : 'it'}. `]),
        `${many ? 'Together they tune' : 'It tunes'} the box to `,
        [fb, 'frequency'],
        `. ${many ? 'Each radiator' : 'The radiator'} needs a clear depth of `,
        [depth + Xmax, 'length'],
        ' behind the outside of its panel; this includes its travel.',
      ],
      ...(forcesCancel(holes)
        ? [
            [
              'The radiators stand back to back on opposite panels, on common axes, so that the forces of their cones on the box cancel.',
            ] as const,
          ]
        : []),
    ],
    playing: [
      [
        'The level has a notch at ',
        [notch, 'frequency'],
        `, the resonance of ${each} outside the box${addedMass > 0 ? ' with its added mass' : ''}.`,
      ],
      ...sagWords(holes, (Mms + addedMass) * GRAVITY * Cms),
    ],
    dip: { of: 'the tuning', at: [fb] },
    numbers: [
      { what: 'tuning (fb)', value: [[fb, 'frequency']] },
      { what: 'notch in the level', value: [[notch, 'frequency']] },
      { what: `mass added to ${each}`, value: [[addedMass, 'mass']] },
    ],
    assumed: [
      ...assumed,
      ...(radiators.massAssumed
        ? [
            [
              `It is assumed that ${each} can carry `,
              [greatestAddedMass, 'mass'],
              ' of added mass, as much as its own moving mass. Ask the maker.',
            ] as const,
          ]
        : []),
      ...(displaced !== undefined
        ? [
            [
              `It is assumed that ${each} takes up `,
              [displaced, 'volume'],
              ' inside the box, estimated from its cutout and its depth as for a driver.',
            ] as const,
          ]
        : []),
    ],
    margins: [
      {
        path: `${path}.greatestAddedMass`,
        what: `mass added to ${each}`,
        meaning: 'mass',
        value: addedMass,
        limit: greatestAddedMass,
        sense: 'at most',
      },
    ],
    warnings,
    givesOut: { 'radiator travel': `the travel of the passive ${many ? 'radiators' : 'radiator'} (Xmax)` },
    printed: false,
  };
}
