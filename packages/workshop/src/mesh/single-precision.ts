import type { Mesh } from './mesh.js';

/** Millimetres of a metre: files for printers are written in them. */
export const MILLIMETRES = 1000;

/** A surface as a file for printers holds it. */
export interface Written {
  /** Coordinates in mm, in single precision. */
  readonly corners: Float32Array;
  /** Corners at the same place have one number, as a reader of the file finds them. */
  readonly triangles: Uint32Array;
}

/** Rounds a surface to millimetres in single precision, and joins the corners that this leaves at one place. */
export function inSinglePrecision({ corners, triangles }: Mesh): Written {
  const written = new Float32Array(corners.length);
  // Zero is added so that no coordinate is a negative zero, which has other bits.
  for (let i = 0; i < corners.length; i++) written[i] = corners[i]! * MILLIMETRES + 0;
  const bits = new Uint32Array(written.buffer);
  const count = corners.length / 3;
  const first = new Uint32Array(count);
  let size = 16;
  while (size < 2 * count) size *= 2;
  const table = new Int32Array(size).fill(-1);
  for (let corner = 0; corner < count; corner++) {
    const [x, y, z] = [bits[3 * corner]!, bits[3 * corner + 1]!, bits[3 * corner + 2]!];
    let slot = (Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35)) >>> 0;
    slot = (slot ^ (slot >>> 15)) & (size - 1);
    for (; ; slot = (slot + 1) & (size - 1)) {
      const other = table[slot]!;
      if (other < 0) {
        table[slot] = corner;
        first[corner] = corner;
        break;
      }
      if (bits[3 * other] === x && bits[3 * other + 1] === y && bits[3 * other + 2] === z) {
        first[corner] = other;
        break;
      }
    }
  }
  return { corners: written, triangles: triangles.map((corner) => first[corner]!) };
}
