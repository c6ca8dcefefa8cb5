import type { Fit } from '@airspring/core/space';
import type { Panel } from './build-record.js';

/** How a slot lies: free, along one panel, in a corner of two, or along one panel and from side to side. */
export type Along = 'none' | 'one' | 'two' | 'three';

/** Panels of the box that stand for its boards. */
export const PANELS = { none: 0, one: 1, two: 2, three: 3 } as const satisfies Record<Along, number>;

/** Boards of its own on the long sides, and on the short ones. */
export const OWN_BOARDS: Readonly<Record<Along, readonly [onLong: number, onShort: number]>> = {
  none: [2, 2],
  one: [1, 2],
  two: [1, 1],
  three: [1, 0],
};

/** Sizes of a slot: inside, its boards, and the panel that it passes. */
interface Slot {
  readonly along: Along;
  readonly width: number;
  readonly height: number;
  readonly wall: number;
  readonly panel: number;
}

/** Shorter ones are glue. */
const LEAST = 1e-4;

/**
 * The boards of a slot. Its long boards lie over the edges of its short ones. A free slot passes the panel with its
 * boards; one along panels begins behind it. At a fold the short boards go on into the corner, and the second leg's stand
 * on them.
 */
export function slotBoards(
  { along, width, height, wall, panel }: Slot,
  length: number,
  { firstLeg, bend }: NonNullable<Fit['placement']['vent']>,
): Panel[] {
  const [long, short] = width >= height ? [width, height] : [height, width];
  const [onLong, onShort] = OWN_BOARDS[along];
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
  // Own boards at the fold: those outside stand where, along panels, the panels do.
  const outside = free ? wall : 0;
  return [
    ...board('inner long board, first leg (length × width)', 1, first + outside, across),
    ...board('inner long board, second leg (length × width)', 1, free ? second : second - wall, across),
    ...board('outer long board, first leg (length × width)', free ? 1 : 0, first + short + 2 * wall, across),
    ...board('outer long board, second leg (length × width)', free ? 1 : 0, short + wall + second, across),
    ...board('short board, first leg (length × width)', onShort, first + outside + short, short),
    ...board('short board, second leg (length × width)', onShort, second + outside, short),
  ];
}
