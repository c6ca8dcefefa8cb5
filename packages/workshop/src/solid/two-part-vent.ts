import { type Fault, type Impossible, refuse } from '@airspring/core/fault';
import {
  type Fields,
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
  /** From the outer face to the inner end, flares included: the length of core's vents. */
  readonly length: LengthInput;
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
  /** Least play of the flange in the hole, on the diameter; default 0.5 mm. */
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
  play: optional(notNegative('length')),
  cover: optional(notNegative('length')),
  widestInnerFlare: optional(given<Flare>()),
  length,
  wall,
  nozzle,
  outerFlare,
  innerFlare,
  fineness,
};

/** A two-part vent as solids, with the sizes that its pieces share. */
export interface TwoPartVent {
  readonly ok: true;
  /** Glued into the panel once. It stands on its outer face. */
  readonly flange: Mesh;
  /** It stands on its outer face, in the place that it has in the flange. */
  readonly tube: VentSolid;
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
  readonly cord: { readonly thickness: number; readonly squeeze: number; readonly length: number };
}

/** Usual gap of a part that slides, on the radius, m; usual cord, m (common practice). */
const [usualClearance, usualCord] = [2.5e-4, 3e-3];
/** Part of a cord's thickness that is pressed together, and width of its groove over its thickness (common practice). */
const [SQUEEZE, GROOVE] = [0.2, 1.35];
/** Thickness of the rim of the tube, and how far it rests on the flange, m (common practice). */
const [RIM, REST] = [4e-3, 4e-3];
/** Bevel that leads the cord into the flange, m. */
const BEVEL = 1e-3;
/** Fewest lines of a nozzle beneath a groove (common practice). */
const LEAST_LINES = 2;

/**
 * A vent in two parts. The flange is glued into the panel once and covers the edge of its hole. The tube slides in from outside
 * until its rim rests in the flange, flush with it; a cord in a groove seals the gap. Tubes of other lengths fit the same flange.
 *
 * @validity straight round vents
 * @returns two solids, or why there are none: `no-saw-wide-enough`
 * @throws InputError as `ventSolid`, and `inconsistent` where the groove leaves too little wall
 * @source own geometry; clearance, squeeze and groove are common practice
 * @example twoPartVent({ diameter: '70 mm', length: '180 mm', panelThickness: '18 mm', outerFlare: roundFlare({ radius: '15 mm' }) })
 */
export function twoPartVent(input: TwoPartVentInput): TwoPartVent | Impossible {
  const fields = readFields('', input, shape);
  const drawing = ventDrawing({
    diameter: input.diameter,
    length: input.length,
    wall: input.wall,
    nozzle: input.nozzle,
    outerFlare: input.outerFlare,
    innerFlare: input.innerFlare,
    fineness: input.fineness,
  });
  if (fields.widestInnerFlare !== undefined) refuse(flareFaults(fields.widestInnerFlare, 'widestInnerFlare'));
  const sizes = sizesOf(drawing, fields);
  refuse(grooveFaults(drawing, sizes));
  const through = 2 * sizes.sleeve;
  const { saws, play = usualPlay, cover = usualCover } = fields;
  const found =
    saws === undefined
      ? undefined
      : holeBySaw({ through: metre(through), saws: saws.map(metre), play: metre(play), cover: metre(cover) });
  if (found?.ok === false) return found;
  const hole = found?.diameter ?? through + play;
  const flangeRadius = Math.max(hole / 2 + cover, sizes.rim + sizes.clearance + drawing.wall);
  const make = (profile: Outline, radius: number) =>
    sweptMesh({
      profile,
      around: around({ form: 'round', diameter: 0 }, sidesOf(radius, drawing.fineness)),
      line: centreLine(1, []),
      step: 1,
    });
  return {
    ok: true,
    flange: make(flangeProfile(sizes, flangeRadius), flangeRadius),
    tube: { name: 'tube', mesh: make(tubeProfile(drawing, sizes), flangeRadius), drawing },
    hole,
    flangeDiameter: 2 * flangeRadius,
    proud: sizes.proud,
    seat: 2 * sizes.seat,
    clearance: sizes.clearance,
    cord: {
      thickness: sizes.cord,
      squeeze: SQUEEZE,
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

/** [along, radius], as seen from the outer face. */
function flangeProfile({ clearance, rim, seat, sleeve, proud, end }: Sizes, radius: number): Outline {
  const slide = seat + clearance;
  return [
    [0, rim + clearance],
    [0, radius],
    [proud, radius],
    [proud, sleeve],
    [end, sleeve],
    [end, slide],
    [RIM + BEVEL, slide],
    [RIM, slide + BEVEL],
    [RIM, rim + clearance],
  ];
}

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
  return [...ductLine(drawing).map(([along, offset]) => [along, radius + offset] as const), ...outside.reverse()];
}

const metre = (value: number) => value as unknown as LengthInput;
