/**
 * How a slot lies: free, along one panel, in the corner of two panels, or along one panel from side to side. The place in this
 * list is the number of panels of the box that serve as its boards.
 */
export const slotAlongs = ['none', 'one', 'two', 'three'] as const;

/** Panels of the box that serve as boards of a slot. */
export type SlotAlong = (typeof slotAlongs)[number];

/** The number of a slot's own boards on its long sides and on its short ones: panels of the box are the rest. */
export const slotBoards: Readonly<Record<SlotAlong, readonly [onLong: number, onShort: number]>> = {
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
