import { type Impossible, impossible } from '@airspring/core/fault';
import { format, NANOMETRE } from '@airspring/core/quantity';
import { extentOf } from '../mesh/index.js';
import { lineOf } from './vent-drawing.js';
import { type Joint, pieceOf, type Whole } from './vent-piece.js';

/** What a printer can build, m. */
export interface Bed {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/** Fineness of the solids on which pieces are measured, m. */
const COARSE = 1e-3;

/** Cuts for as few pieces as possible, as even in height as the places for joints allow. */
export function balanced(whole: Whole, joint: Joint, bed: Bed): number[] | Impossible {
  const fewest = greedy(whole, joint, bed);
  if (!Array.isArray(fewest) || fewest.length === 0) return fewest;
  let [low, high] = [bed.height / 2, bed.height];
  let best = fewest;
  for (let i = 0; i < EVENING; i++) {
    const height = (low + high) / 2;
    const found = greedy(whole, joint, { ...bed, height });
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
