import { refuse } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import { areaOf, type Outline, type PlanePoint } from '../outline/index.js';
import type { CentreLine, Frame } from './centre-line.js';
import { triangulated } from './triangulate.js';

/** A hole along the centre line, through a wall that stands across it. */
export interface Bore {
  /** Middle, on the axes of the cross-section, m. */
  readonly at: PlanePoint;
  /** Offset of the middle, as in the profile. */
  readonly offset: number;
  /** Positions along the centre line, from one face of the wall to the other, with the radius at each. */
  readonly radii: readonly (readonly [along: number, radius: number])[];
  /** Sides of the polygon that stands for its circle. */
  readonly sides: number;
}

/** A solid with one closed cross-section of its wall, led along a centre line around it. */
export interface Swept {
  /** The wall, cut open along the centre line: position along it and offset, m. */
  readonly profile: Outline;
  /** Closed line around the centre line at an offset, counter-clockwise, with the same number of points at each. */
  readonly around: (offset: number) => readonly PlanePoint[];
  readonly line: CentreLine;
  /** Greatest angle of a step through a bend, rad. */
  readonly step: number;
  readonly bores?: readonly Bore[];
}

/** A circle as a polygon of the same area, so that each slice of a solid has the area that was asked for. */
export function circleOf(radius: number, sides: number, middle: PlanePoint = [0, 0]): readonly PlanePoint[] {
  const grown = radius * Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));
  return Array.from({ length: sides }, (_, i) => {
    const angle = (2 * Math.PI * i) / sides;
    return [middle[0] + grown * Math.cos(angle), middle[1] + grown * Math.sin(angle)] as const;
  });
}

/** The surface of a swept solid. No wall is cut by another, so that each corner is made once and shared. */
export function sweptMesh({ profile, around, line, step, bores = [] }: Swept): Mesh {
  // Clockwise on (along, offset), the surface lies outwards of each side of the profile.
  const turning = areaOf(profile) > 0 ? [...profile].reverse() : profile;
  const stations = inBends(turning, line, step);
  refuseTooMany(2 * stations.length * around(0).length);
  const corners: number[] = [];
  const triangles: number[] = [];
  const add = ([x, y]: PlanePoint, { origin, x: across, y: up }: Frame) => {
    for (let axis = 0; axis < 3; axis++) corners.push(origin[axis]! + x * across[axis]! + y * up[axis]!);
    return corners.length / 3 - 1;
  };
  const rings = stations.map(([along, offset]) => {
    const frame = line.frame(along);
    const points = around(offset);
    const onAxis = points.every(([x, y]) => x === 0 && y === 0);
    const ring = onAxis ? [points[0]!] : points;
    return { along, offset, points: ring, first: corners.length / 3, count: ring.map((p) => add(p, frame)).length };
  });
  const holes = bores.map(({ at, offset, radii, sides }) => ({
    offset,
    rings: radii.map(([along, radius]) => {
      const frame = line.frame(along);
      const points = circleOf(radius, sides, at);
      return { along, points, first: corners.length / 3, count: points.map((p) => add(p, frame)).length };
    }),
  }));
  for (const [i, ring] of rings.entries()) {
    const next = rings[(i + 1) % rings.length]!;
    const inIt = holes.flatMap((hole) => {
      if (Math.abs(ring.along - next.along) > NANOMETRE) return [];
      if ((hole.offset - ring.offset) * (hole.offset - next.offset) > 0) return [];
      return hole.rings.filter(({ along }, end) => {
        const outermost = end === 0 || end === hole.rings.length - 1;
        return outermost && Math.abs(along - ring.along) <= NANOMETRE;
      });
    });
    if (inIt.length === 0) band(triangles, ring, next);
    else faceWithHoles(triangles, ring, next, inIt);
  }
  for (const hole of holes)
    for (let i = 1; i < hole.rings.length; i++) {
      // The wall of a hole looks to its middle.
      const [one, other] = [hole.rings[i - 1]!, hole.rings[i]!];
      if (one.along < other.along) band(triangles, other, one);
      else band(triangles, one, other);
    }
  return withoutStrays(corners, triangles);
}

/** A file of more triangles is larger than programs that prepare prints can handle. */
const MOST = 2e6;

function refuseTooMany(triangles: number): void {
  if (triangles <= MOST) return;
  const expected = `a solid of at most ${MOST} triangles; this one would have about ${triangles}`;
  refuse([{ code: 'out-of-range', path: 'fineness', got: triangles, expected, remedy: 'Give a coarser fineness.' }]);
}

/** Leaves out corners of no triangle: the middle of a face that has holes. */
function withoutStrays(corners: readonly number[], triangles: readonly number[]): Mesh {
  const places = new Int32Array(corners.length / 3).fill(-1);
  for (const corner of triangles) places[corner] = 0;
  let kept = 0;
  for (let i = 0; i < places.length; i++) if (places[i] === 0) places[i] = kept++;
  return {
    corners: Float64Array.from(corners.filter((_, i) => places[Math.floor(i / 3)]! >= 0)),
    triangles: Uint32Array.from(triangles, (corner) => places[corner]!),
  };
}

interface Ring {
  readonly points: readonly PlanePoint[];
  readonly first: number;
  readonly count: number;
}

/** Triangles between two rings; one of them may be a single point. */
function band(triangles: number[], one: Ring, other: Ring): void {
  const sides = Math.max(one.count, other.count);
  if (sides === 1) return;
  for (let k = 0; k < sides; k++) {
    const [a, b] = [one.first + (k % one.count), one.first + ((k + 1) % one.count)];
    const [c, d] = [other.first + (k % other.count), other.first + ((k + 1) % other.count)];
    if (one.count > 1) triangles.push(a, b, c);
    if (other.count > 1) triangles.push(b, d, c);
  }
}

/** Triangles of a flat face between two rings, with holes in it. */
function faceWithHoles(
  triangles: number[],
  one: Ring & { readonly offset: number },
  other: Ring & { readonly offset: number },
  holes: readonly Ring[],
): void {
  const [outer, inner] = one.offset > other.offset ? [one, other] : [other, one];
  const inside = [...(inner.count > 1 ? [inner] : []), ...holes];
  const places = [outer, ...inside].flatMap(({ first, count }) => Array.from({ length: count }, (_, i) => first + i));
  const found = triangulated(
    outer.points,
    inside.map(({ points }) => points),
  );
  const outwards = one.offset > other.offset;
  for (let t = 0; t < found.length; t += 3) {
    const [a, b, c] = [places[found[t]!]!, places[found[t + 1]!]!, places[found[t + 2]!]!];
    triangles.push(a, outwards ? b : c, outwards ? c : b);
  }
}

/** Adds stations to the sides of a profile that run through bends. */
function inBends(profile: Outline, { arcs }: CentreLine, step: number): Outline {
  const stations = arcs.flatMap(({ from, to, angle }) => {
    const count = Math.max(1, Math.ceil(angle / step));
    return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  });
  if (stations.length === 0) return profile;
  return profile.flatMap((point, i) => {
    const [along, offset] = point;
    const [nextAlong, nextOffset] = profile[(i + 1) % profile.length]!;
    const between = stations
      .filter(
        (at) =>
          (at - along) * (at - nextAlong) < 0 && Math.min(Math.abs(at - along), Math.abs(at - nextAlong)) > NANOMETRE,
      )
      .sort((one, other) => (along < nextAlong ? one - other : other - one));
    const at = (position: number) => offset + ((nextOffset - offset) * (position - along)) / (nextAlong - along);
    return [point, ...between.map((position) => [position, at(position)] as const)];
  });
}
