import { unflanged } from '@airspring/core/duct';
import { type AperiodicBoxSpec, aperiodicFamily, closedResonance } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { compileLongestVent, faces, fit } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { acrossAperiodic, aperiodicFields, ventSettings } from './aperiodic-fields.js';
import { aperiodicRecord } from './aperiodic-words.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { closedAir } from './closed-air.js';
import { driverLayout, driverRoom } from './drivers.js';
import { metres, outerSizes } from './placing.js';
import type { Point } from './point.js';

const MM = 1e-3;
/** The thinnest layer that a builder can make evenly, m (common practice). */
const THINNEST = 5e-3;
/** What the ring that holds the felt stands out on each side, and its wall, m. */
const RING = { collar: 0.01, wall: 0.003 } as const;
/** The mass of the air may oppose the air by this share of the resistance, at the resonance; the family leaves it out. */
const MASS_SHARE = 1 / 3;

/** A point is the net volume, the flow resistance of the vent, and its diameter. */
function variantOf(job: Job, choice: DriverChoice): Variant {
  const {
    flowResistivity,
    isStated,
    thickest,
    smallest,
    largest,
    airSpeedPeak,
    isQuiet,
    faces: own,
  } = ventSettings(job);
  const air = closedAir(job, choice);
  const t = job.space.panelThickness;
  const areaOf = (diameter: number) => (Math.PI / 4) * diameter ** 2;
  const thicknessOf = ([, resistance = 0, diameter = 0]: Point) => (resistance * areaOf(diameter)) / flowResistivity;
  const resistanceOf = (thickness: number, diameter: number) => (flowResistivity * thickness) / areaOf(diameter);
  const takenBy = (thickness: number, diameter: number) =>
    areaOf(diameter + 2 * RING.wall) * Math.max(0, thickness - t);

  const layout = {
    ...driverLayout(job, choice),
    vent: { count: 1, faces: own.map((face) => faces.indexOf(face)), bend: false, walls: 0 as const },
  };
  const longest = compileLongestVent(layout);
  const reach = new Float64Array(2);
  const body = (diameter: number) => ({
    outerDiameter: diameter + 2 * RING.wall,
    flangeDiameter: diameter + 2 * RING.collar,
    // Air goes in and out around the felt, as at the end of a vent.
    clearance: diameter / 2,
    bendRadius: diameter,
  });

  const spec = (point: Point): AperiodicBoxSpec => ({
    ...air.spec(point),
    ventResistance: si('acousticResistance', point[1]!),
    ventArea: si('area', areaOf(point[2]!)),
  });
  // The compliance ratio is inverse to the volume, so that one closed box tells the resonance of them all.
  const { fc, alpha } = closedResonance(air.spec([1]), job.air);
  const resonanceIn = (netVolume: number) => fc * Math.sqrt((1 + alpha / netVolume) / (1 + alpha));
  /** The reactance of the air in the vent and at both its ends, at the resonance of the closed box, over the resistance. */
  function massShareOf(point: Point): number {
    const [netVolume = 0, resistance = 1, diameter = 0] = point;
    const length = thicknessOf(point) + 2 * unflanged({ radius: metres(diameter / 2) }, 0);
    const mass = (job.air.density * length) / areaOf(diameter);
    return (2 * Math.PI * resonanceIn(netVolume) * mass) / resistance;
  }
  const lengthIn = (thickness: number) => metres(Math.max(t, thickness));
  // As an open end of its width: felt spreads the air, so that it stays quiet longer.
  const section = ([, , diameter = 0]: Point) => ({ diameter: metres(diameter) });
  const opening = airSpeedIn(job, {
    openings: [{ element: 'vent', called: 'the vent', section }],
    called: 'vent',
    path: 'aperiodic.airSpeed',
    airSpeedPeak,
    area: ([, , diameter = 0]) => areaOf(diameter),
    quiet: isQuiet,
  });

  return {
    kind: aperiodic,
    ...air.variant,
    acoustic: [
      {
        name: 'flow resistance',
        from: resistanceOf(THINNEST, largest),
        to: resistanceOf(thickest, smallest),
        ratio: 1.2,
        unit: 1,
      },
    ],
    made: [{ from: THINNEST, to: thickest, unit: MM, of: thicknessOf }],
    geometric: [{ name: 'diameter', from: smallest, to: largest, ratio: 1.1, unit: MM, beyond: 1.6 }],
    ...acousticsOf(aperiodicFamily, job, spec),
    ...opening,
    wishes: [
      ...opening.wishes,
      {
        path: 'aperiodic.largest',
        what: 'diameter of the vent',
        quantity: 'length',
        unit: job.units.length,
        allowed: largest,
        sense: 'at most',
        weight: 'simple',
        needed: ([, , diameter = 0]) => diameter,
      },
    ],
    parts: (point, out) => {
      const thickness = thicknessOf(point);
      const [, , diameter = 0] = point;
      if (thickness < THINNEST - 1e-9 || thickness > thickest + 1e-9) return false;
      if (massShareOf(point) > MASS_SHARE) return false;
      out.extent = lengthIn(thickness);
      out.taken = takenBy(thickness, diameter);
      out.effort = diameter;
      return true;
    },
    room: (width, height, depth, [, , diameter = 0]) => {
      longest(width, height, depth, body(diameter), reach);
      return reach[0] || -1;
    },
    roomKey: JSON.stringify(layout),
    settle: (airBefore, [, thickness = 0, diameter = 0]) => {
      const netVolume = airBefore - takenBy(thickness, diameter);
      return netVolume > 0 ? [netVolume, resistanceOf(thickness, diameter), diameter] : undefined;
    },
    place: (edges, point) => {
      const { outerDiameter, flangeDiameter, clearance } = body(point[2]!);
      return fit({
        outer: outerSizes(edges),
        thickness: metres(t),
        driver: driverRoom(choice),
        cutoutMargin: metres(job.space.cutoutPlay),
        vent: {
          diameter: metres(point[2]!),
          wall: metres((outerDiameter - point[2]!) / 2),
          flangeDiameter: metres(flangeDiameter),
          clearance: metres(clearance),
          bends: 'straight',
          faces: own,
          length: lengthIn(thicknessOf(point)),
        },
      });
    },
    record: (finished) => {
      const { point } = finished;
      return aperiodicRecord(air.record(point), finished, {
        diameter: point[2]!,
        thickness: Math.round(thicknessOf(point) / MM) * MM,
        resistance: point[1]!,
        flowResistivity,
        isStated,
        massShare: massShareOf(point),
      });
    },
  };
}

/** A box with an aperiodic vent: an opening filled with felt or fibre, which damps the driver. */
export const aperiodic: BoxKind<typeof aperiodicFields> = {
  name: 'aperiodic',
  byName: true,
  called: 'a box with an aperiodic vent',
  fields: aperiodicFields,
  across: acrossAperiodic,
  variants: (job, choice) => [variantOf(job, choice)],
};
