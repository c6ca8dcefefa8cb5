import { type Fault, type Impossible, impossible, refuse } from '@airspring/core/fault';
import {
  type Fields,
  format,
  given,
  type LengthInput,
  notNegative,
  optional,
  positive,
  readFields,
} from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import type { Outline, PlanePoint } from '../outline/index.js';
import { centreLine, NANOMETRE } from './centre-line.js';
import { around, sidesOf } from './cross-section.js';
import { type Flare, flareFaults } from './flare.js';
import { holeBySaw, sawsField, usualCover, usualPlay } from './hole-saw.js';
import { sweptMesh } from './swept.js';
import { anyVentShape, type VentDrawing, ventDrawing } from './vent-drawing.js';
import { ductLine, heightAt, type VentSolid } from './vent-solid.js';
import { wallAround } from './wall-around.js';

/** A vent in two parts: a flange that stays in the panel, and a tube that is swapped when the tuning changes. */
export interface TwoPartVentInput {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  /** From the outer face to the inner end, flares included: the length of core's vents. Default: as long as its seat, a collar around a pipe. */
  readonly length?: LengthInput | undefined;
  readonly panelThickness: LengthInput;
  /** Default: 3 mm, rounded up to whole lines of the nozzle. */
  readonly wall?: LengthInput | undefined;
  /** Default: 0.4 mm. */
  readonly nozzle?: LengthInput | undefined;
  readonly outerFlare?: Flare | undefined;
  /** A tube with an inner flare still goes through the flange, which is wider for it. */
  readonly innerFlare?: Flare | undefined;
  /**
   * The longest flare that any tube for this flange may have at its inner end, so that all tubes have one seat; default that of
   * this tube. Its widening counts.
   */
  readonly widestInnerFlare?: Flare | undefined;
  /** Gap between tube and flange, on the radius; default 0.25 mm (common practice). */
  readonly clearance?: LengthInput | undefined;
  /** Thickness of the round cord that seals the gap; default 3 mm. */
  readonly cord?: LengthInput | undefined;
  /** Diameters of the saws at hand; by default the hole is as narrow as it may be. */
  readonly saws?: readonly LengthInput[] | undefined;
  /**
   * Diameter of a hole that is there, instead of saws. Where it is too narrow for the sleeve of the flange, the flange lies on the
   * panel, and the tube alone goes through the hole.
   */
  readonly hole?: LengthInput | undefined;
  /** Least outer diameter of the flange; default what it needs. */
  readonly flangeDiameter?: LengthInput | undefined;
  /** Least play in the hole of what goes through it, on the diameter; default 0.5 mm. */
  readonly play?: LengthInput | undefined;
  /** How far the flange covers the panel beyond the edge of the hole, at least; default 5 mm. */
  readonly cover?: LengthInput | undefined;
  /** Default: 0.01 mm. */
  readonly fineness?: LengthInput | undefined;
}

const { length, wall, nozzle, outerFlare, innerFlare, fineness } = anyVentShape;
const shape = {
  diameter: positive('length'),
  panelThickness: positive('length'),
  clearance: optional(notNegative('length')),
  cord: optional(positive('length')),
  saws: optional(sawsField),
  hole: optional(positive('length')),
  flangeDiameter: optional(positive('length')),
  play: optional(notNegative('length')),
  cover: optional(notNegative('length')),
  widestInnerFlare: optional(given<Flare>()),
  length: optional(length),
  wall,
  nozzle,
  outerFlare,
  innerFlare,
  fineness,
};

/** A two-part vent as solids, with the sizes that its pieces share. */
export interface TwoPartVent {
  readonly ok: true;
  /** Glued to the panel once. It stands on its outer face. */
  readonly flange: Mesh;
  /** Whether it has a sleeve in the hole, or lies on the panel. */
  readonly seated: 'in the hole' | 'on the panel';
  /** It stands on its outer face, in the place that it has in the flange. */
  readonly tube: VentSolid;
  /** The wall of the tube, cut open along its centre line: position along it, and distance from its inner surface, m. */
  readonly profile: Outline;
  /** From the outer face to where the seat in the flange ends, m. */
  readonly end: number;
  /** Diameter of the hole in the panel, m. */
  readonly hole: number;
  /** Outer diameter of the flange, m. */
  readonly flangeDiameter: number;
  /** How far the flange stands out from the panel, m. */
  readonly proud: number;
  /** Diameter of the tube where it slides, m. */
  readonly seat: number;
  /** Gap between tube and flange on the radius, m. */
  readonly clearance: number;
  /** The cord in its groove: its thickness, and how much of it is pressed together. */
  readonly cord: {
    readonly thickness: number;
    readonly squeeze: number;
    readonly length: number;
    /** Position of the middle of the groove, m. */
    readonly at: number;
  };
}

/** Usual gap of a part that slides, on the radius, m; usual cord, m (common practice). */
const [usualClearance, usualCord] = [2.5e-4, 3e-3];
/** Part of a cord's thickness that is pressed together, and width of its groove over its thickness (common practice). */
const [SQUEEZE, GROOVE] = [0.2, 1.35];
/** Thickness of the rim of the tube, and how far it rests on the flange, m (common practice). */
const [RIM, REST] = [4e-3, 4e-3];
/** Bevel that leads the cord into the flange, m. */
const BEVEL = 1e-3;
/** Where the flange lies on the panel, the tube slides so far on each side of its groove, m. */
const LAND = 2e-3;
/** Sizes of the seat do not depend on the length. */
const ANY_LENGTH = '1 m';
/** Fewest lines of a nozzle beneath a groove (common practice). */
const LEAST_LINES = 2;

/**
 * A vent in two parts. The flange is glued to the panel once and covers the edge of its hole. The tube slides in from outside
 * until its rim rests in the flange, flush with it; a cord in a groove seals the gap. Tubes of other lengths fit the same flange.
 * A sleeve of the flange stands in the hole, unless the hole is there already and is too narrow for it.
 *
 * @validity straight round vents
 * @returns two solids, or why there are none: `no-saw-wide-enough`, `hole-too-narrow`
 * @throws InputError as `ventSolid`, `inconsistent` where the groove leaves too little wall, and `conflict` for saws beside a hole
 * @source own geometry; clearance, squeeze and groove are common practice
 * @example twoPartVent({ diameter: '70 mm', length: '180 mm', panelThickness: '18 mm', outerFlare: roundFlare({ radius: '15 mm' }) })
 */
export function twoPartVent(input: TwoPartVentInput): TwoPartVent | Impossible {
  const fields = readFields('', input, shape);
  const asked = ventDrawing({
    diameter: input.diameter,
    length: input.length ?? ANY_LENGTH,
    wall: input.wall,
    nozzle: input.nozzle,
    outerFlare: input.outerFlare,
    innerFlare: input.innerFlare,
    fineness: input.fineness,
  });
  const { saws, play = usualPlay, cover = usualCover, flangeDiameter = 0 } = fields;
  if (saws !== undefined && fields.hole !== undefined) {
    const remedy = 'Leave one of them out.';
    refuse([{ code: 'conflict', path: 'hole', got: fields.hole, expected: 'either a hole or saws', remedy }]);
  }
  if (fields.widestInnerFlare !== undefined) refuse(flareFaults(fields.widestInnerFlare, 'widestInnerFlare'));
  const sleeved = sizesOf(asked, fields);
  const through = 2 * sleeved.sleeve;
  const inHole = fields.hole === undefined || fields.hole >= through + play - NANOMETRE;
  const sizes = inHole ? sleeved : onPanel(sleeved);
  const drawing = input.length === undefined ? { ...asked, length: sizes.end } : asked;
  refuse(grooveFaults(drawing, sizes));
  // What stays within the flange needs no hole.
  const behind = outerLine(drawing).flatMap(([along, offset]) => (along > sizes.end + NANOMETRE ? [offset] : []));
  const widest =
    behind.length === 0 ? 0 : 2 * (radiusOf(drawing) + Math.max(...behind, heightAt(outerLine(drawing), sizes.end)));
  if (!inHole && widest + play > fields.hole! + NANOMETRE) {
    const [tube, room] = [widest, fields.hole! - play].map((size) => format('length', size, 'mm', 4));
    return impossible(
      'hole-too-narrow',
      `The tube is ${tube} wide, but only ${room} go through the hole with some play. Take a wider hole, a thinner wall, or no flare at the inner end.`,
    );
  }
  const found =
    saws === undefined
      ? undefined
      : holeBySaw({ through: metre(through), saws: saws.map(metre), play: metre(play), cover: metre(cover) });
  if (found?.ok === false) return found;
  const hole = fields.hole ?? found?.diameter ?? through + play;
  const flangeRadius = Math.max(hole / 2 + cover, sizes.rim + sizes.clearance + drawing.wall, flangeDiameter / 2);
  const radius = radiusOf(drawing);
  const profile = tubeProfile(drawing, sizes);
  const flange = flangeProfile(sizes, flangeRadius);
  return {
    ok: true,
    flange: sweptMesh({
      profile: flange,
      around: around({ form: 'round', diameter: 0 }, sidesOf(flangeRadius, drawing.fineness)),
      line: centreLine(1, []),
      step: 1,
    }),
    seated: inHole ? 'in the hole' : 'on the panel',
    tube: {
      name: 'tube',
      mesh: sweptMesh({
        profile: profile.map(([along, offset]) => [along, radius + offset]),
        around: around({ form: 'round', diameter: 0 }, sidesOf(flangeRadius, drawing.fineness)),
        line: centreLine(1, []),
        step: 1,
      }),
      drawing,
    },
    profile,
    end: sizes.end,
    hole,
    flangeDiameter: 2 * flangeRadius,
    proud: sizes.proud,
    seat: 2 * sizes.seat,
    clearance: sizes.clearance,
    cord: {
      thickness: sizes.cord,
      squeeze: SQUEEZE,
      at: sizes.grooveAt,
      length: 2 * Math.PI * (sizes.seat - sizes.groove + sizes.cord / 2),
    },
  };
}

/** Radii and positions along the centre line that tube and flange share, m. */
interface Sizes {
  readonly clearance: number;
  readonly cord: number;
  /** Depth of the groove. */
  readonly groove: number;
  /** Position of the middle of the groove. */
  readonly grooveAt: number;
  readonly rim: number;
  readonly seat: number;
  readonly sleeve: number;
  readonly proud: number;
  /** End of the seat and of the flange's sleeve. */
  readonly end: number;
}

const outerLine = (drawing: VentDrawing) => wallAround(ductLine(drawing), drawing.wall, drawing.fineness);
const radiusOf = ({ section }: VentDrawing) => (section.form === 'round' ? section.diameter / 2 : 0);

function sizesOf(drawing: VentDrawing, fields: Fields<typeof shape>): Sizes {
  const { clearance = usualClearance, cord = usualCord, panelThickness } = fields;
  const radius = radiusOf(drawing);
  const line = outerLine(drawing);
  const widest = Math.max(fields.widestInnerFlare?.widening ?? 0, drawing.innerFlare?.widening ?? 0);
  const behindRim = Math.max(
    heightAt(line, RIM),
    ...line.filter(([along]) => along >= RIM).map(([, offset]) => offset),
  );
  const seat = radius + Math.max(behindRim, widest + drawing.wall);
  const proud = RIM + drawing.wall;
  const end = Math.max(proud + panelThickness, RIM + BEVEL + GROOVE * cord + 3 * drawing.wall);
  return {
    clearance,
    cord,
    groove: (1 - SQUEEZE) * cord - clearance,
    grooveAt: (RIM + BEVEL + end) / 2,
    rim: Math.max(radius + line[0]![1], seat + clearance + BEVEL + REST),
    seat,
    sleeve: seat + clearance + drawing.wall,
    proud,
    end,
  };
}

/** The same with a flange that lies on the panel: the seat is in what stands out. */
function onPanel(sizes: Sizes): Sizes {
  const end = RIM + BEVEL + GROOVE * sizes.cord + 2 * LAND;
  return {
    ...sizes,
    proud: end,
    end,
    grooveAt: end - LAND - (GROOVE * sizes.cord) / 2,
    sleeve: sizes.seat + sizes.clearance,
  };
}

/** Faults of a tube that is shorter than its seat, or whose groove leaves too little wall. */
function grooveFaults(drawing: VentDrawing, { seat, groove, grooveAt, cord, clearance, end }: Sizes): Fault[] {
  const faults: Fault[] = [];
  const remedy = 'Take a thinner cord, or a thicker wall.';
  if (groove <= 0) {
    faults.push({
      code: 'inconsistent',
      path: 'clearance',
      got: clearance,
      expected: `less than ${(1 - SQUEEZE) * cord} m, so that the cord is pressed`,
      remedy: 'Take a thicker cord, or less clearance.',
    });
  }
  const duct = ductLine(drawing);
  const half = (GROOVE * cord) / 2;
  const beneath = Math.min(
    ...[-half, half].map((by) => seat - groove - radiusOf(drawing) - heightAt(duct, Math.max(0, grooveAt + by))),
  );
  const least = LEAST_LINES * drawing.nozzle;
  if (beneath < least - NANOMETRE) {
    faults.push({
      code: 'inconsistent',
      path: 'cord',
      got: cord,
      expected: `a cord whose groove leaves ${least} m of the wall; it leaves ${beneath} m`,
      remedy,
    });
  }
  if (drawing.length < end + (drawing.innerFlare?.depth ?? 0) - NANOMETRE) {
    const expected = `at least ${end + (drawing.innerFlare?.depth ?? 0)} m, the seat in the flange and the inner flare`;
    faults.push({ code: 'inconsistent', path: 'length', got: drawing.length, expected, remedy: 'Lengthen the tube.' });
  }
  return faults;
}

/** [along, distance from the middle], as seen from the outer face. */
function flangeProfile({ clearance, rim, seat, sleeve, proud, end }: Sizes, radius: number): Outline {
  const slide = seat + clearance;
  return [
    [0, rim + clearance],
    [0, radius],
    [proud, radius],
    ...(sleeve > slide
      ? ([
          [proud, sleeve],
          [end, sleeve],
        ] as const)
      : []),
    [end, slide],
    [RIM + BEVEL, slide],
    [RIM, slide + BEVEL],
    [RIM, rim + clearance],
  ];
}

/** [along, distance from the inner surface], as seen from the outer face. */
function tubeProfile(drawing: VentDrawing, { rim, seat, groove, grooveAt, cord, end }: Sizes): Outline {
  const radius = radiusOf(drawing);
  const half = (GROOVE * cord) / 2;
  const line = outerLine(drawing);
  const behind = line.filter(([along]) => along > end + NANOMETRE);
  const atEnd = heightAt(line, Math.min(end, drawing.length));
  const outside: PlanePoint[] = [
    [0, rim],
    [RIM, rim],
    [RIM, seat],
    [grooveAt - half, seat],
    [grooveAt - half, seat - groove],
    [grooveAt + half, seat - groove],
    [grooveAt + half, seat],
    [end, seat],
    // A seat as thick as the tube ends where the tube goes on.
    ...(radius + atEnd < seat - NANOMETRE ? [[end, radius + atEnd] as const] : []),
    ...behind.map(([along, offset]) => [along, radius + offset] as const),
  ];
  return [...ductLine(drawing), ...outside.reverse().map(([along, from]) => [along, from - radius] as const)];
}

const metre = (value: number) => value as unknown as LengthInput;
