import { passiveRadiatorFamily, passiveRadiatorTuning } from '@airspring/core/enclosure';
import { radiatorTravelLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { compileBodiesFit, estimatedDriverVolume, fit, type Layout, roundBodies } from '@airspring/core/space';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { forcesCancel } from './balance.js';
import { acousticsOf, type BoxKind, type Finished, type KindRecord, type Point, type Variant } from './box-kind.js';
import { type Hole, holeAt } from './build-record.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import type { Phrase } from './phrase.js';
import { metres, outerSizes } from './placing.js';
import { across, fields, type RadiatorChoice, radiatorsOf } from './radiator-fields.js';

const GRAM = 1e-3;
/** Standard gravity, m/s². */
const GRAVITY = 9.80665;

const NUMBERS = ['no', 'one', 'two', 'three', 'four'] as const;

/** What a radiator that lies flat does under its weight. */
function sagWords(holes: readonly Hole[], sag: number): Phrase[] {
  if (!holes.some(({ face }) => face === 'top' || face === 'bottom')) return [];
  return [
    [
      'A radiator that lies flat hangs ',
      [sag, 'travel'],
      ' out of its middle by its own weight; the travel told here leaves that out. Ask its maker whether it may lie flat.',
    ],
  ];
}

function variantOf(job: Job, choice: DriverChoice, radiators: RadiatorChoice): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = 7, QA } = box;
  const losses = { QL, ...(QA !== undefined && { QA }) };
  const { radiator, count, path, name, greatestAddedMass } = radiators;
  const { Mms, Cms, Xmax = Infinity, outerDiameter = 0, cutoutDiameter = 0, depth = 0, displacedVolume } = radiator;
  const t = job.space.panelThickness;

  const bodies = {
    outerDiameter: metres(outerDiameter),
    cutoutDiameter: metres(cutoutDiameter),
    depth: metres(depth),
    // Its whole rear moves with the cone.
    travel: metres(Xmax),
    count,
    ...radiators.seating,
  };
  const drivers = driverLayout(job, choice);
  const layout: Omit<Layout, 'vent'> = { ...drivers, bodies: [...drivers.bodies, ...roundBodies('radiator', bodies)] };
  const fits = compileBodiesFit(layout);
  const contents = contentsOf(job, choice);
  const each = displacedVolume ?? estimatedDriverVolume(cutoutDiameter, Math.max(0, depth - t));

  /** Mass that is added where so much moves: whole grams, as a scale shows them. */
  const addedTo = (moving: number): number => si('mass', Math.max(0, Math.round((moving - Mms) / GRAM) / (1 / GRAM)));
  const spec = ([netVolume = 0, moving = Mms]: Point) => ({
    drivers: choice.drivers,
    netVolume: si('volume', netVolume),
    radiator,
    count,
    addedMass: si('mass', moving - Mms),
    ...losses,
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });

  function record({ point, fit: { placement } }: Finished): KindRecord {
    const [netVolume = 0, moving = Mms] = point;
    const addedMass = si('mass', addedTo(moving));
    const { fb, notch, warnings } = passiveRadiatorTuning(
      { netVolume: si('volume', netVolume), radiator, count, addedMass },
      job.air,
    );
    const holes = placement.radiators.flatMap(({ face, centres }) =>
      centres.map((centre) => holeAt('radiator', face, cutoutDiameter, centre)),
    );
    const many = count > 1;
    const mass: Phrase = addedMass > 0 ? ['add ', [addedMass, 'mass']] : ['add no mass'];
    return {
      holes,
      summary: [
        'It is tuned to ',
        [fb, 'frequency'],
        ` by ${NUMBERS[count]} passive ${many ? 'radiators' : 'radiator'} "${name}": `,
        ...mass,
        ` to ${many ? 'each radiator' : 'the radiator'}.`,
      ],
      brief: [`${count} × `, ...(addedMass > 0 ? (['+', [addedMass, 'mass']] as const) : ['no added mass'])],
      building: [
        [
          `${many ? `Passive radiators "${name}", ${NUMBERS[count]} of them` : `One passive radiator "${name}"`}: `,
          ...mass,
          ` to ${many ? 'the cone of each radiator' : 'the cone of the radiator'}, on its axis. `,
          ...(addedMass > 0 ? ['Weigh what you add, and fix it so that it cannot come loose. '] : []),
          `${many ? 'Together they tune' : 'It tunes'} the box to `,
          [fb, 'frequency'],
          '. The rear of each cone needs ',
          [depth + Xmax, 'length'],
          ' from the outside of its panel, travel included.',
        ],
        ...(forcesCancel(holes)
          ? [
              [
                'The radiators stand back to back on opposite panels, on common axes: the forces of their cones on the box cancel.',
              ] as const,
            ]
          : []),
      ],
      playing: [
        [
          'At ',
          [notch, 'frequency'],
          ', where the radiators resonate without the air of the box, the level has a notch.',
        ],
        ...sagWords(holes, (Mms + addedMass) * GRAVITY * Cms),
      ],
      dip: 'close to the tuning',
      numbers: [
        { what: 'tuning (fb)', value: [[fb, 'frequency']] },
        { what: 'notch of the radiators', value: [[notch, 'frequency']] },
        { what: 'mass added to each radiator', value: [[addedMass, 'mass']] },
      ],
      assumed: [
        ...contents.assumed,
        ...(box.QL === undefined ? [[`Leaks are taken as QL ${QL}, common practice.`] as const] : []),
        ...(radiators.massAssumed
          ? [
              [
                `${many ? 'Each' : 'The'} radiator is taken to bear `,
                [greatestAddedMass, 'mass'],
                ' of added mass, as much as its cone weighs; ask its maker.',
              ] as const,
            ]
          : []),
        ...(displacedVolume === undefined
          ? [
              [
                `${many ? 'Each' : 'The'} radiator is taken to fill `,
                [each, 'volume'],
                ', estimated as that of a driver from its cutout and its depth.',
              ] as const,
            ]
          : []),
      ],
      margins: [
        {
          path: `${path}.greatestAddedMass`,
          what: 'mass added to each radiator',
          meaning: 'mass',
          value: addedMass,
          limit: greatestAddedMass,
          sense: 'at most',
        },
      ],
      warnings,
      givesOut: { 'radiator travel': 'the travel of the passive radiators (Xmax)' },
      printed: false,
    };
  }

  return {
    kind: radiatorBox,
    choice,
    acoustic: [
      { name: 'moving mass of each radiator', from: Mms, to: Mms + greatestAddedMass, ratio: 1.06, unit: GRAM },
    ],
    geometric: [],
    contents: contents.taken + count * each,
    least: leastFor(job, choice, layout.bodies),
    ...acousticsOf(passiveRadiatorFamily, job, spec),
    load: {
      probe: { of: 'potential', node: 'radiator' },
      integrated: true,
      capacity: () => Xmax,
      what: 'travel of each radiator, peak',
      meaning: 'travel',
      perReading: () => 1,
      ofPart: `${path}.Xmax`,
      below: 'the travel of each radiator',
    },
    limits: () => radiatorTravelLimit(radiator),
    wishes: [],
    parts: (_, out) => {
      out.extent = 0;
      out.taken = 0;
      out.effort = 0;
      return true;
    },
    room: (width, height, deep) => (fits(width, height, deep) ? 0 : -1),
    roomKey: JSON.stringify(layout),
    settle: (airBefore, [, moving = Mms]) => {
      const added = Math.min(addedTo(moving), Math.floor(greatestAddedMass / GRAM + 1e-6) / (1 / GRAM));
      return airBefore > 0 ? [airBefore, Mms + added] : undefined;
    },
    place: (edges) =>
      fit({
        outer: outerSizes(edges),
        thickness: metres(t),
        driver: driverRoom(choice),
        radiator: bodies,
        cutoutMargin: metres(job.space.cutoutPlay),
      }),
    record,
  };
}

/** A box with passive radiators: cones without a motor, made heavier by whole grams, tune the air of the box. */
export const radiatorBox: BoxKind<typeof fields> = {
  name: 'radiator',
  byName: true,
  called: 'a passive-radiator box',
  fields,
  across,
  variants: (job, choice) => radiatorsOf(job).map((one) => variantOf(job, choice, one)),
};
