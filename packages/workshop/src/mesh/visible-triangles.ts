import type { Facet } from './depth-order.js';
import { doubleAreaOf, type Mesh } from './mesh.js';
import { sharpSides } from './sharp-sides.js';

/** Cells of the grid of depths along its longer edge. */
const CELLS = 700;

/**
 * The triangles of a projected solid that the viewer sees, at least in part. Those whose outer side is turned away are left out,
 * and those of which no cell of a fine grid shows anything.
 */
export function visibleOf(mesh: Mesh): readonly Facet[] {
  const { corners, triangles } = mesh;
  const facing: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) if (doubleAreaOf(mesh, t)[2] > 0) facing.push(t);
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3) {
    [left, right] = [Math.min(left, corners[i]!), Math.max(right, corners[i]!)];
    [low, high] = [Math.min(low, corners[i + 1]!), Math.max(high, corners[i + 1]!)];
  }
  const cell = Math.max(right - left, high - low) / CELLS;
  const columns = Math.ceil((right - left) / cell) + 1;
  const rows = Math.ceil((high - low) / cell) + 1;
  const nearest = new Float64Array(columns * rows).fill(-Infinity);
  const owner = new Int32Array(columns * rows).fill(-1);
  const x = (corner: number) => (corners[3 * corner]! - left) / cell;
  const y = (corner: number) => (corners[3 * corner + 1]! - low) / cell;
  // A triangle between the middles of cells is not drawn, yet it may be seen.
  const missed: number[] = [];
  for (const t of facing) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const [ax, ay, bx, by, cx, cy] = [x(a), y(a), x(b), y(b), x(c), y(c)];
    const [az, bz, cz] = [corners[3 * a + 2]!, corners[3 * b + 2]!, corners[3 * c + 2]!];
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    let drawn = false;
    for (let row = Math.ceil(Math.min(ay, by, cy)); row <= Math.max(ay, by, cy); row++)
      for (let column = Math.ceil(Math.min(ax, bx, cx)); column <= Math.max(ax, bx, cx); column++) {
        const one = ((bx - column) * (cy - row) - (by - row) * (cx - column)) / area;
        const two = ((cx - column) * (ay - row) - (cy - row) * (ax - column)) / area;
        if (one < 0 || two < 0 || one + two > 1) continue;
        drawn = true;
        const depth = one * az + two * bz + (1 - one - two) * cz;
        const at = row * columns + column;
        if (depth > nearest[at]!) [nearest[at], owner[at]] = [depth, t];
      }
    if (!drawn) missed.push(t);
  }
  const seen = new Set(owner);
  for (const t of missed) if (inFront(t)) seen.add(t);

  /** Whether the middle of a small triangle is not behind what the cell beside it shows. */
  function inFront(t: number): boolean {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const at = Math.round((y(a) + y(b) + y(c)) / 3) * columns + Math.round((x(a) + x(b) + x(c)) / 3);
    const depth = (corners[3 * a + 2]! + corners[3 * b + 2]! + corners[3 * c + 2]!) / 3;
    return depth >= nearest[at]! - 4 * cell;
  }

  const sharp = sharpSides(mesh);
  return facing
    .filter((t) => seen.has(t))
    .map((t) => ({
      source: t,
      edges: [0, 1, 2].map((k) => sharp[t + k] === 1),
      points: [0, 1, 2].map((k) => {
        const corner = 3 * triangles[t + k]!;
        return [corners[corner]!, corners[corner + 1]!, corners[corner + 2]!] as const;
      }),
    }));
}
