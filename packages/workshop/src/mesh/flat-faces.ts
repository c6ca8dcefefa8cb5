import type { Facet } from './depth-order.js';

/** Corners that are farther out of a plane are not in it, m. */
const THICKNESS = 1e-8;

/** Joins pairs of triangles that form a flat face of four corners: half as many faces to sort and to write. */
export function merged(facets: readonly Facet[]): readonly Facet[] {
  const waiting = new Map<string, number>();
  const found: (Facet | undefined)[] = [];
  for (const facet of facets) {
    let joined: Facet | undefined;
    for (let side = 0; side < 3 && joined === undefined; side++) {
      const key = keyOf(facet.points[(side + 1) % 3]!, facet.points[side]!);
      const other = waiting.get(key);
      const partner = other === undefined ? undefined : found[other];
      if (partner?.points.length !== 3) continue;
      joined = together(facet, side, partner);
      if (joined !== undefined) found[other!] = undefined;
    }
    if (joined === undefined)
      facet.points.forEach((from, i) => waiting.set(keyOf(from, facet.points[(i + 1) % 3]!), found.length));
    found.push(joined ?? facet);
  }
  return found.filter((facet) => facet !== undefined);
}

const keyOf = (from: readonly number[], to: readonly number[]): string => `${from.join()} ${to.join()}`;

/** A triangle and its neighbour beyond one of its sides, if that leaves a flat face without a corner that points inwards. */
function together({ points, edges, source }: Facet, side: number, neighbour: Facet): Facet | undefined {
  const [a, b, c] = [0, 1, 2].map((i) => points[(side + i) % 3]!) as [Seen, Seen, Seen];
  const opposite = neighbour.points.findIndex((p) => distance(p, a) > 0 && distance(p, b) > 0);
  const d = neighbour.points[opposite]!;
  const normal = cross(a, b, c);
  const size = Math.hypot(...normal);
  const height = ((d[0] - a[0]) * normal[0] + (d[1] - a[1]) * normal[1] + (d[2] - a[2]) * normal[2]) / size;
  if (!(Math.abs(height) < THICKNESS)) return undefined;
  const corners = [a, d, b, c];
  const convex = corners.every((corner, i) => {
    const turn = cross(corner, corners[(i + 1) % 4]!, corners[(i + 2) % 4]!);
    return turn[0] * normal[0] + turn[1] * normal[1] + turn[2] * normal[2] > 0;
  });
  if (!convex) return undefined;
  // The neighbour runs along the common side from b to a.
  const sharp = [neighbour.edges[(opposite + 2) % 3]!, neighbour.edges[opposite]!];
  return { points: corners, edges: [...sharp, edges[(side + 1) % 3]!, edges[(side + 2) % 3]!], source };
}

type Seen = Facet['points'][number];

const distance = (a: Seen, b: Seen): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function cross(a: Seen, b: Seen, c: Seen): Seen {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}
