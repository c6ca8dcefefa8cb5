import type { Hole } from '../kind/build-record.js';

/** The air that must stay free outside a face that is easily set against a floor or a wall, m; left out where the box is closed there. */
export type FreeOutside = Partial<Record<'bottom' | 'back', number>>;

/** How far a floor or a wall must stay away from a hole: the width of a vent, a quarter of that of a cone, whose air leaves all around. */
function freeBefore(hole: Hole): number {
  const narrow = hole.form === 'circle' ? hole.diameter : Math.min(...hole.sides);
  return hole.what === 'driver' || hole.what === 'radiator' ? narrow / 4 : narrow;
}

/**
 * How much must stay free below a box and behind it, where it opens there. The way out all around a cone, π d wide and d/4 high, has
 * the area of the cone.
 *
 * @source common practice
 */
export function freeOutsideOf(holes: readonly Hole[]): FreeOutside {
  const free = (face: keyof FreeOutside) => {
    // A panel that covers a part of its face lies on the outside; a board inside does not.
    const isOutside = ({ board }: Hole) => board === undefined || board.from?.[2] === 0;
    const before = holes.filter((hole) => hole.face === face && isOutside(hole)).map(freeBefore);
    return before.length > 0 && { [face]: Math.max(...before) };
  };
  return { ...free('bottom'), ...free('back') };
}
