import type { Impossible } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { joined, reasonOf, told } from '../words/told.js';
import { lineOf } from './vent-drawing.js';
import { type Bed, edgesOf, type Joint, type Stand, standOf, type Whole } from './vent-piece.js';

/** Where a vent is cut, and how each piece is printed. */
export interface Division {
  readonly ok: true;
  readonly cuts: readonly number[];
  readonly stands: readonly Stand[];
}

/** As few pieces as possible, as even in height as the places for joints allow. A piece lies only where not all can stand. */
export function balanced(whole: Whole, joint: Joint, bed: Bed): Division | Impossible {
  const places = jointPlaces(whole, joint);
  const onEnd: StandOf = (from, to, low) => standOf(whole, joint, [from, to], low);
  const onSide: StandOf = (from, to, low) => standOf(whole, joint, [from, to], low, places);
  const standing = evenly(whole, joint, bed, places, onEnd);
  const cuts = Array.isArray(standing) ? standing : evenly(whole, joint, bed, places, onSide, true);
  if (!Array.isArray(cuts)) return standing as Impossible;
  const ends = [0, ...cuts, whole.drawing.length];
  const stands = ends.slice(1).map((to, i) => onSide(ends[i]!, to, bed) ?? 'on its end');
  return { ok: true, cuts, stands };
}

type StandOf = (from: number, to: number, bed: Bed) => Stand | undefined;

function evenly(
  whole: Whole,
  joint: Joint,
  bed: Bed,
  places: readonly number[],
  stand: StandOf,
  mayLie = false,
): readonly number[] | Impossible {
  const fewest = cutsFor(whole, joint, bed, places, stand);
  if (!Array.isArray(fewest) || fewest.length === 0) return fewest;
  /** The smallest bed on the way from half to the whole for which there are no more pieces, and its cuts. */
  const smallest = (sized: (part: number) => Bed, atWhole: readonly number[]) => {
    let [low, high, best] = [0.5, 1, atWhole];
    for (let i = 0; i < EVENING; i++) {
      const part = (low + high) / 2;
      const found = cutsFor(whole, joint, sized(part), places, stand);
      if (Array.isArray(found) && found.length === fewest.length) [high, best] = [part, found];
      else low = part;
    }
    return { bed: sized(high), cuts: best };
  };
  // What lies is as short as may be, and what stands as even.
  const narrow = mayLie
    ? smallest((part) => ({ ...bed, width: part * bed.width, depth: part * bed.depth }), fewest)
    : { bed, cuts: fewest };
  return smallest((part) => ({ ...narrow.bed, height: part * bed.height }), narrow.cuts).cuts;
}

/** Halvings of a bed for even pieces. */
const EVENING = 7;

/** The longest pieces; where the last of a straight part is too short to be joined, or too long, the ones before are shortened. */
function cutsFor(
  whole: Whole,
  joint: Joint,
  bed: Bed,
  places: readonly number[],
  stand: StandOf,
): number[] | Impossible {
  const fits = (from: number, to: number) => stand(from, to, bed) !== undefined;
  const found = greedy(whole, joint, bed, places, fits, false);
  if (Array.isArray(found)) return found;
  const shorter = greedy(whole, joint, bed, places, fits, true);
  return Array.isArray(shorter) ? shorter : found;
}

/** Cuts the longest pieces that fit, one after the other. `sparing` leaves room for one more joint in each straight part. */
function greedy(
  whole: Whole,
  joint: Joint,
  bed: Bed,
  places: readonly number[],
  fits: (from: number, to: number) => boolean,
  sparing: boolean,
): number[] | Impossible {
  const { length } = whole.drawing;
  const { arcs } = lineOf(whole.drawing);
  const cuts: number[] = [];
  const { firstWithin = length } = joint;
  let from = 0;
  while ((from === 0 && firstWithin < length - NANOMETRE) || !fits(from, length)) {
    const start = from;
    const last = from === 0 ? firstWithin : length;
    // The first piece has no socket.
    const least = from === 0 ? 0 : from + joint.overlap;
    const ahead = places.filter((place) => place > least + NANOMETRE && place <= last + NANOMETRE);
    if (ahead.length === 0 && from === 0 && last < length) return noPlace(last);
    // A straight piece stands, while a bent one may lie: of each sort longer pieces take no less room.
    const next = arcs.find((arc) => arc.from > start)?.from ?? Infinity;
    const straight = ahead.filter((place) => place < next);
    const to =
      lastOf(ahead.slice(straight.length), (place) => fits(start, place)) ??
      lastOf(sparing ? spared(straight, joint, (place) => fits(start, place)) : straight, (place) =>
        fits(start, place),
      );
    if (to === undefined) return tooLarge(whole, joint, from, ahead[0] ?? length, bed);
    from = to;
    cuts.push(from);
  }
  return cuts;
}

/** The last place that fits, where each before it does; found by halving. */
function lastOf(places: readonly number[], fits: (place: number) => boolean): number | undefined {
  let [low, high] = [-1, places.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (fits(places[middle]!)) low = middle;
    else high = middle;
  }
  return places[low];
}

/** Places of a straight part from which its last place can still be cut. */
function spared(straight: readonly number[], { overlap }: Joint, fits: (place: number) => boolean): readonly number[] {
  const end = straight.at(-1);
  if (end === undefined || fits(end)) return straight;
  return straight.filter((place) => place < end - overlap - NANOMETRE);
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

function noPlace(before: number): Impossible {
  const words = told`There is no straight part for a joint in the first ${before}.`;
  return { ok: false, because: [reasonOf('no-place-for-joint', words, 4)] };
}

function tooLarge(whole: Whole, joint: Joint, from: number, to: number, bed: Bed): Impossible {
  const edges = edgesOf(whole, joint, from, to, 'on its end');
  const sizes = (values: readonly number[]) =>
    joined(
      values.map((value) => told`${value}`),
      ' × ',
    );
  const words = told`The piece from ${from} to ${to} cannot be divided: it needs ${sizes(edges)}, and the printer has ${sizes([bed.width, bed.depth, bed.height])}.`;
  return { ok: false, because: [reasonOf('too-large-for-printer', words, 4)] };
}
