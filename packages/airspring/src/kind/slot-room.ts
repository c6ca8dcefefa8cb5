import { NANOMETRE } from '@airspring/core/quantity';
import type { Layout, SlotBody } from '@airspring/core/space';
import { compileBeside } from './beside-drivers.js';

/**
 * An upper bound of the longest slot between inner edges: what a box would leave where drivers stand in the way of its mouth
 * alone. `across` is its outer size along its long side, and `ownLong` the number of its own boards on its long sides. The air
 * in a fold turns about the edge of the inner boards, so that its centre line is a quarter of a circle with half the short side
 * as radius. What depends on the layout only is worked out once.
 *
 * @source own geometry of boards at right angles
 */
export function compileSlotAtMost(layout: Layout, ownLong: number) {
  const { thickness, vent } = layout;
  // Each of the two directions along the face is tried as that of its short side; the long side then lies along the other.
  const places = vent.faces.flatMap((face) => {
    const axis = face >> 1;
    return [(axis + 1) % 3, (axis + 2) % 3].map((along) => {
      const other = 3 - axis - along;
      return { axis, along, other, panel: thickness[face]!, fitsBeside: compileBeside(layout, face, along, other) };
    });
  });
  return (inner: ArrayLike<number>, { shortSide, wall, clearance }: SlotBody, across: number): number => {
    const turn = shortSide / 2;
    const thick = shortSide + ownLong * wall;
    // From the middle of the first leg to where the second one starts.
    const aside = turn - ((2 - ownLong) * wall) / 2;
    const mouth = { sizes: [thick, across], radius: 0, margin: 0 } as const;
    let most = -1;
    for (const { axis, along, other, panel, fitsBeside } of places) {
      const room = inner[other]!;
      if (vent.walls === 3 ? Math.abs(room - across) > NANOMETRE : room < across - NANOMETRE) continue;
      if (inner[along]! < thick - NANOMETRE) continue;
      if (!fitsBeside(inner, mouth)) continue;
      const inwards = inner[axis]!;
      most = Math.max(most, panel + inwards - clearance);
      const first = inwards - aside - thick / 2;
      if (!vent.bend || first < 0) continue;
      const second = inner[along]! - clearance - aside - thick / 2;
      most = Math.max(most, panel + first + (Math.PI / 2) * turn + Math.max(0, second));
    }
    return most;
  };
}
