import type { Mesh } from './mesh.js';
import { pairsThatTouch } from './pairs.js';

/** Two triangles of one surface that run through each other, each given by its number in the list. */
export type Crossing = readonly [one: number, other: number];

/** Distances below this are zero, m. */
const ZERO = 1e-11;

/**
 * Where a surface runs through itself or touches itself: pairs of triangles that share a point which is not a corner or a side of
 * both. An empty list says that the surface is that of a solid which can be printed as it is drawn.
 *
 * @validity triangles with an area, joined at shared corners, as `meshFaults` finds them
 * @source own derivation: a side of one triangle that meets the other is found by the signs of volumes of tetrahedra
 * @returns at most `most` pairs; default 100
 * @example crossings(part.mesh) // [] for every part that this package makes
 */
export function crossings(mesh: Mesh, most = 100): readonly Crossing[] {
  const found: Crossing[] = [];
  pairsThatTouch(mesh, (one, other) => {
    if (meet(mesh, 3 * one, 3 * other)) found.push([one, other]);
    return found.length < most;
  });
  return found;
}

type Point = readonly [number, number, number];

function meet({ corners, triangles }: Mesh, one: number, other: number): boolean {
  const places = [one, one + 1, one + 2, other, other + 1, other + 2].map((i) => triangles[i]!);
  const [mine, theirs] = [places.slice(0, 3), places.slice(3)];
  const point = (corner: number): Point => [corners[3 * corner]!, corners[3 * corner + 1]!, corners[3 * corner + 2]!];
  const shared = mine.filter((corner) => theirs.includes(corner));
  if (shared.length === 3) return true;
  if (shared.length === 2) return foldedBack(mine, theirs, shared, point);
  const [a, b] = [mine.map(point), theirs.map(point)];
  // Of two triangles with one common corner, only the sides opposite to it can meet the other one.
  const sides = (corners: readonly number[]) =>
    [0, 1, 2].filter((i) => !shared.includes(corners[i]!) && !shared.includes(corners[(i + 1) % 3]!));
  const open = shared.length === 1;
  return (
    sides(mine).some((i) => sideMeets(a[i]!, a[(i + 1) % 3]!, b, open)) ||
    sides(theirs).some((i) => sideMeets(b[i]!, b[(i + 1) % 3]!, a, open))
  );
}

/** Whether two triangles with a common side lie on each other. */
function foldedBack(
  mine: readonly number[],
  theirs: readonly number[],
  shared: readonly number[],
  point: (corner: number) => Point,
): boolean {
  const [from, to] = shared.map(point) as [Point, Point];
  const [p, q] = [mine, theirs].map((corners) => point(corners.find((corner) => !shared.includes(corner))!)) as [
    Point,
    Point,
  ];
  const along = less(to, from);
  const [n, m] = [cross(along, less(p, from)), cross(along, less(q, from))];
  const sine = Math.hypot(...cross(n, m));
  return dot(n, m) > 0 && sine <= ZERO * Math.hypot(...n);
}

/** Whether a side meets a triangle: with `open`, within both; otherwise their edges count as well. */
function sideMeets(from: Point, to: Point, [a, b, c]: readonly Point[], open: boolean): boolean {
  const [u, v] = [less(b!, a!), less(c!, a!)];
  const normal = cross(u, v);
  const size = Math.hypot(...normal);
  const [start, end] = [dot(less(from, a!), normal) / size, dot(less(to, a!), normal) / size];
  if (Math.abs(start) <= ZERO && Math.abs(end) <= ZERO) return meetsInPlane(from, to, [a!, b!, c!], normal, open);
  if (start * end > 0 || (open && (Math.abs(start) <= ZERO || Math.abs(end) <= ZERO))) return false;
  if (Math.min(Math.abs(start), Math.abs(end)) > ZERO && start > 0 === end > 0) return false;
  const part = start / (start - end);
  const along = (axis: 0 | 1 | 2) => from[axis] + part * (to[axis] - from[axis]);
  const at: Point = [along(0), along(1), along(2)];
  const [one, two, three] = [
    [a!, b!],
    [b!, c!],
    [c!, a!],
  ].map(([p, q]) => dot(cross(less(q!, p!), less(at, p!)), normal) / (size * Math.hypot(...less(q!, p!)))) as [
    number,
    number,
    number,
  ];
  const least = open ? ZERO : -ZERO;
  return one > least && two > least && three > least;
}

/** The same in one plane: the side starts inside, or crosses a side of the triangle. */
function meetsInPlane(from: Point, to: Point, corners: readonly Point[], normal: Point, open: boolean): boolean {
  const turn = (p: Point, q: Point, r: Point) =>
    dot(cross(less(q, p), less(r, p)), normal) / (Math.hypot(...normal) * Math.hypot(...less(q, p)));
  const least = open ? ZERO : -ZERO;
  const inside = (p: Point) => corners.every((corner, i) => turn(corner, corners[(i + 1) % 3]!, p) > least);
  if (inside(from) || inside(to)) return true;
  return corners.some((corner, i) => {
    const next = corners[(i + 1) % 3]!;
    return turn(from, to, corner) * turn(from, to, next) < 0 && turn(corner, next, from) * turn(corner, next, to) < 0;
  });
}

const less = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
