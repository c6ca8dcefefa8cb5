import type { Hole } from './build-record.js';

const near: readonly string[] = ['left', 'bottom', 'front'];
const axes: Readonly<Record<Hole['face'], number>> = { left: 0, right: 0, bottom: 1, top: 1, front: 2, back: 2 };

/** Places are equal within a micrometre, in m. */
const ROUNDING = 1e-6;

/**
 * Whether the forces of equal cones with equal movement, one in each of these holes, cancel on the box: for each pair of opposite
 * panels, both the sum of the forces and the sum of their moments are zero.
 */
export const forcesCancel = (holes: readonly Hole[]): boolean =>
  holes.length > 0 &&
  [0, 1, 2].every((axis) => {
    const sums = [0, 0, 0];
    for (const { face, across, up } of holes) {
      if (axes[face] !== axis) continue;
      const sign = near.includes(face) ? 1 : -1;
      [1, across, up].forEach((part, i) => {
        sums[i] = sums[i]! + sign * part;
      });
    }
    return sums.every((sum) => Math.abs(sum) < ROUNDING);
  });
