import { type Fault, refuse } from '../fault/index.js';

/** How many numbers a point may have. */
const FEWEST = 2;
const MOST = 3;

const noList = (path: string, got: unknown, of: string): Fault[] => [
  { code: 'inconsistent', path, got, expected: `a list of ${of}`, remedy: 'Put it in square brackets.' },
];

function faultsOf(points: readonly (readonly number[])[]): Fault[] {
  if (!Array.isArray(points)) return noList('points', points, 'points');
  const length = (points[0] as readonly number[] | null | undefined)?.length ?? FEWEST;
  return points.flatMap((point: readonly number[], i): Fault[] => {
    if (!Array.isArray(point)) return noList(`points[${i}]`, point, 'numbers');
    if (point.length !== length || length < FEWEST || length > MOST) {
      const expected = `two or three numbers, as many in each point`;
      return [
        { code: 'inconsistent', path: `points[${i}]`, got: point.length, expected, remedy: 'Correct the point.' },
      ];
    }
    return point.flatMap((got, k): Fault[] => {
      if (Number.isFinite(got)) return [];
      const path = `points[${i}][${k}]`;
      return [{ code: 'not-finite', path, got, expected: 'a finite number', remedy: 'Leave the point out.' }];
    });
  });
}

/** The last step whose second number is at most so great; −1 where none is. */
function lastUpTo(steps: readonly (readonly number[])[], second: number): number {
  let [from, to] = [0, steps.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (steps[middle]![1]! <= second) from = middle + 1;
    else to = middle;
  }
  return from - 1;
}

/**
 * The trade-off front of some points: those that no other point betters. A point betters another if none of its numbers is greater
 * and one is smaller, so less must be better in each of them. Of a number that should be great, give it with its sign turned.
 *
 * $$ F = \lbrace p : \nexists\, q,\; q \le p,\; q \ne p \rbrace $$
 *
 * The points are visited by rising first numbers. The second and third numbers of those seen so far make a staircase, and a point
 * that lies above it is bettered: n log n operations for two numbers, and for three as long as the staircase is short.
 *
 * @validity points of two or three finite numbers; equal points do not better each other, so that all of them stay
 * @neglects nothing
 * @returns the places of the points of the front in the list, in rising order
 * @throws InputError `not-finite`, `inconsistent`
 * @source kung1975 §2 (maxima of a set of vectors)
 * @example tradeOffFront([[30, 40], [25, 60], [35, 50]]) // [0, 1]: 35 Hz in 50 L is bettered by 30 Hz in 40 L
 */
export function tradeOffFront(points: readonly (readonly number[])[]): readonly number[] {
  refuse(faultsOf(points));
  const order = [...points.keys()].sort((a, b) => {
    const [p, q] = [points[a]!, points[b]!];
    return p[0]! - q[0]! || p[1]! - q[1]! || (p[2] ?? 0) - (q[2] ?? 0);
  });
  /** Points whose second numbers rise and whose third numbers fall. */
  const steps: (readonly number[])[] = [];
  const front = order.filter((i) => {
    const point = points[i]!;
    const [, second = 0, third = 0] = point;
    const below = lastUpTo(steps, second);
    const step = steps[below];
    if (step !== undefined && (step[2] ?? 0) <= third) return step.every((number, k) => number === point[k]);
    const from = step !== undefined && step[1] === second ? below : below + 1;
    let to = from;
    while (to < steps.length && (steps[to]![2] ?? 0) >= third) to++;
    steps.splice(from, to - from, point);
    return true;
  });
  return front.sort((a, b) => a - b);
}
