import {
  type AngleInput,
  anySign,
  count,
  type Field,
  type Fields,
  given,
  type LengthInput,
  nested,
  optional,
  positive,
  readFieldsInto,
} from '@airspring/core/quantity';
import type { Flare } from './flare.js';

/** A bend of a printed vent. */
export interface BendAfterInput {
  /** Straight length before it: from the outer face of the vent, or from the bend before. */
  readonly leg: LengthInput;
  readonly angle: AngleInput;
  /** Radius of the bend on the centre line. */
  readonly centreLineRadius: LengthInput;
  /** Direction in which it turns, about the centre line; default along the width of a slot. Give '90 deg' to turn along its height. */
  readonly roll?: AngleInput | undefined;
}

/** Holes for screws through a flange. */
export interface ScrewsInput {
  /** 2 to 24 */
  readonly count: number;
  /** Diameter of the holes. */
  readonly diameter: LengthInput;
  /** Diameter of the circle that their middles lie on; default midway on the free width of the flange. A slot has a screw in each corner. */
  readonly circle?: LengthInput | undefined;
  /** Diameter of the heads of countersunk screws (90°); by default the holes are plain. */
  readonly head?: LengthInput | undefined;
}

/** A flange around the outer end of a vent: it lies on the panel and covers the edge of its hole. */
export interface FlangeInput {
  /** How far it reaches beyond the inner edge of the duct, on each side; or its outer diameter. */
  readonly diameter?: LengthInput | undefined;
  readonly reach?: LengthInput | undefined;
  /** Default: the wall of the vent, and 4 mm at least. */
  readonly thickness?: LengthInput | undefined;
  readonly screws?: ScrewsInput | undefined;
}

interface AnyVentInput {
  /** From the outer face to the inner end along the centre line, flares included: the length of core's vents. */
  readonly length: LengthInput;
  /** Thickness of the wall; default 3 mm, rounded up to whole lines of the nozzle. */
  readonly wall?: LengthInput | undefined;
  /** Diameter of the nozzle of the printer; default 0.4 mm. */
  readonly nozzle?: LengthInput | undefined;
  /** Default: none. */
  readonly outerFlare?: Flare | undefined;
  /** Default: none. */
  readonly innerFlare?: Flare | undefined;
  /** Default: none. */
  readonly flange?: FlangeInput | undefined;
  /** Default: straight. */
  readonly bends?: readonly BendAfterInput[] | undefined;
  /** Greatest distance of a flat of the surface from the curve that it stands for; default 0.01 mm. */
  readonly fineness?: LengthInput | undefined;
}

/** A vent to be printed. */
export type VentSolidInput = AnyVentInput &
  (
    | { /** Inner diameter. */ readonly diameter: LengthInput }
    | { /** Inner width. */ readonly width: LengthInput /** Inner height. */; readonly height: LengthInput }
  );

const screwsShape = {
  count: count(24),
  diameter: positive('length'),
  circle: optional(positive('length')),
  head: optional(positive('length')),
};
const flangeShape = {
  diameter: optional(positive('length')),
  reach: optional(positive('length')),
  thickness: optional(positive('length')),
  screws: optional(nested(screwsShape)),
};
const bendShape = {
  leg: positive('length'),
  angle: positive('angle'),
  centreLineRadius: positive('length'),
  roll: optional(anySign('angle')),
};

/** A list of at most twenty records. */
const bendsField: Field<readonly Fields<typeof bendShape>[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value) || value.length > MOST_BENDS) {
      const expected = `a list of at most ${MOST_BENDS} bends`;
      faults.push({
        code: 'out-of-range',
        path,
        got: value,
        expected,
        remedy: 'Give a list; leave it out for a straight vent.',
      });
      return undefined;
    }
    const read = value.map((bend, i) => readFieldsInto(faults, `${path}[${i}]`, bend, bendShape));
    return read.some((bend) => bend === undefined) ? undefined : (read as Fields<typeof bendShape>[]);
  },
};

const MOST_BENDS = 20;

export const anyVentShape = {
  length: positive('length'),
  wall: optional(positive('length')),
  nozzle: optional(positive('length')),
  outerFlare: optional(given<Flare>()),
  innerFlare: optional(given<Flare>()),
  flange: optional(nested(flangeShape)),
  bends: optional(bendsField),
  fineness: optional(positive('length')),
};
export const roundVentShape = { diameter: positive('length'), ...anyVentShape };
export const slotVentShape = { width: positive('length'), height: positive('length'), ...anyVentShape };
