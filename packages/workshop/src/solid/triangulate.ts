import { areaOf, type PlanePoint } from '../outline/index.js';

/**
 * Cuts a figure with holes into triangles. Each corner of the figure and of its holes is a corner of triangles, and no other
 * point is. Corners are given by their place in the list of the figure's corners, then of the first hole's, and so on. Triangles
 * run counter-clockwise.
 *
 * Each hole is joined to the figure by two sides that coincide, and corners that stick out are then cut off one by one.
 */
export function triangulated(figure: readonly PlanePoint[], holes: readonly (readonly PlanePoint[])[]): number[] {
  const points = [...figure, ...holes.flat()];
  let loop = ordered(figure, 0, true);
  let first = figure.length;
  const loops = holes.map((hole) => {
    const own = ordered(hole, first, false);
    first += hole.length;
    return own;
  });
  // Holes to the right first: the shortest way from the others to the figure may lead through them.
  const rightmost = (corners: readonly number[]) =>
    corners.reduce((best, corner) => (points[corner]![0] > points[best]![0] ? corner : best));
  const waiting = loops.sort((one, other) => points[rightmost(other)]![0] - points[rightmost(one)]![0]);
  for (const [i, hole] of waiting.entries()) loop = bridged(points, loop, hole, waiting.slice(i), rightmost(hole));
  return cutOff(points, loop);
}

/** The places of the corners of a figure, counter-clockwise or clockwise. */
function ordered(figure: readonly PlanePoint[], first: number, counterClockwise: boolean): number[] {
  const places = figure.map((_, i) => first + i);
  return areaOf(figure) > 0 === counterClockwise ? places : places.reverse();
}

/** Twice the area of a triangle, above zero where it runs counter-clockwise. */
const side = (a: PlanePoint, b: PlanePoint, c: PlanePoint): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Joins a hole by the shortest way that crosses nothing. */
function bridged(
  points: readonly PlanePoint[],
  loop: readonly number[],
  hole: readonly number[],
  holes: readonly (readonly number[])[],
  from: number,
): number[] {
  const start = points[from]!;
  const distance = (corner: number) => Math.hypot(points[corner]![0] - start[0], points[corner]![1] - start[1]);
  const free = (corner: number) =>
    ![loop, ...holes].some((figure) =>
      figure.some((a, i) => crosses(start, points[corner]!, points[a]!, points[figure[(i + 1) % figure.length]!]!)),
    );
  const to = loop
    .map((_, i) => i)
    .sort((i, j) => distance(loop[i]!) - distance(loop[j]!))
    .find((i) => free(loop[i]!))!;
  const turn = hole.indexOf(from);
  return [...loop.slice(0, to + 1), ...hole.slice(turn), ...hole.slice(0, turn + 1), ...loop.slice(to)];
}

/** Whether two sides cross that share no corner. */
const crosses = (a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean =>
  a !== c &&
  a !== d &&
  b !== c &&
  b !== d &&
  side(a, b, c) > 0 !== side(a, b, d) > 0 &&
  side(c, d, a) > 0 !== side(c, d, b) > 0;

/** Cuts corners off until a triangle is left. */
function cutOff(points: readonly PlanePoint[], loop: number[]): number[] {
  const triangles: number[] = [];
  const left = [...loop];
  let at = 0;
  for (let tries = 0; left.length > 3 && tries < left.length; ) {
    const [before, corner, after] = [-1, 0, 1].map((by) => left[(at + by + left.length) % left.length]!);
    if (sticksOut(points, left, before!, corner!, after!)) {
      triangles.push(before!, corner!, after!);
      left.splice(at % left.length, 1);
      // The next corner but one: triangles that all met in one corner would be long and thin.
      at = (at + 1) % left.length;
      tries = 0;
    } else {
      at = (at + 1) % left.length;
      tries++;
    }
  }
  triangles.push(...left);
  return triangles;
}

function sticksOut(
  points: readonly PlanePoint[],
  left: readonly number[],
  before: number,
  corner: number,
  after: number,
): boolean {
  const [a, b, c] = [points[before]!, points[corner]!, points[after]!];
  if (!(side(a, b, c) > 0)) return false;
  return !left.some((other) => {
    const p = points[other]!;
    if (p === a || p === b || p === c) return false;
    return side(a, b, p) >= 0 && side(b, c, p) >= 0 && side(c, a, p) >= 0;
  });
}
