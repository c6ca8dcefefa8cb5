import type { PlanePoint } from '../outline/index.js';
import type { Flare } from './flare.js';

/** Points of a flare from the throat to the mouth, so close that no side is farther than `chord` from the curve. */
export function flarePoints(flare: Flare, chord: number): readonly PlanePoint[] {
  const cuts = [0, ...(flare.joints ?? []), 1];
  const points: PlanePoint[] = [flare.curve(0)];
  for (let i = 1; i < cuts.length; i++) halve(flare.curve, cuts[i - 1]!, cuts[i]!, chord, points, MOST_HALVINGS);
  return points;
}

/** The greatest number of times that a side is halved. */
const MOST_HALVINGS = 10;

function halve(
  curve: Flare['curve'],
  from: number,
  to: number,
  chord: number,
  points: PlanePoint[],
  more: number,
): void {
  const [a, b] = [curve(from), curve(to)];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const far = [0.25, 0.5, 0.75].some((part) => {
    const p = curve(from + part * (to - from));
    const off = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    return Math.abs(off) > chord * long;
  });
  if (far && more > 0) {
    const middle = (from + to) / 2;
    halve(curve, from, middle, chord, points, more - 1);
    halve(curve, middle, to, chord, points, more - 1);
  } else points.push(b);
}
