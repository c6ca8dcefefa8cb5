import { type Fault, type Impossible, impossible, refuse } from '@airspring/core/fault';
import {
  type Fields,
  format,
  type LengthInput,
  notNegative,
  optional,
  positive,
  readFieldsInto,
} from '@airspring/core/quantity';
import { extentOf, type Mesh, type Part } from '../mesh/index.js';
import type { Outline, PlanePoint } from '../outline/index.js';
import { type Frame, NANOMETRE } from './centre-line.js';
import type { TwoPartVent } from './two-part-vent.js';
import { lineOf, type VentDrawing, type VentSolidInput, ventDrawing } from './vent-drawing.js';
import { heightAt, ventMesh, wallProfile } from './vent-solid.js';

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

/** A vent in pieces, from the outer end to the inner one. Each stands as it is printed: on its outer end, spigot up. */
export interface VentSegments {
  readonly ok: true;
  readonly parts: readonly Part[];
  /** Positions of the joints along the centre line, m. */
  readonly cuts: readonly number[];
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
/** Pieces are measured on solids so coarse, m. */
const COARSE = 1e-3;

/** Sizes of a joint, m. */
interface Joint {
  readonly overlap: number;
  readonly clearance: number;
  /** Thickness of the spigot, and of the socket. */
  readonly half: number;
  /** The first piece ends here at the latest, m. */
  readonly firstWithin?: number;
}

/**
 * Divides a vent into pieces that a printer can build. Each piece ends in a spigot, half as thick as the wall, which reaches into
 * a socket of the next one until it meets its shoulder: the air finds no step. Joints lie in straight parts alone.
 *
 * @validity walls that two halves of two lines each and the clearance find room in
 * @returns as few pieces as possible, of nearly one height; or why there are none: `too-large-for-printer`, `no-place-for-joint`
 * @throws InputError as `ventSolid`, and `inconsistent` for a wall that is too thin for a joint
 * @source own geometry; overlap and clearance are common practice
 * @example ventSegments({ vent, printer: { width: '220 mm', depth: '220 mm', height: '200 mm' } })
 */
export function ventSegments(input: VentSegmentsInput): VentSegments | Impossible {
  const { vent, printer, ...own } = input;
  const drawing = ventDrawing(vent);
  const faults: Fault[] = [];
  const bed = readFieldsInto(faults, 'printer', printer, printerShape);
  const read = readFieldsInto(faults, '', own, ownShape);
  refuse(faults);
  return divided({ drawing, profileOf: wallProfile, head: 0, name: 'vent' }, bed!, read!);
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
  return divided({ drawing, profileOf: () => vent.profile, head: vent.end, name: 'tube' }, bed!, read!);
}

/** A wall to be divided. */
interface Whole {
  readonly drawing: VentDrawing;
  /** The wall of its drawing, cut open along its centre line. */
  readonly profileOf: (drawing: VentDrawing) => Outline;
  /** No joint lies before this position, m. */
  readonly head: number;
  readonly name: string;
}

function divided(whole: Whole, bed: Bed, own: Fields<typeof ownShape>): VentSegments | Impossible {
  const { drawing, name: called } = whole;
  const { overlap = usualOverlap, clearance = usualClearance } = own;
  const { firstWithin } = own;
  const joint: Joint = {
    overlap,
    clearance,
    half: (drawing.wall - clearance) / 2,
    ...(firstWithin !== undefined && { firstWithin }),
  };
  const cuts = balanced(whole, joint, bed);
  if (!Array.isArray(cuts)) return cuts as Impossible;
  if (cuts.length > 0 && joint.half < LEAST_LINES * drawing.nozzle - NANOMETRE) {
    const least = 2 * LEAST_LINES * drawing.nozzle + clearance;
    const expected = `at least ${least} m: two lines of the nozzle in each half of a joint, and the clearance`;
    refuse([
      {
        code: 'inconsistent',
        path: 'vent.wall',
        got: drawing.wall,
        expected,
        remedy: 'Thicken the wall, or take a finer nozzle.',
      },
    ]);
  }
  const ends = [0, ...cuts, drawing.length];
  const parts = ends.slice(1).map((end, i) => {
    const name = cuts.length === 0 ? called : `${called}, piece ${i + 1} of ${cuts.length + 1}`;
    return { name, mesh: pieceOf(whole, joint, ends[i]!, end) };
  });
  return { ok: true, parts, cuts, drawing };
}

type Bed = Fields<typeof printerShape>;

/** Cuts for as few pieces as possible, as even in height as the places for joints allow. */
function balanced(whole: Whole, joint: Joint, bed: Bed): number[] | Impossible {
  const fewest = greedy(whole, joint, bed);
  if (!Array.isArray(fewest) || fewest.length === 0) return fewest;
  let [low, high] = [bed.height / 2, bed.height as number];
  let best = fewest;
  for (let i = 0; i < EVENING; i++) {
    const height = (low + high) / 2;
    const found = greedy(whole, joint, { ...bed, height: height as Bed['height'] });
    if (Array.isArray(found) && found.length === fewest.length) {
      best = found;
      high = height;
    } else low = height;
  }
  return best;
}

/** Halvings of the height for even pieces. */
const EVENING = 7;

/** Cuts the longest pieces that fit, one after the other. */
function greedy(whole: Whole, joint: Joint, bed: Bed): number[] | Impossible {
  const places = jointPlaces(whole, joint);
  const { length } = whole.drawing;
  const cuts: number[] = [];
  const { firstWithin = length } = joint;
  let from = 0;
  while ((from === 0 && firstWithin < length - NANOMETRE) || !fits(whole, joint, from, length, bed)) {
    const last = from === 0 ? firstWithin : length;
    const ahead = places.filter((place) => place > from + joint.overlap + NANOMETRE && place <= last + NANOMETRE);
    if (ahead.length === 0 && from === 0 && last < length) return noPlace(last);
    // Longer pieces take no less room, so the last that fits is found by halving.
    let [low, high] = [-1, ahead.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (fits(whole, joint, from, ahead[middle]!, bed)) low = middle;
      else high = middle;
    }
    if (low < 0) return tooLarge(whole, joint, from, ahead[0] ?? length, bed);
    from = ahead[low]!;
    cuts.push(from);
  }
  return cuts;
}

/** Where a joint may begin: each millimetre of the straight parts that hold it. */
function jointPlaces({ drawing, head }: Whole, { overlap }: Joint): number[] {
  const { length, wall, outerFlare, innerFlare, flange } = drawing;
  const { arcs } = lineOf(drawing);
  const flared = outerFlare === undefined ? 0 : Math.max(outerFlare.depth, wall);
  const start = Math.max(flared, flange?.thickness ?? 0, head);
  const end = length - (innerFlare === undefined ? 0 : Math.max(innerFlare.depth, wall));
  const bounds = [start, ...arcs.flatMap(({ from, to }) => [from, to]), end];
  const places: number[] = [];
  for (let i = 0; i + 1 < bounds.length; i += 2) {
    const [from, to] = [bounds[i]! + STEP, bounds[i + 1]! - overlap];
    for (let at = from; at <= to + NANOMETRE; at += STEP) places.push(at);
  }
  return places;
}

const STEP = 1e-3;

function fits(whole: Whole, joint: Joint, from: number, to: number, bed: Bed): boolean {
  const [x, y, z] = extentOf(pieceOf(coarse(whole), joint, from, to)).edges;
  const spare = NANOMETRE + 1e-5;
  const flat = (x <= bed.width + spare && y <= bed.depth + spare) || (x <= bed.depth + spare && y <= bed.width + spare);
  return flat && z <= bed.height + spare;
}

function noPlace(before: number): Impossible {
  const at = format('length', before, 'mm', 4);
  return impossible('no-place-for-joint', `There is no straight part for a joint in the first ${at}.`);
}

function tooLarge(whole: Whole, joint: Joint, from: number, to: number, bed: Bed): Impossible {
  const { edges } = extentOf(pieceOf(coarse(whole), joint, from, to));
  const mm = (values: readonly number[]) => values.map((value) => format('length', value, 'mm', 4)).join(' × ');
  const text = `The piece from ${mm([from])} to ${mm([to])} cannot be divided: it needs ${mm(edges)}, and the printer has ${mm([bed.width, bed.depth, bed.height])}.`;
  return impossible('too-large-for-printer', text);
}

const coarse = (whole: Whole): Whole => ({ ...whole, drawing: { ...whole.drawing, fineness: COARSE } });

/** The solid of one piece, standing on its outer end. */
function pieceOf(whole: Whole, joint: Joint, from: number, to: number): Mesh {
  const { drawing, profileOf } = whole;
  const profile = from === 0 && to === drawing.length ? profileOf(drawing) : pieceProfile(whole, joint, from, to);
  const lowest = from === 0 ? 0 : from + joint.clearance;
  return standing(ventMesh(drawing, profile, from === 0), lineOf(drawing).frame(lowest));
}

/** The wall of a vent between two joints: a socket at the outer one, a spigot at the inner one. */
function pieceProfile(
  { drawing, profileOf }: Whole,
  { overlap, clearance, half }: Joint,
  from: number,
  to: number,
): Outline {
  const wall = profileOf(drawing);
  const turn = wall.findIndex(([along], i) => i > 0 && along === drawing.length && wall[i - 1]![0] === drawing.length);
  const [clear, outside] = [wall.slice(0, turn), wall.slice(turn).reverse()];
  const [first, last] = [from === 0, to === drawing.length];
  const [clearFrom, clearTo] = [first ? 0 : from + overlap, last ? to : to + overlap];
  const [outFrom, outTo] = [first ? 0 : from + clearance, to];
  const duct = between(clear, clearFrom, clearTo);
  const outer = between(outside, outFrom, outTo);
  const spigot: PlanePoint[] = last
    ? []
    : [
        [to + overlap, half],
        [to, half],
      ];
  const socket: PlanePoint[] = first
    ? []
    : [
        [from + clearance, half + clearance],
        [from + overlap, half + clearance],
      ];
  return [...duct, ...spigot, ...outer.reverse(), ...socket];
}

/** The part of a line between two positions, with its ends. */
function between(line: readonly PlanePoint[], from: number, to: number): PlanePoint[] {
  const [start, end] = [line[0]![0], line.at(-1)![0]];
  const inside = line.filter(
    ([along]) => (along > from + NANOMETRE || from === start) && (along < to - NANOMETRE || to === end),
  );
  return [
    ...(from === start ? [] : [[from, heightAt(line, from)] as const]),
    ...inside,
    ...(to === end ? [] : [[to, heightAt(line, to)] as const]),
  ];
}

/** A solid as it is seen from a frame: the frame becomes the origin and the axes. */
function standing({ corners, triangles }: Mesh, { origin, x, y, along }: Frame): Mesh {
  const turned = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 3) {
    const at = [0, 1, 2].map((k) => corners[i + k]! - origin[k]!);
    [x, y, along].forEach((axis, k) => {
      turned[i + k] = at[0]! * axis[0] + at[1]! * axis[1] + at[2]! * axis[2];
    });
  }
  return { corners: turned, triangles };
}
