/** A point as the viewer sees it: to the right, up, and towards the viewer, m. */
type Seen = readonly [right: number, up: number, near: number];

/** A flat piece of a surface that the viewer sees from its outer side. */
export interface Facet {
  readonly points: readonly Seen[];
  /** Of each side, from its point to the next: whether the surface has an edge there. */
  readonly edges: readonly boolean[];
  /** Which triangle it is a piece of. */
  readonly source: number;
}

/** A plane: a normal and its distance from the origin along it. */
type Plane = readonly [nx: number, ny: number, nz: number, distance: number];

/** Points nearer to a plane lie in it, m. */
const THICKNESS = 1e-8;

/**
 * Facets in an order in which each may be painted over those before it. Space is divided in two by the plane of one facet, then
 * each half again; a facet that lies in both halves is cut. Of two halves, that of the viewer is painted last.
 */
export function inDepthOrder(facets: readonly Facet[]): readonly Facet[] {
  const painted: Facet[] = [];
  // Work that is left, the next piece last: facets to divide, or facets of one plane to paint.
  const work: { readonly facets: readonly Facet[]; readonly flat: boolean }[] = [{ facets, flat: false }];
  while (work.length > 0) {
    const { facets: some, flat } = work.pop()!;
    if (flat || some.length < 2) {
      for (const facet of some) painted.push(facet);
      continue;
    }
    const plane = planeOf(some[Math.floor(some.length / 2)]!.points);
    const [behind, within, before]: [Facet[], Facet[], Facet[]] = [[], [], []];
    for (const facet of some) divide(facet, plane, behind, within, before);
    // Facets face the viewer, so the viewer is on the outer side of every plane.
    work.push({ facets: before, flat: false }, { facets: within, flat: true }, { facets: behind, flat: false });
  }
  return painted;
}

function planeOf(points: Facet['points']): Plane {
  const [a, b, c] = [points[0]!, points[1]!, points[2]!];
  const from = (p: Seen): Seen => [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  const [u, v] = [from(b), from(c)];
  const normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
  const size = Math.hypot(...normal) || 1;
  const [x, y, z] = [normal[0] / size, normal[1] / size, normal[2] / size];
  return [x, y, z, x * a[0] + y * a[1] + z * a[2]];
}

/** Whether two faces lie in one plane. */
export function sharePlane(one: Facet['points'], other: Facet['points']): boolean {
  const [nx, ny, nz, distance] = planeOf(one);
  return other.every(([x, y, z]) => Math.abs(nx * x + ny * y + nz * z - distance) <= THICKNESS);
}

function divide(facet: Facet, plane: Plane, behind: Facet[], within: Facet[], before: Facet[]): void {
  const { points } = facet;
  const heights = points.map(([x, y, z]) => plane[0] * x + plane[1] * y + plane[2] * z - plane[3]);
  const above = heights.some((height) => height > THICKNESS);
  const below = heights.some((height) => height < -THICKNESS);
  if (!above) (below ? behind : within).push(facet);
  else if (!below) before.push(facet);
  else {
    behind.push(kept(facet, heights, -1));
    before.push(kept(facet, heights, 1));
  }
}

/** The part of a convex figure on one side of a plane. The side along the plane is no edge of the surface. */
function kept({ points, edges, source }: Facet, heights: readonly number[], sign: 1 | -1): Facet {
  const within: Seen[] = [];
  const sharp: boolean[] = [];
  const put = (point: Seen, edge: boolean) => {
    within.push(point);
    sharp.push(edge);
  };
  for (const [i, point] of points.entries()) {
    const next = (i + 1) % points.length;
    const [height, other] = [sign * heights[i]!, sign * heights[next]!];
    const crosses = height >= 0 !== other >= 0 && Math.abs(height) > THICKNESS && Math.abs(other) > THICKNESS;
    if (height >= -THICKNESS) put(point, edges[i]! && (crosses || other >= -THICKNESS));
    if (!crosses) continue;
    const part = height / (height - other);
    const towards = points[next]!;
    const along = (axis: 0 | 1 | 2) => point[axis] + part * (towards[axis] - point[axis]);
    put([along(0), along(1), along(2)], height < 0 && edges[i]!);
  }
  return { points: within, edges: sharp, source };
}
