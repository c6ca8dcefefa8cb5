import { type Fault, refuse } from '@airspring/core/fault';
import { type LengthInput, readInto } from '@airspring/core/quantity';
import type { PlanePoint } from '../outline/index.js';
import type { Flare } from './flare.js';
import { curveFaults } from './flare-faults.js';

/** A point of a flare: how far from the throat, and how much wider than the duct, as a text or in metres. */
export type FlarePoint = readonly [along: LengthInput | number, widening: LengthInput | number];

/**
 * A flare through points of your own, joined by straight lines.
 *
 * @validity points that lead from the throat, [0, 0], outwards and never back
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unsorted`
 * @source own derivation: the straight line
 * @example flareThrough([['0 mm', '0 mm'], ['10 mm', '2 mm'], ['20 mm', '10 mm']]).depth // 0.02
 */
export function flareThrough(input: readonly FlarePoint[]): Flare {
  const points = pointsOf(input);
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

function pointsOf(input: readonly FlarePoint[]): readonly PlanePoint[] {
  const faults: Fault[] = [];
  const remedy = "Give points such as ['20 mm', '10 mm'].";
  if (!Array.isArray(input) || input.length < 2) {
    const got = Array.isArray(input) ? input.length : input;
    const expected = 'two points or more, the first of them the throat, 0 mm and 0 mm';
    faults.push({ code: 'empty', path: 'points', got, expected, remedy });
  }
  refuse(faults);
  const points = input.map((point, i): PlanePoint => {
    if (!Array.isArray(point) || point.length !== 2) {
      const expected = 'two lengths, along the duct and widening';
      faults.push({ code: 'inconsistent', path: `points[${i}]`, got: point, expected, remedy });
      return [0, 0];
    }
    const [along, widening] = [0, 1].map((k) => readInto(faults, 'length', point[k], `points[${i}][${k}]`, 'any') ?? 0);
    return [along!, widening!];
  });
  refuse(faults);
  return points;
}
