import type { Reason } from '@airspring/core/fault';
import { type Mesh, volumeOf } from './mesh.js';
import { inSinglePrecision, type Written } from './single-precision.js';

/**
 * What keeps a surface from being that of a solid, in the millimetres and single precision of the files that printers read. An
 * empty list says that it is closed, that each edge has two triangles which run along it in opposite directions, that no
 * triangle has shrunk to a line, and that it encloses a volume above zero. {@link crossings} tells whether it runs through itself.
 *
 * @validity any surface; its parts may be several
 * @source own derivation: the laws of a closed oriented surface: each edge once in each direction
 * @returns a reason for each law that it breaks: `not-finite`, `no-such-corner`, `degenerate-triangle`, `open-edge`,
 *   `edge-of-many-triangles`, `no-volume`
 * @example meshFaults(part.mesh) // [] for every part that this package makes
 */
export function meshFaults(mesh: Mesh): readonly Reason[] {
  const { corners, triangles } = mesh;
  const faults: Reason[] = [];
  const add = (code: string, count: number, text: string) => {
    if (count > 0) faults.push({ code, text: `${text}: ${count}.` });
  };
  add(
    'not-finite',
    countOf(corners, (value) => !Number.isFinite(value)),
    'Coordinates that are not finite',
  );
  add(
    'no-such-corner',
    countOf(triangles, (corner) => corner >= corners.length / 3),
    'Corners that are not in the list',
  );
  if (faults.length > 0) return faults;
  const written = inSinglePrecision(mesh);
  add('degenerate-triangle', degenerate(written), 'Triangles without an area in single precision');
  const { open, many } = edgeFaults(written);
  add('open-edge', open, 'Edges that no second triangle runs along in the other direction');
  add('edge-of-many-triangles', many, 'Edges along which several triangles run in the same direction');
  // A surface that is not closed encloses nothing.
  const volume = faults.length > 0 ? 1 : volumeOf(mesh);
  if (!(volume > 0)) faults.push({ code: 'no-volume', text: `It encloses ${volume} m³: turn its triangles outwards.` });
  return faults;
}

function countOf(values: ArrayLike<number>, is: (value: number) => boolean): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) if (is(values[i]!)) count++;
  return count;
}

/** Triangles whose height over their longest side is within the rounding of the coordinates. */
function degenerate({ corners, triangles }: Written): number {
  let count = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ux, uy, uz] = [
      corners[b]! - corners[a]!,
      corners[b + 1]! - corners[a + 1]!,
      corners[b + 2]! - corners[a + 2]!,
    ];
    const [vx, vy, vz] = [
      corners[c]! - corners[a]!,
      corners[c + 1]! - corners[a + 1]!,
      corners[c + 2]! - corners[a + 2]!,
    ];
    const square = (uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2;
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      (ux - vx) ** 2 + (uy - vy) ** 2 + (uz - vz) ** 2,
    );
    if (!(square > (longest * LEAST_HEIGHT) ** 2 && longest > 0)) count++;
  }
  return count;
}

/** Least height of a triangle, over its longest side. */
const LEAST_HEIGHT = 1e-7;

/** Compares the sorted list of edges in their own direction with that in the opposite one. */
function edgeFaults({ corners, triangles }: Written): { readonly open: number; readonly many: number } {
  const count = corners.length / 3;
  const ahead = new Float64Array(triangles.length);
  const back = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    const from = triangles[i]!;
    const to = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
    ahead[i] = from * count + to;
    back[i] = to * count + from;
  }
  ahead.sort();
  back.sort();
  let many = 0;
  for (let i = 1; i < ahead.length; i++) if (ahead[i] === ahead[i - 1]) many++;
  let open = 0;
  for (let i = 0, j = 0; i < ahead.length; ) {
    if (j < back.length && back[j]! < ahead[i]!) j++;
    else {
      if (back[j] !== ahead[i]) open++;
      i++;
    }
  }
  return { open, many };
}
