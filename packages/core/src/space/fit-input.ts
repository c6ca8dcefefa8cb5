import type { Fault } from '../fault/index.js';
import {
  count,
  type Field,
  type Length,
  type LengthInput,
  nested,
  notNegative,
  oneOf,
  optional,
  positive,
} from '../quantity/index.js';
import { ROUNDING } from '../quantity/rounding.js';
import { type Face, faces, type SizeInput, sizeShape, type ThicknessInput, thicknessField } from './cuboid.js';

/** A driver, or several alike in a block, as the box feels it. */
export interface DriverBodyInput {
  /** Of the frame on the outer surface. */
  readonly outerDiameter: LengthInput;
  /** Of the hole, and of all that stands behind the panel. */
  readonly cutoutDiameter: LengthInput;
  /** From the outer surface of the panel to the rear end. */
  readonly depth: LengthInput;
  /** Default 1. */
  readonly count?: number;
  /** Where it may sit; default the front. */
  readonly faces?: readonly Face[];
}

/** A round vent, or several alike in a row, without its length. */
export interface VentBodyInput {
  /** Inside. */
  readonly diameter: LengthInput;
  /** Of the tube; default 3 mm. */
  readonly wall?: LengthInput;
  /** On the outer surface; default the outer diameter of the tube. */
  readonly flangeDiameter?: LengthInput;
  /** Free air before the inner end; default one inner diameter (common practice). */
  readonly clearance?: LengthInput;
  /** Of the centre line of a bend; default the outer diameter, a short-radius elbow. */
  readonly bendRadius?: LengthInput;
  /** Most bends; default 1. */
  readonly bends?: 'straight' | 'one-bend';
  /** Default 1. */
  readonly count?: number;
  /** Where it may sit; default the front. */
  readonly faces?: readonly Face[];
}

/** The space, and what must stand in it. */
export interface SpaceInput {
  readonly outer: SizeInput;
  readonly thickness: ThicknessInput;
  readonly driver: DriverBodyInput;
  /** Between flanges and frames on one face; default 5 mm. */
  readonly gap?: LengthInput;
  /** Between a flange or frame and the edges of its panel; default 5 mm. */
  readonly edgeMargin?: LengthInput;
}

const facesField: Field<readonly Face[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length > 0) {
      const face = oneOf(...faces);
      const read = value.map((name, index) => face.read(faults, name, `${path}[${index}]`));
      return read.every((name) => name !== undefined) ? [...new Set(read as Face[])] : undefined;
    }
    const remedy = 'Name at least one face, or leave the field out.';
    faults.push({ code: 'empty', path, got: value, expected: `a list of ${faces.join(', ')}`, remedy });
    return undefined;
  },
};

export const spaceShape = {
  outer: nested(sizeShape),
  thickness: thicknessField,
  driver: nested({
    outerDiameter: positive('length'),
    cutoutDiameter: positive('length'),
    depth: positive('length'),
    count: optional(count(4)),
    faces: optional(facesField),
  }),
  gap: optional(notNegative('length')),
  edgeMargin: optional(notNegative('length')),
};
export const ventShape = {
  diameter: positive('length'),
  wall: optional(notNegative('length')),
  flangeDiameter: optional(notNegative('length')),
  clearance: optional(notNegative('length')),
  bendRadius: optional(positive('length')),
  bends: optional(oneOf('straight', 'one-bend')),
  count: optional(count(3)),
  faces: optional(facesField),
};

/** Plain SI numbers of the driver, the panels and the rules; faces by their place in the list of faces. */
export interface Layout {
  /** By face: left, right, bottom, top, front, back. */
  readonly thickness: readonly number[];
  readonly gap: number;
  readonly edgeMargin: number;
  readonly driver: {
    readonly outerDiameter: number;
    readonly cutoutDiameter: number;
    readonly depth: number;
    readonly count: number;
    readonly faces: readonly number[];
  };
  readonly vent: { readonly count: number; readonly faces: readonly number[]; readonly bend: boolean };
}

/** Plain SI numbers of a vent. */
export interface VentBody {
  outerDiameter: number;
  flangeDiameter: number;
  clearance: number;
  bendRadius: number;
}

interface ReadDriver {
  readonly outerDiameter: Length;
  readonly cutoutDiameter: Length;
  readonly depth: Length;
  readonly count?: number;
  readonly faces?: readonly Face[];
}
interface ReadVent {
  readonly diameter: Length;
  readonly wall?: Length;
  readonly flangeDiameter?: Length;
  readonly clearance?: Length;
  readonly bendRadius?: Length;
  readonly bends?: 'straight' | 'one-bend';
  readonly count?: number;
  readonly faces?: readonly Face[];
}
interface ReadSpace {
  readonly thickness: readonly Length[];
  readonly driver: ReadDriver;
  readonly gap?: Length;
  readonly edgeMargin?: Length;
}

const faceNumbers = (names: readonly Face[] = ['front']) => names.map((name) => faces.indexOf(name));

/** Fills in the defaults. */
export const layoutOf = ({ thickness, driver, gap, edgeMargin }: ReadSpace, vent?: ReadVent): Layout => ({
  thickness,
  gap: gap ?? 0.005,
  edgeMargin: edgeMargin ?? 0.005,
  driver: { ...driver, count: driver.count ?? 1, faces: faceNumbers(driver.faces) },
  vent: { count: vent?.count ?? 1, faces: faceNumbers(vent?.faces), bend: vent?.bends !== 'straight' },
});

/** Fills in the defaults. */
export function ventBodyOf(vent: ReadVent): VentBody {
  const outerDiameter = vent.diameter + 2 * (vent.wall ?? 0.003);
  return {
    outerDiameter,
    flangeDiameter: vent.flangeDiameter ?? outerDiameter,
    clearance: vent.clearance ?? vent.diameter,
    bendRadius: vent.bendRadius ?? outerDiameter,
  };
}

/** Sizes that contradict each other. */
export function judgeSpace({ driver }: ReadSpace, path: string, vent?: ReadVent): Fault[] {
  const faults: Fault[] = [];
  const least = (at: string, got: number, than: number, expected: string) => {
    if (got < than - ROUNDING) {
      const remedy = 'Check the two sizes.';
      faults.push({ code: 'inconsistent', path: `${path}.${at}`, got, expected: `${expected}, ${than} m`, remedy });
    }
  };
  least('driver.outerDiameter', driver.outerDiameter, driver.cutoutDiameter, 'at least the cutout');
  if (vent) {
    const body = ventBodyOf(vent);
    least('vent.flangeDiameter', body.flangeDiameter, body.outerDiameter, 'at least the outer diameter of the tube');
    least('vent.bendRadius', body.bendRadius, body.outerDiameter / 2, 'at least the outer radius of the tube');
  }
  return faults;
}
