/** The clear way through a solid, measured by slices of its triangles, and the line that its air is. None of it is our code. */
import type { Mesh } from '@airspring/workshop/mesh';

type Point = readonly [number, number, number];
/** A place on a centre line, and its direction there. */
export interface Place {
  readonly at: Point;
  readonly along: Point;
}

/** A straight line up, bent towards x by an angle after a leg. */
export const centreLine =
  (leg = Infinity, radius = 1, angle = 0) =>
  (s: number): Place => {
    if (s <= leg) return { at: [0, 0, s], along: [0, 0, 1] };
    const turned = Math.min((s - leg) / radius, angle);
    const on = s - leg - turned * radius;
    const [sin, cos] = [Math.sin(turned), Math.cos(turned)];
    return { at: [radius * (1 - cos) + on * sin, 0, leg + radius * sin + on * cos], along: [sin, 0, cos] };
  };

/** A side of the figure in which a plane cuts a solid, seen from a place in the plane, and whether its wall looks to that place. */
interface Side {
  readonly ends: readonly [Point, Point];
  readonly inner: boolean;
}

/** The sides of that figure: one for each triangle that is cut. */
function cut({ corners, triangles }: Mesh, { at, along }: Place): Side[] {
  const sides: Side[] = [];
  const above = new Uint8Array(corners.length / 3);
  for (let i = 0; i < above.length; i++) {
    const [x, y, z] = [corners[3 * i]! - at[0], corners[3 * i + 1]! - at[1], corners[3 * i + 2]! - at[2]];
    above[i] = Number(x * along[0] + y * along[1] + z * along[2] >= 0);
  }
  const corner = (i: number): Point => [0, 1, 2].map((k) => corners[3 * i + k]! - at[k]!) as unknown as Point;
  for (let t = 0; t < triangles.length; t += 3) {
    // Most triangles lie on one side of the plane.
    const sum = above[triangles[t]!]! + above[triangles[t + 1]!]! + above[triangles[t + 2]!]!;
    if (sum === 0 || sum === 3) continue;
    const points = [corner(triangles[t]!), corner(triangles[t + 1]!), corner(triangles[t + 2]!)] as const;
    const heights = points.map((p) => dot(p, along));
    const ends: Point[] = [];
    for (let k = 0; k < 3; k++) {
      const [h, next] = [heights[k]!, heights[(k + 1) % 3]!];
      if (h >= 0 === next >= 0) continue;
      const [p, q] = [points[k]!, points[(k + 1) % 3]!];
      const part = h / (h - next);
      ends.push([p[0] + part * (q[0] - p[0]), p[1] + part * (q[1] - p[1]), p[2] + part * (q[2] - p[2])]);
    }
    if (ends.length < 2) continue;
    const normal = cross(minus(points[1], points[0]), minus(points[2], points[0]));
    sides.push({ ends: ends as [Point, Point], inner: dot(ends[0]!, normal) < 0 });
  }
  return sides;
}

/** Area of the hole around a place: half the sum of |p × q| over its inner sides. What lies beyond `reach` is of another leg. */
export function holeAt(mesh: Mesh, place: Place, reach: number): number {
  const inner = cut(mesh, place).filter(({ inner, ends: [p] }) => inner && Math.hypot(...p) < reach);
  return inner.reduce((twice, { ends: [p, q] }) => twice + Math.hypot(...cross(p, q)), 0) / 2;
}

/** How near the walls that look to a place come to it, and how far those go that look away, however the solid is turned. */
export function clearances(mesh: Mesh, place: Place): { readonly inner: number; readonly outer: number } {
  const sides = cut(mesh, place);
  const near = ({ ends: [p, q] }: Side) => Math.hypot(...cross(p, q)) / Math.hypot(...minus(q, p));
  return {
    inner: Math.min(...sides.filter(({ inner }) => inner).map(near)),
    outer: Math.max(...sides.filter(({ inner }) => !inner).flatMap(({ ends }) => ends.map((p) => Math.hypot(...p)))),
  };
}

/** Areas at the middles of equal steps along a centre line. */
export const holesAlong = (
  mesh: Mesh,
  line: (s: number) => Place,
  length: number,
  steps: number,
  reach: number,
): number[] => Array.from({ length: steps }, (_, i) => holeAt(mesh, line(((i + 0.5) * length) / steps), reach));

/**
 * The frequency in Hz at which a chain of lossless lines, with the air that swings beyond each of its ends, is in tune with the air
 * of a box. `ends` are lengths over areas, 1/m; c is the speed of sound. All impedances are over ρ.
 */
export function tunedByLine(
  areas: readonly number[],
  step: number,
  ends: readonly [number, number],
  volume: number,
  c: number,
): number {
  const reactance = (f: number): number => {
    const w = 2 * Math.PI * f;
    const tan = Math.tan((w * step) / c);
    // Seen from inside: the outer air, then line after line, each by jZ (X + Z tan) / (Z - X tan).
    let X = w * ends[0];
    for (const area of areas) {
      const Z = c / area;
      X = (Z * (X + Z * tan)) / (Z - X * tan);
    }
    return X + w * ends[1] - c ** 2 / (w * volume);
  };
  let [low, high] = [1, 200];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (reactance(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * Length over area, 1/m, of the air in a round mouth that opens into a wide wall, by caps of spheres that meet the wall at right
 * angles, and half spheres beyond. The radii are measured from the mouth inwards, at places from it.
 */
export function mouthByCaps(places: readonly number[], radii: readonly number[]): number {
  const caps = places.slice(1, -1).map((s, i) => {
    const angle = Math.atan2(radii[i]! - radii[i + 2]!, places[i + 2]! - places[i]!);
    const cap = radii[i + 1]! / Math.sin(angle);
    return { angle, radius: cap, middle: s + cap * Math.cos(angle) };
  });
  const [mouth] = radii;
  let mass = 1 / (2 * Math.PI * mouth!);
  for (let i = 1; i < caps.length; i++) {
    const [outer, inner] = [caps[i - 1]!, caps[i]!];
    const angle = (outer.angle + inner.angle) / 2;
    let open = 0;
    const rays = 40;
    for (let k = 0; k < rays; k++) {
      const ray = ((k + 0.5) * angle) / rays;
      const gap = outer.radius - inner.radius + (inner.middle - outer.middle) * Math.cos(ray);
      open += (2 * Math.PI * outer.radius * inner.radius * Math.sin(ray) * (angle / rays)) / gap;
    }
    mass += 1 / open;
  }
  return mass;
}
