import { addedMassForTuning, passiveRadiatorFamily, passiveRadiatorTuning } from '@airspring/core/enclosure';
import { impossible } from '@airspring/core/fault';
import { radiatorTravelLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { estimatedDriverVolume, fit, type Layout, roundBodies } from '@airspring/core/space';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { alignsIn } from './aligns.js';
import {
  type Axis,
  acousticsOf,
  type BoxKind,
  type Finished,
  type KindRecord,
  type Point,
  type Variant,
} from './box-kind.js';
import { type Hole, holeAt } from './build-record.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { forcesCancel } from './forces-cancel.js';
import { noParts } from './no-parts.js';
import type { Phrase } from './phrase.js';
import { interiorIn, metres, outerSizes } from './placing.js';
import { across, fields, type RadiatorChoice, radiatorsOf } from './radiator-fields.js';
import { USUAL_QL } from './vented-fields.js';
import { inWords, leaksAssumed } from './wording.js';

const GRAM = 1e-3;
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

function variantOf(job: Job, choice: DriverChoice, radiators: RadiatorChoice): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = USUAL_QL, QA, tuning: pinned } = box;
  const losses = { QL, ...(QA !== undefined && { QA }) };
  const { radiator, count, path, name, greatestAddedMass } = radiators;
  const { Sd, Mms, Cms, Xmax = Infinity, outerDiameter = 0, cutoutDiameter = 0, depth = 0, displacedVolume } = radiator;
  const t = job.space.panelThickness;

  const bodies = {
    outerDiameter: metres(outerDiameter),
    cutoutDiameter: metres(cutoutDiameter),
    depth: metres(depth),
    // A radiator has no magnet: everything behind its cone moves with it.
    travel: metres(Xmax),
    count,
    ...radiators.seating,
  };
  const drivers = driverLayout(job, choice);
  const layout: Omit<Layout, 'vent'> = { ...drivers, bodies: [...drivers.bodies, ...roundBodies('radiator', bodies)] };
  const contents = contentsOf(job, choice);
  const many = count > 1;
  const each = many ? 'each radiator' : 'the radiator';
  const volumeEach = displacedVolume ?? estimatedDriverVolume(cutoutDiameter, Math.max(0, depth - t));

  /** The mass added to reach a moving mass: whole grams, as a scale shows them. */
  const addedTo = (moving: number): number => si('mass', Math.max(0, Math.round((moving - Mms) / GRAM) / (1 / GRAM)));
  /** The moving mass that a pinned tuning asks for in a box of this air; `undefined` where no added mass gives it. */
  function pinnedMass(netVolume: number, tuning: number): number | undefined {
    const asked = { netVolume: si('volume', netVolume), radiator, count, fb: si('frequency', tuning) };
    const found = addedMassForTuning(asked, job.air);
    return found.ok && found.addedMass <= greatestAddedMass ? Mms + found.addedMass : undefined;
  }
  const movingFor = (netVolume: number) => (pinned === undefined ? Mms : pinnedMass(netVolume, pinned));
  const none = noParts(layout);
  const spec = ([netVolume = 0, moving = movingFor(netVolume) ?? Mms]: Point) => ({
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
    const mass: Phrase =
      addedMass > 0
        ? [many ? 'each with ' : 'with ', [addedMass, 'mass'], ' added to its cone']
        : ['without added mass'];
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
        ...contents.assumed,
        ...leaksAssumed(box.QL, QL),
        ...(radiators.massAssumed
          ? [
              [
                `It is assumed that ${each} can carry `,
                [greatestAddedMass, 'mass'],
                ' of added mass, as much as its own moving mass. Ask the maker.',
              ] as const,
            ]
          : []),
        ...(displacedVolume === undefined
          ? [
              [
                `It is assumed that ${each} takes up `,
                [volumeEach, 'volume'],
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

  const solved = alignsIn(passiveRadiatorFamily, job, spec, ({ netVolume, addedMass }) => [netVolume, Mms + addedMass]);
  const massAxis: Axis = { name: 'moving mass', from: Mms, to: Mms + greatestAddedMass, ratio: 1.06, unit: GRAM };

  return {
    kind: radiatorBox,
    choice,
    // Where the tuning is pinned, the mass follows from the volume.
    acoustic: pinned === undefined ? [massAxis] : [],
    contents: contents.taken + count * volumeEach,
    least: leastFor(job, choice, layout.bodies),
    ...acousticsOf(passiveRadiatorFamily, job, spec),
    align: (alignment, at, keep) => {
      const found = solved.align(alignment, at, keep);
      if (!found.ok) {
        const text = `${alignment.name} takes a radiator that is lighter than "${name}" without added mass.`;
        return found.because[0]?.code === 'less-than-none' ? impossible('too-heavy', text) : found;
      }
      if (found.point[1]! <= Mms + greatestAddedMass) return found;
      const [added, most] = [found.point[1]! - Mms, greatestAddedMass].map((mass) => `${Math.round(mass / GRAM)} g`);
      const text = `The box of ${alignment.name} takes ${added} on ${each}, which can carry ${most}.`;
      return impossible('mass-too-great', text);
    },
    loads: [
      {
        probes: [{ of: 'potential', node: 'radiator' }],
        integrated: true,
        capacity: () => Xmax,
        what: `travel of ${each}, peak`,
        meaning: 'travel',
        perReading: () => 1,
        ofPart: `${path}.Xmax`,
        below: `the travel of ${each}`,
      },
    ],
    limits: () => radiatorTravelLimit(radiator),
    ...none,
    parts: (point, out) => none.parts(point, out) && movingFor(point[0]!) !== undefined,
    settle: (airBefore, [, moving = airBefore > 0 ? movingFor(airBefore) : undefined]) => {
      if (moving === undefined) return undefined;
      const added = Math.min(addedTo(moving), Math.floor(greatestAddedMass / GRAM + 1e-6) / (1 / GRAM));
      return airBefore > 0 ? [airBefore, Mms + added] : undefined;
    },
    place: (edges) =>
      fit({
        outer: outerSizes(edges),
        ...interiorIn(job, edges),
        thickness: metres(t),
        driver: driverRoom(choice),
        radiator: bodies,
        cutoutMargin: metres(job.space.cutoutPlay),
      }),
    record,
  };
}

/** A box with passive radiators: cones without a motor tune it. Added mass, in whole grams, lowers the tuning. */
export const radiatorBox: BoxKind<typeof fields> = {
  name: 'radiator',
  byName: true,
  called: 'a passive-radiator box',
  shaped: true,
  fields,
  across,
  variants: (job, choice) => radiatorsOf(job).map((one) => variantOf(job, choice, one)),
};
