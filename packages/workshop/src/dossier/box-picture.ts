import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { type Mesh, preview } from '../mesh/index.js';
import { clearanceAt, type PlanePoint } from '../outline/index.js';
import { axisOf, isFar } from '../panel/box-edges.js';
import { planeOf } from '../panel/plane.js';
import { axesOf } from '../shape/box-shape.js';
import { triangulated } from '../solid/triangulate.js';
import type { WorkHole } from './hole.js';
import { isInside } from './inside-boards.js';
import { figure } from './markup.js';
import type { WorkBox } from './work.js';

/** A place by width, height and depth, m. */
type Place = readonly [number, number, number];

/** Sides of the polygon that a round hole is shown as. */
const SIDES = 48;
/** Wide enough for a page, beside each other. */
const WIDE = 330;

/** A surface that grows by flat figures; a corner that several share is one. */
function growing() {
  const places: number[] = [];
  const triangles: number[] = [];
  const known = new Map<string, number>();
  const cornerAt = ([width, height, depth]: Place): number => {
    const key = [width, height, depth].map((at) => Math.round(at / NANOMETRE)).join();
    const at = known.get(key) ?? known.size;
    // The bed of the picture is width and depth.
    if (!known.has(key)) places.push(width, depth, height);
    known.set(key, at);
    return at;
  };
  return {
    /** A flat figure with holes, of which one side looks towards a place far away in a direction. */
    flat(
      figureOf: readonly PlanePoint[],
      holes: readonly (readonly PlanePoint[])[],
      at: (point: PlanePoint) => Place,
      outwards: Place,
    ) {
      const corners = [...figureOf, ...holes.flat()].map(at);
      const own = triangulated(figureOf, holes);
      const [a, b, c] = own.slice(0, 3).map((i) => corners[i]!) as [Place, Place, Place];
      const isTurned = facing(a, b, c, outwards) < 0;
      for (let i = 0; i < own.length; i += 3) {
        const [one, two, three] = [own[i]!, own[i + 1]!, own[i + 2]!].map((k) => cornerAt(corners[k]!));
        triangles.push(one!, isTurned ? three! : two!, isTurned ? two! : three!);
      }
    },
    mesh: (): Mesh => ({ corners: Float64Array.from(places), triangles: Uint32Array.from(triangles) }),
  };
}

/** Above zero where a triangle looks along a direction: in the picture depth comes before height. */
function facing(a: Place, b: Place, c: Place, [outX, outY, outZ]: Place): number {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return -((uy * vz - uz * vy) * outX + (uz * vx - ux * vz) * outY + (ux * vy - uy * vx) * outZ);
}

/** The edge of a hole in its face, from the left, bottom and front outer edges of the box. */
function edgeOf(hole: WorkHole): readonly PlanePoint[] {
  const [across, up] = [hole.across + (hole.board?.from?.[0] ?? 0), hole.up + (hole.board?.from?.[1] ?? 0)];
  if (hole.form === 'circle') {
    return Array.from({ length: SIDES }, (_, i): PlanePoint => {
      const angle = (2 * Math.PI * i) / SIDES;
      return [across + (hole.diameter / 2) * Math.cos(angle), up + (hole.diameter / 2) * Math.sin(angle)];
    });
  }
  const [x, y] = hole.sides.map((size) => size / 2) as [number, number];
  return [
    [across - x, up - y],
    [across + x, up - y],
    [across + x, up + y],
    [across - x, up + y],
  ];
}

/** A box that is no cuboid as it is seen from outside, with its holes as deep as its panels are thick. */
export function outsideOf({ prisms, holes, outer, thickness }: WorkBox & Required<Pick<WorkBox, 'prisms'>>): Mesh {
  const [across, up, along] = axesOf[prisms.along];
  const edges = [outer.width, outer.height, outer.depth];
  const surface = growing();
  const placed = (point: PlanePoint, at: number): Place => {
    const place = [0, 0, 0] as [number, number, number];
    [place[across!], place[up!], place[along!]] = [point[0], point[1], at];
    return place;
  };
  const open = holes.filter((hole) => !isInside(hole)).map((hole) => ({ face: hole.face, edge: edgeOf(hole) }));
  /** A figure that lies on a face of the cuboid, with the holes in it and their walls. */
  const onFace = (face: Face, corners: readonly Place[]) => {
    const [one, other] = planeOf(face).axes;
    const axis = axisOf(face);
    const [level, inwards] = isFar(face) ? [edges[axis]!, -1] : [0, 1];
    const at =
      (depth: number) =>
      (point: PlanePoint): Place => {
        const place = [0, 0, 0] as [number, number, number];
        [place[one], place[other], place[axis]] = [point[0], point[1], level + inwards * depth];
        return place;
      };
    const out = [0, 0, 0] as [number, number, number];
    out[axis] = -inwards;
    const own = corners.map((place): PlanePoint => [place[one]!, place[other]!]);
    const through = open
      .filter((hole) => hole.face === face && hole.edge.every((point) => clearanceAt(own, point) > 0))
      .map(({ edge }) => edge);
    surface.flat(own, through, at(0), out);
    for (const edge of through) {
      surface.flat(edge, [], at(thickness), out);
      const middle = [0, 1].map((k) => edge.reduce((sum, point) => sum + point[k]!, 0) / edge.length);
      edge.forEach((from, i) => {
        const to = edge[(i + 1) % edge.length]!;
        const towards = [0, 0, 0] as [number, number, number];
        [towards[one], towards[other]] = [middle[0]! - (from[0] + to[0]) / 2, middle[1]! - (from[1] + to[1]) / 2];
        const wall = [at(0)(from), at(0)(to), at(thickness)(to), at(thickness)(from)];
        surface.flat(SQUARE, [], (point) => wall[SQUARE.indexOf(point)]!, towards);
      });
    }
  };
  for (const [i, { outline, from, to }] of prisms.layers.entries()) {
    for (const [end, face] of [
      [from, i === 0 ? faces[2 * along!] : undefined],
      [to, i === prisms.layers.length - 1 ? faces[2 * along! + 1] : undefined],
    ] as const) {
      if (face)
        onFace(
          face,
          outline.map((point) => placed(point, end)),
        );
      else surface.flat(outline, [], (point) => placed(point, end), placed([0, 0], end === from ? -1 : 1));
    }
    outline.forEach((start, side) => {
      const stop = outline[(side + 1) % outline.length]!;
      const corners = [placed(start, from), placed(stop, from), placed(stop, to), placed(start, to)];
      const face = faces.find((one) => {
        const axis = axisOf(one);
        return (
          axis !== along && corners.every((at) => Math.abs(at[axis]! - (isFar(one) ? edges[axis]! : 0)) < NANOMETRE)
        );
      });
      if (face) onFace(face, corners);
      // Counter-clockwise the outside of a side lies to its right.
      else
        surface.flat(
          SQUARE,
          [],
          (point) => corners[SQUARE.indexOf(point)]!,
          placed([stop[1] - start[1], start[0] - stop[0]], 0),
        );
    });
  }
  return surface.mesh();
}

/** Corners of any four-sided figure, in its own plane. */
const SQUARE: readonly PlanePoint[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

/** A box that is no cuboid, from in front and from behind; empty for a cuboid. */
export function boxPicture(box: WorkBox): string {
  if (box.prisms === undefined) return '';
  const mesh = outsideOf({ ...box, prisms: box.prisms });
  const seen = [
    ['The box from in front, from the right and above', -Math.PI / 2 + 0.55, 0.4],
    ['The box from behind, from the left and above', Math.PI / 2 + 0.55, 0.4],
  ] as const;
  const views = seen.map(([title, azimuth, elevation]) => preview(mesh, { title, azimuth, elevation, size: WIDE }));
  return figure(
    `<div class="pair">${views.join('')}</div>`,
    'The box from in front, and from behind on the other side. Holes are shown as deep as the panel is thick.',
  );
}
