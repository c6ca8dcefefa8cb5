import { type Impossible, refuse } from '@airspring/core/fault';
import {
  given,
  type LengthInput,
  NANOMETRE,
  notNegative,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import type { Outline } from '../outline/index.js';
import { reasonOf, told } from '../words/told.js';
import { centreLine } from './centre-line.js';
import { around, sidesOf } from './cross-section.js';
import type { Flare } from './flare.js';
import { flareFaults } from './flare-faults.js';
import { holeBySaw, sawsField, usualCover, usualPlay } from './hole-saw.js';
import { readVent } from './read-vent.js';
import { sweptMesh } from './swept.js';
import { flangeProfile, tubeProfile } from './two-part-profiles.js';
import { grooveFaults, onPanel, outerLine, radiusOf, SQUEEZE, sizesOf } from './two-part-sizes.js';
import { heightAt, type VentSolid } from './vent-solid.js';
import { anyVentShape } from './vent-solid-input.js';

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

/** Sizes of the seat do not depend on the length. */
const ANY_LENGTH = '1 m';

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
  const asked = readVent({
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
    const words = told`The tube is ${widest} wide, but only ${fields.hole! - play} go through the hole with some play. Take a wider hole, a thinner wall, or no flare at the inner end.`;
    return { ok: false, because: [reasonOf('hole-too-narrow', words, 4)] };
  }
  const found =
    saws === undefined
      ? undefined
      : holeBySaw({ through: metres(through), saws: saws.map(metres), play: metres(play), cover: metres(cover) });
  if (found?.ok === false) return found;
  const hole = fields.hole ?? found?.diameter ?? through + play;
  const flangeRadius = Math.max(hole / 2 + cover, sizes.rim + sizes.clearance + drawing.wall, flangeDiameter / 2);
  const radius = radiusOf(drawing);
  const profile = tubeProfile(drawing, sizes);
  const line = centreLine(1, []);
  const circle = around({ form: 'round', diameter: 0 }, sidesOf(flangeRadius, drawing.fineness));
  const turned = (outline: Outline) => sweptMesh({ profile: outline, around: circle, line, step: 1 });
  return {
    ok: true,
    flange: turned(flangeProfile(sizes, flangeRadius)),
    seated: inHole ? 'in the hole' : 'on the panel',
    tube: {
      name: 'tube',
      mesh: turned(profile.map(([along, offset]) => [along, radius + offset])),
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

const metres = (value: number) => si('length', value);
