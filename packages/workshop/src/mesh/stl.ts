import { doubleAreaOf, type Mesh } from './mesh.js';
import { MILLIMETRES } from './single-precision.js';

/** Bytes before the triangles, and bytes of each of them. */
const [HEAD, EACH] = [84, 50];

/**
 * A solid as a binary STL file in millimetres, which programs that prepare prints read. The same solid gives the same bytes.
 *
 * @validity fewer than 2³² triangles; check the surface by {@link meshFaults} first
 * @source own derivation: the binary STL format: a head of 80 bytes, the number of triangles, then normal and corners of each, little-endian
 * @example writeFileSync('vent.stl', stl(part.mesh))
 */
export function stl(mesh: Mesh): Uint8Array {
  const { corners, triangles } = mesh;
  const bytes = new Uint8Array(HEAD + (EACH * triangles.length) / 3);
  const view = new DataView(bytes.buffer);
  // A file that began with the word 'solid' would be taken for one of text.
  for (const [i, sign] of [...'binary STL, millimetres'].entries()) bytes[i] = sign.charCodeAt(0);
  view.setUint32(80, triangles.length / 3, true);
  let at = HEAD;
  const put = (value: number) => {
    view.setFloat32(at, value, true);
    at += 4;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const normal = doubleAreaOf(mesh, t);
    const size = Math.hypot(...normal) || 1;
    for (const component of normal) put(component / size);
    for (let i = t; i < t + 3; i++) {
      const corner = 3 * triangles[i]!;
      for (let axis = 0; axis < 3; axis++) put(corners[corner + axis]! * MILLIMETRES + 0);
    }
    at += 2;
  }
  return bytes;
}
