import { refuse } from '../fault/index.js';
import { type Length, readFields, si } from '../quantity/index.js';
import { innerEdges } from './cuboid.js';
import { judgeSpace, type Layout, layoutOf, type ShapedSpaceInput, shapedSpaceShape } from './fit-input.js';
import { type SlotBody, type VentBody, type VentBodyInput, ventBodyOf, ventField } from './vent-body.js';
import { compilePlaces } from './vent-places.js';
import { roundVent, slotVent } from './vent-solids.js';

/**
 * Compiles the longest round vent of a layout for many boxes and vents. It takes inner edges and a vent, and sets `out[0]` to the
 * longest straight and `out[1]` to the longest bent length, 0 if none fits. Plain SI numbers; a call allocates nothing. With
 * `enough`, the search ends at a vent of that length: one of `out` reaches it if and only if such a vent fits. `most` bounds the whole
 * vent: what its bend takes is then no longer there for its first leg.
 *
 * @validity as {@link longestVent}
 * @source own geometry of cylinders and cuboids
 * @example compileLongestVent(layout)(0.3, 0.4, 0.35, vent, out)
 */
export function compileLongestVent(layout: Layout) {
  const { search, vent: shape, straight, bent } = compilePlaces(layout);
  return (
    width: number,
    height: number,
    depth: number,
    vent: VentBody,
    out: Float64Array,
    enough = Number.POSITIVE_INFINITY,
    most = Number.POSITIVE_INFINITY,
  ): void => {
    roundVent(shape, vent, layout.vent.count, layout.gap);
    search(width, height, depth, most, enough);
    out[0] = straight.length;
    out[1] = bent.length;
  };
}

/**
 * Compiles the longest slot of a layout for many boxes and slots. It takes inner edges and a slot, and sets `out[0]` to the longest
 * straight and `out[1]` to the longest folded length, 0 if none fits. Plain SI numbers; a call allocates nothing. `enough` and `most`
 * as in {@link compileLongestVent}.
 *
 * @validity as {@link longestVent}
 * @source own geometry of cylinders and cuboids
 * @example compileLongestSlot(layout)(0.3, 0.4, 0.35, slot, out)
 */
export function compileLongestSlot(layout: Layout) {
  const { search, vent: shape, straight, bent } = compilePlaces(layout);
  return (
    width: number,
    height: number,
    depth: number,
    slot: SlotBody,
    out: Float64Array,
    enough = Number.POSITIVE_INFINITY,
    most = Number.POSITIVE_INFINITY,
  ): void => {
    slotVent(shape, slot, layout.vent.walls, layout.vent.count, layout.gap);
    search(width, height, depth, most, enough);
    out[0] = straight.length;
    out[1] = bent.length;
  };
}

export interface LongestVentInput extends ShapedSpaceInput {
  readonly vent: VentBodyInput;
}

const shape = { ...shapedSpaceShape, vent: ventField({}) };

/**
 * The longest vent, round or a slot, that fits in a box with its drivers: straight, and with one bend of 90°.
 *
 * $$ \ell_{straight} = t + r_n - c, \qquad \ell_{bent} = t + a + \tfrac{\pi}{2} R + b $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $t$ | `thickness` | m | panel of the vent's face |
 * | $r_n$ | | m | free path inwards at the best place, up to the wall or the driver |
 * | $c$ | `vent.clearance` | m | free air in front of the inner end |
 * | $a, b$ | | m | straight legs before and after the bend, at the best place |
 * | $R$ | `vent.bendRadius` | m | centre-line radius of the bend |
 *
 * The length is that of the centre line, including the panel. Driver and vent are placed where they leave each other most
 * room, in the corners of what their faces allow. The result proves that they fit; it is not meant to look good. Every shorter
 * straight vent fits as well; a bent vent is at least as long as panel and bend together, and a folded slot by twice the thickness
 * of a board more, since along each leg lies the edge of the inner board of the other. Several drivers on one face are kept
 * free as one cuboid, and so is a row of vents.
 *
 * Beside no body or one block of them, the result is exact. Beside bodies on several faces it is a lower bound: a vent of this
 * length fits, and a longer one may. There the vent is tried in the corners and where it just passes the bodies; each body is
 * tried at its limits, in the middle of them, and where it touches those placed before it. Beside two bodies, no random vent was
 * longer than the one found. Each of three bodies is placed first once, and no vent on a lattice of places was longer. Four or more
 * are placed in one order, and in about one box of a hundred the lattice had a longer one.
 *
 * In an `interior` of your own the result is a lower bound too: bodies and vent are tried on a small grid and where they touch the
 * walls. In random columns and boxes with a sloping front, no random straight vent was longer, and some bent ones by a tenth. A body
 * is kept clear of the walls in its whole depth by what it needs on its face. A search among several bodies can take seconds.
 *
 * @validity round vents and slots, flat panels at right angles; 0 where none fits
 * @neglects flares, bracing, wires, the curve of the bend (its enclosing cuboid is kept free)
 * @returns `straight` and `bent` in m, 0 where none fits
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent`
 * @source own geometry of cylinders and cuboids
 * @example longestVent({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm', driver: { outerDiameter: '200 mm', cutoutDiameter: '180 mm', depth: '90 mm' }, vent: { diameter: '60 mm' } }).straight // 0.272
 */
export function longestVent(input: LongestVentInput): { readonly straight: Length; readonly bent: Length } {
  const space = readFields('space', input, shape);
  const inner = innerEdges(space.outer, space.thickness, 'space.outer');
  refuse(judgeSpace(space, 'space', space.vent));
  const out = new Float64Array(2);
  const layout = layoutOf(space, space.vent);
  const body = ventBodyOf(space.vent);
  if ('longSide' in body) compileLongestSlot(layout)(...inner, body, out);
  else compileLongestVent(layout)(...inner, body, out);
  return { straight: si('length', out[0]!), bent: si('length', out[1]!) };
}
