import type { Reason } from '../fault/index.js';
import { type Length, nested, readFields, si } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import {
  type Face,
  faces,
  innerEdges,
  type SizeInput,
  sizeShape,
  type ThicknessInput,
  thicknessField,
} from './cuboid.js';
import { overlap } from './overlap.js';
import { axisOf, type Block, isFar, type Solid } from './solids.js';

/** The interior of a box as a shape. The cuboid is one; a wedge or a cylinder of your own can be another. */
export interface Interior {
  /** The faces on which parts may stand. */
  readonly faces: readonly Face[];
  /** Whether a solid is inside; it may touch the walls. */
  readonly contains: (solid: Solid) => boolean;
  /** How far a solid inside can move towards a face. A bent path consists of two such moves. */
  readonly way: (solid: Solid, towards: Face) => Length;
}

const shape = { outer: nested(sizeShape), thickness: thicknessField };

/**
 * The inside of a cuboid box, in metres from its left, bottom, front outer edge.
 *
 * @validity flat panels at right angles
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent` when the panels leave nothing
 * @source own geometry of a cuboid
 * @example cuboidInterior({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm' }).faces.length // 6
 */
export function cuboidInterior(input: { readonly outer: SizeInput; readonly thickness: ThicknessInput }): Interior {
  const { outer, thickness } = readFields('box', input, shape);
  const inner = innerEdges(outer, thickness, 'box.outer');
  const low = inner.map((_, axis) => thickness[2 * axis]!);
  const high = inner.map((edge, axis) => low[axis]! + edge);
  return {
    faces,
    contains: ({ least, greatest }) =>
      least.every((at, axis) => at >= low[axis]! - NANOMETRE && greatest[axis]! <= high[axis]! + NANOMETRE),
    way: ({ least, greatest }, towards) => {
      const face = faces.indexOf(towards);
      const axis = axisOf(face);
      return si('length', isFar(face) ? high[axis]! - greatest[axis]! : least[axis]! - low[axis]!);
    },
  };
}

const blockOf = ({ form, axis, least, greatest }: Solid, less: number): Block => ({
  axis: form === 'cuboid' || axis === undefined ? -1 : 'xyz'.indexOf(axis),
  low: least.map((at) => at + less) as [number, number, number],
  high: greatest.map((at) => at - less) as [number, number, number],
});

const ofVent = ({ part }: Solid) => part === 'vent' || part === 'clearance';

/**
 * The faults of a placement, however it was found: solids that are not inside, and pairs that overlap. The parts of vents and
 * the free air in front of them may overlap each other. The list is empty if nothing overlaps.
 *
 * @validity cylinders and cuboids along the axes; touching is not overlap
 * @neglects frames and flanges on the outer surface; refuses nothing
 * @source own geometry of cylinders and cuboids
 * @example collisions(interior, fitted.solids) // []
 */
export function collisions(interior: Interior, solids: readonly Solid[]): readonly Reason[] {
  const because: Reason[] = [];
  const blocks = solids.map((one) => blockOf(one, NANOMETRE));
  const named = (index: number) => `${index + 1} (${solids[index]!.part})`;
  for (const [index, one] of solids.entries()) {
    if (!interior.contains(one)) because.push({ code: 'outside', text: `Solid ${named(index)} is not inside.` });
    for (let other = index + 1; other < solids.length; other++) {
      if (ofVent(one) && ofVent(solids[other]!)) continue;
      if (!overlap(blocks[index]!, blocks[other]!)) continue;
      because.push({ code: 'overlap', text: `Solid ${named(index)} meets solid ${named(other)}.` });
    }
  }
  return because;
}
