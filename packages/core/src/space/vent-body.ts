import type { Fault } from '../fault/index.js';
import {
  count,
  type Field,
  type Fields,
  type LengthInput,
  notNegative,
  oneOf,
  optional,
  positive,
  readFieldsInto,
  type Shape,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type SlotAlong, slotAlongs } from '../vent/slot-boards.js';
import type { Face } from './cuboid.js';
import { facesField } from './round-body.js';

interface AnyVentInput {
  /** Greatest number of bends; default 1. */
  readonly bends?: 'straight' | 'one-bend';
  /** Number of equal vents, which are placed in a row; default 1. */
  readonly count?: number;
  /** The faces on which it may sit; default the front. */
  readonly faces?: readonly Face[];
  /** Thickness of its own boards or of the tube; default 3 mm. */
  readonly wall?: LengthInput;
}

/** A round vent, or several equal ones in a row, without the length. */
export interface RoundVentBodyInput extends AnyVentInput {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  /** Diameter on the outer surface; default the outer diameter of the tube. */
  readonly flangeDiameter?: LengthInput;
  /** Free air in front of the inner end; default one inner diameter (common practice). */
  readonly clearance?: LengthInput;
  /** Radius of the centre line of a bend; default the outer diameter, as in a short-radius elbow. */
  readonly bendRadius?: LengthInput;
}

/** A slot, or several equal ones in a row along their long sides, without the length. */
export interface SlotVentBodyInput extends AnyVentInput {
  /** Inner size along the face. */
  readonly width: LengthInput;
  /** Inner size along the face. The shorter side lies in the plane of the fold. */
  readonly height: LengthInput;
  /**
   * Panels of the box that replace its own boards: none; one, on a long side; two, in a corner; or three, where it is as
   * wide as the box is inside. Default none. The fold of a slot along walls goes on along the panel opposite to its face.
   */
  readonly along?: SlotAlong;
  /** Free air in front of the inner end; default the shorter side (common practice). */
  readonly clearance?: LengthInput;
}

/** A vent without its length: a round one, or a slot with `width` and `height`. */
export type VentBodyInput = RoundVentBodyInput | SlotVentBodyInput;

const anyShape = {
  wall: optional(notNegative('length')),
  clearance: optional(notNegative('length')),
  bends: optional(oneOf('straight', 'one-bend')),
  count: optional(count(6)),
  faces: optional(facesField),
};
const roundShape = {
  ...anyShape,
  diameter: positive('length'),
  flangeDiameter: optional(notNegative('length')),
  bendRadius: optional(positive('length')),
};
const slotShape = {
  ...anyShape,
  width: positive('length'),
  height: positive('length'),
  along: optional(oneOf(...slotAlongs)),
};
export type ReadVent = Fields<typeof roundShape> | Fields<typeof slotShape>;

const isSlot = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && (Object.hasOwn(value, 'width') || Object.hasOwn(value, 'height'));

/** Reads a vent of either form, with fields of the caller's own. */
export const ventField = <S extends Shape>(more: S): Field<ReadVent & Fields<S>> => ({
  optional: false,
  read: (faults, value, path) =>
    readFieldsInto(faults, path, value, { ...(isSlot(value) ? slotShape : roundShape), ...more }) as
      | (ReadVent & Fields<S>)
      | undefined,
});

/** Plain SI numbers of a round vent. */
export interface VentBody {
  readonly outerDiameter: number;
  readonly flangeDiameter: number;
  readonly clearance: number;
  readonly bendRadius: number;
}

/** Plain SI numbers of a slot. */
export interface SlotBody {
  /** Inner size. */
  readonly longSide: number;
  /** Inner size in the plane of the fold. */
  readonly shortSide: number;
  /** Thickness of its own boards. */
  readonly wall: number;
  readonly clearance: number;
}

/** Fills in the defaults. */
export function ventBodyOf(vent: ReadVent): VentBody | SlotBody {
  const wall = vent.wall ?? 0.003;
  if ('width' in vent) {
    const shortSide = Math.min(vent.width, vent.height);
    const longSide = Math.max(vent.width, vent.height);
    return { longSide, shortSide, wall, clearance: vent.clearance ?? shortSide };
  }
  const outerDiameter = vent.diameter + 2 * wall;
  return {
    outerDiameter,
    flangeDiameter: vent.flangeDiameter ?? outerDiameter,
    clearance: vent.clearance ?? vent.diameter,
    bendRadius: vent.bendRadius ?? outerDiameter,
  };
}

/** Faults of a vent whose sizes contradict each other. */
export function judgeVent(vent: ReadVent, path: string): Fault[] {
  const faults: Fault[] = [];
  const least = (at: string, got: number, than: number, expected: string) => {
    if (got >= than - NANOMETRE) return;
    const remedy = 'Check the two sizes.';
    faults.push({ code: 'inconsistent', path: `${path}.${at}`, got, expected: `${expected}, ${than} m`, remedy });
  };
  const body = ventBodyOf(vent);
  if ('outerDiameter' in body) {
    least('flangeDiameter', body.flangeDiameter, body.outerDiameter, 'at least the outer diameter of the tube');
    least('bendRadius', body.bendRadius, body.outerDiameter / 2, 'at least the outer radius of the tube');
  } else if ('along' in vent && (vent.along === 'two' || vent.along === 'three') && (vent.count ?? 1) > 1) {
    const remedy = 'Place several slots along one panel.';
    const expected = vent.along === 'two' ? '1 in a corner' : '1 from panel to panel';
    faults.push({ code: 'inconsistent', path: `${path}.count`, got: vent.count, expected, remedy });
  }
  return faults;
}
