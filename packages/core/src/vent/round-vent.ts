import { type EndCorrection, finiteFlange, flanged, type Opening, roundSection } from '../duct/index.js';
import type { Fault } from '../fault/index.js';
import { count, type Fields, type LengthInput, nested, notNegative, optional, positive } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type BendInput, bendGeometry, bendShape, sharpBendFaults } from './bend.js';
import { endCorrection, type VentGeometry } from './vent-geometry.js';

/** A round vent without its length. */
export interface RoundVentSection {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  /** Number of such vents, 1 to 1000; default 1. */
  readonly count?: number | undefined;
  /** Thickness of the tube wall; default 0. It takes up volume, and acts as a flange around the inner end. */
  readonly wall?: LengthInput | undefined;
  /** Outer diameter of a thin flange around the inner end. Its own volume is not counted. */
  readonly innerFlangeDiameter?: LengthInput | undefined;
  /** Outer diameter of the wall around the outer end, for an `outerEnd` that depends on it. */
  readonly outerFlangeDiameter?: LengthInput | undefined;
  /** End correction at the inner end; default `finiteFlange`, which equals `unflanged` without wall and flange. */
  readonly innerEnd?: EndCorrection | undefined;
  /** End correction at the outer end; default `flanged`, for an end flush with the panel. */
  readonly outerEnd?: EndCorrection | undefined;
  /** The bends of the vent; by default it is straight. */
  readonly bend?: BendInput | undefined;
}

/** A round vent. */
export interface RoundVentInput extends RoundVentSection {
  /** From the outer surface of the panel to the inner end, along the centre line. */
  readonly length: LengthInput;
}

export const roundShape = {
  diameter: positive('length'),
  count: optional(count(1000)),
  wall: optional(notNegative('length')),
  innerFlangeDiameter: optional(positive('length')),
  outerFlangeDiameter: optional(positive('length')),
  innerEnd: optional(endCorrection),
  outerEnd: optional(endCorrection),
  bend: optional(nested(bendShape)),
};

const opening = (radius: number, wall: number, flangeDiameter: number | undefined): Opening => ({
  radius,
  wall,
  ...(flangeDiameter === undefined ? {} : { flangeRadius: flangeDiameter / 2 }),
});

/** Derives the geometry, and adds a fault for each field that contradicts another. */
export function roundGeometry(faults: Fault[], vent: Fields<typeof roundShape>): VentGeometry {
  const { diameter, wall = 0, bend, innerFlangeDiameter, outerFlangeDiameter } = vent;
  const tubes = vent.count ?? 1;
  const radius = diameter / 2;
  const outerRadius = radius + wall;
  for (const [name, flange] of Object.entries({ innerFlangeDiameter, outerFlangeDiameter })) {
    if (flange !== undefined && flange < 2 * outerRadius - NANOMETRE) {
      const expected = `at least the outer diameter of the tube, ${2 * outerRadius} m`;
      faults.push({
        code: 'inconsistent',
        path: `vent.${name}`,
        got: flange,
        expected,
        remedy: 'Widen the flange, or leave it out.',
      });
    }
  }
  faults.push(...sharpBendFaults(bend, outerRadius));
  return {
    section: roundSection({ diameter }),
    count: tubes,
    area: tubes * Math.PI * radius ** 2,
    outerArea: tubes * Math.PI * outerRadius ** 2,
    inner: opening(radius, wall, innerFlangeDiameter),
    outer: opening(radius, wall, outerFlangeDiameter),
    innerEnd: vent.innerEnd ?? finiteFlange,
    outerEnd: vent.outerEnd ?? flanged,
    ...bendGeometry(bend, radius),
  };
}
