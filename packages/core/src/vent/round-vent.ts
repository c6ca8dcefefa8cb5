import { type EndCorrection, finiteFlange, flanged, type Opening } from '../duct/index.js';
import type { Fault } from '../fault/index.js';
import {
  type AngleInput,
  count,
  type Field,
  type Fields,
  type LengthInput,
  nested,
  notNegative,
  optional,
  positive,
} from '../quantity/index.js';

/** One bend of a round tube. */
export interface BendInput {
  /** How far the direction turns. */
  readonly angle: AngleInput;
  /** Radius of the bend on the centre line of the tube. */
  readonly centreLineRadius: LengthInput;
}

/** A round vent of a length still to be found. */
export interface RoundVentSection {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  /** How many such vents, 1 to 1000; default 1. */
  readonly count?: number;
  /** Thickness of the tube wall; default 0. It takes volume, and acts as a flange about the inner end. */
  readonly wall?: LengthInput;
  /** Outer diameter of a flange about the inner end. Thin: its own volume is not counted. */
  readonly innerFlangeDiameter?: LengthInput;
  /** Outer diameter of the wall about the outer end, for an `outerEnd` that asks for it. */
  readonly outerFlangeDiameter?: LengthInput;
  /** End correction at the inner end; default `finiteFlange`, which is `unflanged` without wall and flange. */
  readonly innerEnd?: EndCorrection;
  /** End correction at the outer end; default `flanged`: flush in the panel. */
  readonly outerEnd?: EndCorrection;
  /** One bend; default straight. */
  readonly bend?: BendInput;
}

/** A round vent. */
export interface RoundVentInput extends RoundVentSection {
  /** From the outer surface of the panel to the inner end, along the centre line. */
  readonly length: LengthInput;
}

const endCorrection: Field<EndCorrection> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'function') return value as EndCorrection;
    const expected = 'an end correction: a function of the opening and the wave number';
    faults.push({ code: 'unit', path, got: value, expected, remedy: 'Pass flanged, unflanged, or one of your own.' });
    return undefined;
  },
};

export const sectionShape = {
  diameter: positive('length'),
  count: optional(count(1000)),
  wall: optional(notNegative('length')),
  innerFlangeDiameter: optional(positive('length')),
  outerFlangeDiameter: optional(positive('length')),
  innerEnd: optional(endCorrection),
  outerEnd: optional(endCorrection),
  bend: optional(nested({ angle: positive('angle'), centreLineRadius: positive('length') })),
};

export const ventShape = { ...sectionShape, length: positive('length') };

/** The section of a vent as the formulas want it. Plain SI numbers. */
export interface VentGeometry {
  /** Cross-section of all openings together, m². */
  readonly area: number;
  /** Cross-section of all tubes together with their walls, m². */
  readonly outerArea: number;
  readonly inner: Opening;
  readonly outer: Opening;
  readonly innerEnd: EndCorrection;
  readonly outerEnd: EndCorrection;
  /** Centre-line length of the bend, m; 0 when straight. */
  readonly bendLength: number;
  /** Centre-line radius of the bend over the inner radius; infinite when straight. */
  readonly bendRatio: number;
}

const opening = (radius: number, wall: number, flangeDiameter: number | undefined): Opening => ({
  radius,
  wall,
  ...(flangeDiameter === undefined ? {} : { flangeRadius: flangeDiameter / 2 }),
});

/** Derives the geometry, and pushes a fault for each field that contradicts another. */
export function geometry(faults: Fault[], vent: Fields<typeof sectionShape>): VentGeometry {
  const { diameter, wall = 0, bend, innerFlangeDiameter, outerFlangeDiameter } = vent;
  const tubes = vent.count ?? 1;
  const radius = diameter / 2;
  const outerRadius = radius + wall;
  for (const [name, flange] of Object.entries({ innerFlangeDiameter, outerFlangeDiameter })) {
    if (flange !== undefined && flange < 2 * outerRadius) {
      const expected = `at least the outer diameter of the tube, ${2 * outerRadius} m`;
      faults.push({
        code: 'inconsistent',
        path: `vent.${name}`,
        got: flange,
        expected,
        remedy: 'Widen it or leave it out.',
      });
    }
  }
  if (bend !== undefined && bend.centreLineRadius < outerRadius) {
    const expected = `at least the outer radius of the tube, ${outerRadius} m`;
    const path = 'vent.bend.centreLineRadius';
    faults.push({ code: 'inconsistent', path, got: bend.centreLineRadius, expected, remedy: 'Bend it less sharply.' });
  }
  return {
    area: tubes * Math.PI * radius ** 2,
    outerArea: tubes * Math.PI * outerRadius ** 2,
    inner: opening(radius, wall, innerFlangeDiameter),
    outer: opening(radius, wall, outerFlangeDiameter),
    innerEnd: vent.innerEnd ?? finiteFlange,
    outerEnd: vent.outerEnd ?? flanged,
    bendLength: bend === undefined ? 0 : bend.angle * bend.centreLineRadius,
    bendRatio: bend === undefined ? Number.POSITIVE_INFINITY : bend.centreLineRadius / radius,
  };
}
