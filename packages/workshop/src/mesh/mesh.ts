/** The surface of a solid as triangles, in metres. Seen from outside the corners of each triangle run counter-clockwise. */
export interface Mesh {
  /** Corners: x, y, z of the first, then of the second, and so on. */
  readonly corners: Float64Array;
  /** Three corners a triangle, each given by its place in `corners` divided by three. */
  readonly triangles: Uint32Array;
}

/** A solid with its name, which stands in its files. */
export interface Part {
  readonly name: string;
  readonly mesh: Mesh;
}

/**
 * The volume that a closed surface encloses: the sum of the tetrahedra between its triangles and the origin.
 *
 * $$V = \tfrac16 \sum \mathbf a \cdot (\mathbf b \times \mathbf c)$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $\mathbf a$, $\mathbf b$, $\mathbf c$ | m | corners of a triangle |
 *
 * @validity closed surfaces whose triangles all look outwards
 * @source own derivation: the divergence theorem on a surface of triangles
 * @example volumeOf(tetrahedron) // 1 / 6 for corners at the origin and one metre along each axis
 */
export function volumeOf({ corners, triangles }: Mesh): number {
  let sixfold = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ax, ay, az] = [corners[a]!, corners[a + 1]!, corners[a + 2]!];
    const [bx, by, bz] = [corners[b]!, corners[b + 1]!, corners[b + 2]!];
    const [cx, cy, cz] = [corners[c]!, corners[c + 1]!, corners[c + 2]!];
    sixfold += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sixfold / 6;
}

/**
 * The area of a surface of triangles.
 *
 * $$A = \tfrac12 \sum |(\mathbf b - \mathbf a) \times (\mathbf c - \mathbf a)|$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $\mathbf a$, $\mathbf b$, $\mathbf c$ | m | corners of a triangle |
 *
 * @validity any surface, closed or open
 * @source own derivation: the area of a triangle by the cross product of two sides
 * @example surfaceOf(tetrahedron) // (3 + √3) / 2 for corners at the origin and one metre along each axis
 */
export function surfaceOf(mesh: Mesh): number {
  let twice = 0;
  for (let t = 0; t < mesh.triangles.length; t += 3) twice += Math.hypot(...doubleAreaOf(mesh, t));
  return twice / 2;
}

/** The normal of a triangle, outwards, as long as twice its area, m². `first` is the place of its first corner in `triangles`. */
export function doubleAreaOf({ corners, triangles }: Mesh, first: number): [number, number, number] {
  const [a, b, c] = [3 * triangles[first]!, 3 * triangles[first + 1]!, 3 * triangles[first + 2]!];
  const [ax, ay, az] = [corners[a]!, corners[a + 1]!, corners[a + 2]!];
  const [ux, uy, uz] = [corners[b]! - ax, corners[b + 1]! - ay, corners[b + 2]! - az];
  const [vx, vy, vz] = [corners[c]! - ax, corners[c + 1]! - ay, corners[c + 2]! - az];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}
