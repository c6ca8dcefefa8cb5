import { overlappingShifts } from './overlap.js';
import type { Scene, Stand } from './scene.js';
import { type Block, emptyBlock } from './solids.js';
import { bend, firstLeg, flange, secondLeg } from './vent-solids.js';

const range = new Float64Array(2);
const part = emptyBlock();

/** Adds the places where `part`, now at `at`, just passes the bodies along an axis, within its limits. */
export function passing(
  { stands }: Scene,
  part: Block,
  k: number,
  at: number,
  limit: Float64Array,
  frames: boolean,
  tries: Float64Array,
  count: number,
): number {
  let n = count;
  for (let s = 0; s < stands.length; s++) {
    const stand = stands[s]!;
    if (frames ? !stand.beside : !stand.inside) continue;
    if (!overlappingShifts(part, frames ? stand.frame : stand.block, k, range)) continue;
    for (let side = 0; side < 2; side++) {
      const to = at + range[side]!;
      if (to >= limit[0]! && to <= limit[1]! && n < tries.length) tries[n++] = to;
    }
  }
  return n;
}

/** The shifts along an axis by which a stand just touches the vent in one of its corners. */
export function besideVent(
  { vent, size }: Scene,
  along: Float64Array,
  across: Float64Array,
  bends: boolean,
  stand: Stand,
  k: number,
  shifts: Float64Array,
): number {
  let n = 0;
  const touch = (block: Block) => {
    if (!overlappingShifts(block, part, k, range)) return;
    shifts[n++] = range[0]!;
    shifts[n++] = range[1]!;
  };
  const deepest = size[0] - vent.bendRadius - vent.radius;
  for (let c = 0; c < 4; c++) {
    const at = along[c & 1]!;
    const over = across[c >> 1]!;
    if (stand.beside) {
      flange(part, vent, at, over);
      touch(stand.frame);
    }
    if (!stand.inside) continue;
    firstLeg(part, vent, at, over, size[0]);
    touch(stand.block);
    if (!bends || (c & 1) === 1 || deepest < 0) continue;
    bend(part, vent, at, over, deepest);
    touch(stand.block);
    secondLeg(part, vent, at + vent.bendRadius, size[1], over, deepest);
    touch(stand.block);
  }
  return n;
}
