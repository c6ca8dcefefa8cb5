/** Panels of the box that stand for boards of a slot. */
export type SlotAlong = 'none' | 'one' | 'two' | 'three';

/** A slot's own boards on its long sides and on its short ones, where panels of the box do not stand for them. */
export const ownBoards: Readonly<Record<SlotAlong, readonly [onLong: number, onShort: number]>> = {
  none: [2, 2],
  one: [1, 2],
  two: [1, 1],
  three: [1, 0],
};

/**
 * Radius of the centre line in the fold of a slot: its air turns about the edge where the inner boards of both legs meet, so the
 * radius is half the side that lies in the plane of the fold. No slot turns more sharply.
 *
 * @source own geometry of boards at right angles
 */
export const foldRadius = (shortSide: number): number => shortSide / 2;
