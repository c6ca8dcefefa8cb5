import type { StateSpace } from '@airspring/core/network';
import type { Mode } from './mode.js';
import type { OutputRow } from './output-rows.js';
import { shifted } from './shifted-states.js';

/** What may be lost where outputs are written as sums of modes, of their greatest size over frequency. */
const LOST = 1e-11;

/** Whether the modes give each output as the states do, from 1 mHz to 10 MHz. */
export function agrees(space: StateSpace, rows: readonly OutputRow[], modes: readonly Mode[]): boolean {
  const off = rows.map(() => 0);
  const most = rows.map(() => 0);
  for (let decade = -3; decade <= 7; decade += 0.25) {
    const omega = 2 * Math.PI * 10 ** decade;
    const [xr, xi] = [Float64Array.from(space.B, (b) => -b), new Float64Array(space.size)];
    shifted(space, 0, omega)?.solve(xr, xi);
    rows.forEach(({ c }, row) => {
      let [re, im, sr, si] = [0, 0, 0, 0];
      for (let k = 0; k < space.size; k++) {
        re += c[k]! * xr[k]!;
        im += c[k]! * xi[k]!;
      }
      for (const { re: a, im: b, residues } of modes) {
        const r = residues[row] as { re: number; im: number };
        for (const sign of b === 0 ? [1] : [1, -1]) {
          const [p, q] = [-a, omega - sign * b];
          const d = p * p + q * q;
          sr += (r.re * p + sign * r.im * q) / d;
          si += (sign * r.im * p - r.re * q) / d;
        }
      }
      most[row] = Math.max(most[row]!, Math.hypot(re, im));
      off[row] = Math.max(off[row]!, Math.hypot(re - sr, im - si));
    });
  }
  return off.every((size, row) => size <= LOST * most[row]!);
}
