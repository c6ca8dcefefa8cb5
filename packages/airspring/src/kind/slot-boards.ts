import type { Fit } from '@airspring/core/space';
import { type SlotAlong, slotBoards } from '@airspring/core/vent';
import type { Panel } from './build-record.js';

/** Inner sizes of a slot, and the thickness of its boards and of the panel in which it opens. */
export interface Slot {
  readonly along: SlotAlong;
  readonly width: number;
  readonly height: number;
  readonly wall: number;
  readonly panel: number;
}

/** Boards shorter than this are left out: glue fills such a gap, m. */
export const LEAST = 1e-4;

/**
 * The boards of a slot. Its long boards cover the edges of its short ones. The boards of a free slot pass through the panel;
 * those of a slot along panels begin behind it. Both legs of a folded slot are counted from the inner edge of the fold. There,
 * the short boards of the first leg go on into the corner, and those of the second leg stand on them.
 */
export function boardsOf(
  { along, width, height, wall, panel }: Slot,
  length: number,
  { firstLeg, bend }: NonNullable<Fit['placement']['vent']>,
): Panel[] {
  const [long, short] = width >= height ? [width, height] : [height, width];
  const [onLong, onShort] = slotBoards[along];
  const free = along === 'none';
  const start = free ? 0 : panel;
  const across = long + onShort * wall;
  const board = (name: string, count: number, size: number, wide: number): Panel[] =>
    count > 0 && size > LEAST ? [{ name, count, length: size, width: wide }] : [];
  if (bend === undefined) {
    return [
      ...board('long board of the slot (length × width)', onLong, length - start, across),
      ...board('short board of the slot (length × width)', onShort, length - start, short),
    ];
  }
  const first = firstLeg - start;
  const { secondLeg: second } = bend;
  // On the outside of the fold a free slot has boards of its own, where another slot has panels.
  const outer = free ? 1 : 0;
  return [
    ...board('inner long board, first leg (length × width)', 1, first, across),
    ...board('inner long board, second leg (length × width)', 1, second - wall, across),
    ...board('outer long board, first leg (length × width)', outer, first + short + wall, across),
    ...board('outer long board, second leg (length × width)', outer, short + second, across),
    ...board('short board, first leg (length × width)', onShort, first + short, short),
    ...board('short board, second leg (length × width)', onShort, second, short),
  ];
}

/**
 * Air that a metre of a slot and its own boards take from the box, m², and what a fold takes in addition, m³. In a fold the air fills a
 * square, where its centre line is an arc, and the inner boards share a corner. The outer boards of a free slot go on around it.
 *
 * @source own geometry of boards at right angles
 */
export function takenBySlot({ along, width, height, wall }: Omit<Slot, 'panel'>): {
  readonly metre: number;
  readonly fold: number;
} {
  const [long, short] = width >= height ? [width, height] : [height, width];
  const [onLong, onShort] = slotBoards[along];
  const across = long + onShort * wall;
  const thick = short + onLong * wall;
  const boards = along === 'none' ? 2 * short * wall : -(wall ** 2);
  return { metre: across * thick, fold: across * (short ** 2 + boards - (Math.PI / 4) * short * thick) };
}
