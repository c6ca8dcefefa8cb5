import { type Fault, refuse } from '@airspring/core/fault';
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
import { type BendAfter, type CentreLine, centreLine, NANOMETRE } from './centre-line.js';
import { halfWidths, type Section } from './cross-section.js';
import { type Flare, flareFaults } from './flare.js';

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
const roundShape = { diameter: positive('length'), ...anyVentShape };
const slotShape = { width: positive('length'), height: positive('length'), ...anyVentShape };

/** The flange of a drawn vent, in plain SI numbers. */
export interface DrawnFlange {
  /** How far it reaches beyond the clear cross-section, m. */
  readonly reach: number;
  readonly thickness: number;
  readonly screws?: {
    readonly count: number;
    readonly diameter: number;
    readonly circle?: number;
    readonly head?: number;
  };
}

/** A vent as it is drawn, in plain SI numbers: what a printed one is compared with. */
export interface VentDrawing {
  readonly section: Section;
  readonly length: number;
  readonly wall: number;
  readonly nozzle: number;
  readonly outerFlare?: Flare;
  readonly innerFlare?: Flare;
  readonly flange?: DrawnFlange;
  readonly bends: readonly BendAfter[];
  readonly fineness: number;
}

/** Greatest distance of a flat from its curve, m. With it the volume of a vent is within 0.1 %. */
const usualFineness = 1e-5;
/** The usual nozzle of printers that melt plastic, m (common practice). */
const usualNozzle = 4e-4;
/** Usual wall of a printed vent before it is rounded up to whole lines, m (common practice). */
const usualWall = 3e-3;
/** Least usual thickness of a flange, m (common practice). */
const usualFlange = 4e-3;

/** The least whole number of lines of a nozzle that is as thick as a wall, m. */
const wholeLines = (wall: number, nozzle: number): number => Math.ceil(wall / nozzle - 1e-6) * nozzle;

/** Reads a vent. All faults are reported at once. */
export function ventDrawing(input: VentSolidInput): VentDrawing {
  const faults: Fault[] = [];
  const slot = typeof input === 'object' && input !== null && ('width' in input || 'height' in input);
  const read = slot ? readFieldsInto(faults, '', input, slotShape) : readFieldsInto(faults, '', input, roundShape);
  refuse(faults);
  const fields = read!;
  const { nozzle = usualNozzle, fineness = usualFineness } = fields;
  const wall = fields.wall ?? wholeLines(usualWall, nozzle);
  const section: Section =
    'diameter' in fields
      ? { form: 'round', diameter: fields.diameter }
      : { form: 'rectangle', width: fields.width, height: fields.height };
  const { flange } = fields;
  const drawing: VentDrawing = {
    section,
    length: fields.length,
    wall,
    nozzle,
    ...(fields.outerFlare !== undefined && { outerFlare: fields.outerFlare }),
    ...(fields.innerFlare !== undefined && { innerFlare: fields.innerFlare }),
    ...(flange !== undefined && {
      flange: {
        reach: flange.reach ?? (flange.diameter === undefined ? 0 : flange.diameter / 2 - halfWidths(section)[0]),
        thickness: flange.thickness ?? Math.max(usualFlange, wall),
        ...(flange.screws !== undefined && { screws: flange.screws }),
      },
    }),
    bends: (fields.bends ?? []).map((bend) => ({ ...bend, roll: bend.roll ?? 0 })),
    fineness,
  };
  for (const end of ['outerFlare', 'innerFlare'] as const) {
    const flare = drawing[end];
    if (flare !== undefined) faults.push(...flareFaults(flare, end));
  }
  refuse(faults);
  faults.push(...sizeFaults(drawing, flange?.diameter !== undefined && flange.reach !== undefined));
  refuse(faults);
  return drawing;
}

/** Sizes that contradict each other. */
function sizeFaults(drawing: VentDrawing, bothSizes: boolean): Fault[] {
  const { section, length, wall, nozzle, flange, bends, outerFlare, innerFlare, fineness } = drawing;
  const faults: Fault[] = [];
  const least = (path: string, got: number, than: number, what: string, remedy: string) => {
    if (got >= than - NANOMETRE) return;
    faults.push({ code: 'inconsistent', path, got, expected: `at least ${what}, ${short(than)} m`, remedy });
  };
  least('wall', wall, nozzle, 'one line of the nozzle', 'Thicken the wall, or take a finer nozzle.');
  least('fineness', fineness, FINEST, 'a tenth of a micrometre', 'Coarsen it: no printer is so fine.');
  const [outer, inner] = [outerFlare?.depth ?? 0, innerFlare?.depth ?? 0];
  if (flange !== undefined) {
    const over = (outerFlare?.widening ?? 0) + wall;
    if (bothSizes) {
      faults.push({
        code: 'conflict',
        path: 'flange.reach',
        got: flange.reach,
        expected: 'either diameter or reach',
        remedy: 'Leave one of them out.',
      });
    } else
      least(
        'flange',
        flange.reach,
        over,
        `the widening of the flare and the wall beyond the duct`,
        'Widen the flange, or make the flare smaller.',
      );
    least('length', length, flange.thickness + inner, 'the flange and the inner flare', 'Lengthen the vent.');
  }
  const line = centreLine(length, bends);
  const halfWidth = Math.max(...halfWidths(section));
  bends.forEach(({ leg, centreLineRadius, roll }, i) => {
    const halfInPlane =
      section.form === 'round'
        ? halfWidth
        : (Math.abs(Math.cos(roll)) * section.width) / 2 + (Math.abs(Math.sin(roll)) * section.height) / 2;
    least(
      `bends[${i}].centreLineRadius`,
      centreLineRadius,
      halfInPlane + wall + NANOMETRE * 1e4,
      'half the outer width in the plane of the bend',
      'Bend it less sharply.',
    );
    if (i === 0)
      least(
        'bends[0].leg',
        leg,
        Math.max(outer, wall, flange?.thickness ?? 0),
        'the outer flare and the flange',
        'Lengthen the first leg.',
      );
  });
  const bent = line.arcs.at(-1)?.to ?? 0;
  const taken = bends.length === 0 ? outer + inner : bent + Math.max(inner, innerFlare === undefined ? 0 : wall);
  least(
    'length',
    length,
    taken,
    bends.length === 0 ? 'both flares' : 'the legs, the bends and the inner flare',
    'Lengthen the vent, or make its bends or flares smaller.',
  );
  return faults;
}

/** Least fineness, m. */
const FINEST = 1e-7;

const short = (value: number): number => Number(value.toPrecision(6));

/** The centre line of a drawn vent. */
export const lineOf = ({ length, bends }: VentDrawing): CentreLine => centreLine(length, bends);
