import { type Fault, refuse } from '@airspring/core/fault';
import type { PlanePoint } from '../outline/index.js';
import type { Flare } from './flare.js';
import { curveFaults } from './flare-faults.js';

/**
 * A flare through points of your own, joined by straight lines.
 *
 * @validity points that lead from the throat, [0, 0], outwards and never back
 * @throws InputError `empty`, `not-finite`, `unsorted`
 * @source own derivation: the straight line
 * @example flareThrough([[0, 0], [0.01, 0.002], [0.02, 0.01]]).depth // 0.02
 */
export function flareThrough(points: readonly PlanePoint[]): Flare {
  const faults: Fault[] = [];
  if (points.length < 2) {
    const expected = 'two points or more, the first of them [0, 0]';
    faults.push({ code: 'empty', path: 'points', got: points.length, expected, remedy: 'Give the points in metres.' });
  }
  refuse(faults);
  const last = points.length - 1;
  const [depth, widening] = points[last]!;
  const joints = points.slice(1, -1).map((_, i) => (i + 1) / last);
  const flare: Flare = {
    name: 'own profile',
    depth,
    widening,
    curve: (t) => {
      const i = Math.min(last - 1, Math.floor(t * last));
      const part = t * last - i;
      const [[x, y], [nextX, nextY]] = [points[i]!, points[i + 1]!];
      return [x + part * (nextX - x), y + part * (nextY - y)];
    },
    joints,
    sources: [],
  };
  refuse(curveFaults(flare, [0, ...joints, 1], (i) => `points[${i}]`, 'points'));
  return flare;
}
