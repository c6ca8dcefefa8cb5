import { doubleAreaOf, type Mesh } from './mesh.js';

/** Cosine of the angle between two triangles whose common side is drawn as an edge: sides of circles are flatter. */
const SHARP = Math.cos(Math.PI / 6);

/**
 * Which sides of the triangles of a projected solid are edges of it: 1 for the side from each place in the list of triangles to
 * the next. An edge is where the surface turns sharply, or turns away from the viewer.
 */
export function sharpSides(mesh: Mesh): Uint8Array {
  const { corners, triangles } = mesh;
  const count = corners.length / 3;
  const places = new Map<number, number>();
  for (let i = 0; i < triangles.length; i++) places.set(triangles[i]! * count + triangles[next(i)]!, i);
  const sharp = new Uint8Array(triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    const normal = doubleAreaOf(mesh, i - (i % 3));
    const other = places.get(triangles[next(i)]! * count + triangles[i]!);
    if (other === undefined) continue;
    const beyond = doubleAreaOf(mesh, other - (other % 3));
    const cosine = normal[0] * beyond[0] + normal[1] * beyond[1] + normal[2] * beyond[2];
    if (beyond[2] <= 0 || cosine < SHARP * Math.hypot(...normal) * Math.hypot(...beyond)) sharp[i] = 1;
  }
  return sharp;
}

/** The next place in the list of a triangle. */
const next = (i: number): number => (i % 3 === 2 ? i - 2 : i + 1);
