import { addedMassForTuning, passiveRadiatorFamily } from '@airspring/core/enclosure';
import { impossible } from '@airspring/core/fault';
import { radiatorTravelLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { estimatedDriverVolume, fit, type Layout, roundBodies } from '@airspring/core/space';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { alignsIn } from './aligns.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { noParts } from './no-parts.js';
import { interiorIn, metres, outerSizes } from './placing.js';
import type { Axis, Point } from './point.js';
import { across, fields, type RadiatorChoice, radiatorsOf } from './radiator-fields.js';
import { eachOf, radiatorRecord } from './radiator-words.js';
import { USUAL_QL } from './vented-fields.js';
import { leaksAssumed } from './wording.js';

const GRAM = 1e-3;
function variantOf(job: Job, choice: DriverChoice, radiators: RadiatorChoice): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = USUAL_QL, QA, tuning: pinned } = box;
  const losses = { QL, ...(QA !== undefined && { QA }) };
  const { radiator, count, path, name, greatestAddedMass } = radiators;
  const { Mms, Xmax = Infinity, outerDiameter = 0, cutoutDiameter = 0, depth = 0, displacedVolume } = radiator;
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
  const each = eachOf(count);
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
    record: (finished) =>
      radiatorRecord(finished, {
        radiators,
        addedMass: si('mass', addedTo(finished.point[1] ?? Mms)),
        displaced: displacedVolume === undefined ? volumeEach : undefined,
        assumed: [...contents.assumed, ...leaksAssumed(box.QL, QL)],
        air: job.air,
      }),
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
