import { type Fault, type Impossible, refuse } from '@airspring/core/fault';
import {
  type Fields,
  type LengthInput,
  NANOMETRE,
  notNegative,
  optional,
  positive,
  readFieldsInto,
} from '@airspring/core/quantity';
import type { Part } from '../mesh/index.js';
import { faultOf, told } from '../words/told.js';
import { readVent } from './read-vent.js';
import type { TwoPartVent } from './two-part-vent.js';
import { balanced } from './vent-cuts.js';
import type { VentDrawing } from './vent-drawing.js';
import { type Bed, type Joint, pieceOf, type Whole } from './vent-piece.js';
import { wallProfile } from './vent-solid.js';
import type { VentSolidInput } from './vent-solid-input.js';

/** What a printer can build, clear of its clips and margins. */
export interface PrinterInput {
  readonly width: LengthInput;
  readonly depth: LengthInput;
  readonly height: LengthInput;
}

export interface VentSegmentsInput {
  readonly vent: VentSolidInput;
  readonly printer: PrinterInput;
  /** How far the spigot of one piece reaches into the next; default 12 mm (common practice). */
  readonly overlap?: LengthInput | undefined;
  /** Gap between spigot and socket, on the radius; default 0.15 mm, for glue (common practice). */
  readonly clearance?: LengthInput | undefined;
  /** The first piece ends at this position or before it, so that it goes through a hole that a bend or a flare does not pass. */
  readonly firstWithin?: LengthInput | undefined;
}

/**
 * A vent in pieces, from the outer end to the inner one. Each stands as it is printed: on its outer end, spigot up. A bent piece that
 * is too high so lies on its side, its bend flat on the bed.
 */
export interface VentSegments {
  readonly ok: true;
  readonly parts: readonly Part[];
  /** Positions of the joints along the centre line, m. */
  readonly cuts: readonly number[];
  /** Whether each piece lies on its side. */
  readonly lying: readonly boolean[];
  readonly drawing: VentDrawing;
}

const printerShape = { width: positive('length'), depth: positive('length'), height: positive('length') };
const ownShape = {
  overlap: optional(positive('length')),
  clearance: optional(notNegative('length')),
  firstWithin: optional(positive('length')),
};

const [usualOverlap, usualClearance] = [0.012, 1.5e-4];
/** Fewest lines of a nozzle in each half of a joint (common practice). */
const LEAST_LINES = 2;

/**
 * Divides a vent into pieces that a printer can build. Each piece ends in a spigot, half as thick as the wall, which reaches into
 * a socket of the next one until it meets its shoulder: the air finds no step. Joints lie in straight parts alone. Where the
 * printer is too low for all to stand, a bent piece lies on its side; one with the outer end only where no joint finds room before its bend.
 *
 * @validity walls that two halves of two lines each and the clearance find room in
 * @returns as few pieces as possible, of nearly one height; or why there are none: `too-large-for-printer`, `no-place-for-joint`
 * @throws InputError as `ventSolid`, and `inconsistent` for a wall that is too thin for a joint
 * @source own geometry; overlap and clearance are common practice
 * @example ventSegments({ vent, printer: { width: '220 mm', depth: '220 mm', height: '200 mm' } })
 */
export function ventSegments(input: VentSegmentsInput): VentSegments | Impossible {
  const { vent, printer, ...own } = input;
  const drawing = readVent(vent);
  const faults: Fault[] = [];
  const bed = readFieldsInto(faults, 'printer', printer, printerShape);
  const read = readFieldsInto(faults, '', own, ownShape);
  refuse(faults);
  return inPieces({ drawing, profileOf: wallProfile, head: 0, name: 'vent' }, bed!, read!);
}

export interface TubeSegmentsInput {
  readonly vent: TwoPartVent;
  readonly printer: PrinterInput;
  /** As those of `ventSegments`. */
  readonly overlap?: LengthInput | undefined;
  readonly clearance?: LengthInput | undefined;
}

/**
 * Divides the tube of a vent in two parts into pieces that a printer can build. The first piece holds the whole seat, so that no
 * joint lies where it slides.
 *
 * @validity as `ventSegments`
 * @returns as `ventSegments`
 * @throws InputError as `ventSegments`
 * @source own geometry; overlap and clearance are common practice
 * @example tubeSegments({ vent, printer: { width: '180 mm', depth: '180 mm', height: '180 mm' } })
 */
export function tubeSegments({ vent, printer, ...own }: TubeSegmentsInput): VentSegments | Impossible {
  const faults: Fault[] = [];
  const bed = readFieldsInto(faults, 'printer', printer, printerShape);
  const read = readFieldsInto(faults, '', own, ownShape);
  refuse(faults);
  const { drawing } = vent.tube;
  return inPieces({ drawing, profileOf: () => vent.profile, head: vent.end, name: 'tube' }, bed!, read!);
}

function inPieces(whole: Whole, bed: Bed, own: Fields<typeof ownShape>): VentSegments | Impossible {
  const { drawing, name: called } = whole;
  const { overlap = usualOverlap, clearance = usualClearance, firstWithin } = own;
  const joint: Joint = {
    overlap,
    clearance,
    half: (drawing.wall - clearance) / 2,
    ...(firstWithin !== undefined && { firstWithin }),
  };
  const divided = balanced(whole, joint, bed);
  if (!divided.ok) return divided;
  const { cuts, stands } = divided;
  if (cuts.length > 0 && joint.half < LEAST_LINES * drawing.nozzle - NANOMETRE) {
    const least = 2 * LEAST_LINES * drawing.nozzle + clearance;
    const expected = told`at least ${least}: two lines of the nozzle in each half of a joint, and the clearance`;
    refuse([
      faultOf({
        code: 'inconsistent',
        path: 'vent.wall',
        got: drawing.wall,
        expected,
        remedy: 'Thicken the wall, or take a finer nozzle.',
      }),
    ]);
  }
  const ends = [0, ...cuts, drawing.length];
  const parts = ends.slice(1).map((end, i) => {
    const name = cuts.length === 0 ? called : `${called}, piece ${i + 1} of ${cuts.length + 1}`;
    return { name, mesh: pieceOf(whole, joint, ends[i]!, end, stands[i]!) };
  });
  return { ok: true, parts, cuts, lying: stands.map((stand) => stand === 'on its side'), drawing };
}
