import type { StateSpace } from '@airspring/core/network';
import type { Hold } from './hold.js';
import type { OutputRow } from './output-rows.js';
import { stepMatrices } from './step-matrices.js';

/**
 * The same simulation by the states themselves: for networks whose natural motions coincide. What the later sample adds at once is
 * taken out of the states, so that one sample is enough for a step: ξ = x − after · u.
 */
export function denseStep(
  { size, A, B }: Pick<StateSpace, 'size' | 'A' | 'B'>,
  rows: readonly Pick<OutputRow, 'c' | 'd'>[],
  interval: number,
  hold: Hold,
) {
  const { P, before, after } = stepMatrices(size, A, B, interval, hold);
  const input = before.map((value, i) => after.reduce((sum, x, k) => sum + P[i * size + k]! * x, value));
  const direct = Float64Array.from(rows, ({ c, d }) => after.reduce((sum, x, k) => sum + c[k]! * x, d));
  const next = new Float64Array(size);
  const start = () => [new Float64Array(size)];
  const run = ([state]: readonly Float64Array[], drive: Float64Array, out: readonly Float64Array[]): void => {
    const x = state!;
    for (let n = 0; n < drive.length; n++) {
      const u = drive[n]!;
      for (let r = 0; r < rows.length; r++) {
        const { c } = rows[r]!;
        let sum = direct[r]! * u;
        for (let k = 0; k < size; k++) sum += c[k]! * x[k]!;
        out[r]![n] = sum;
      }
      for (let i = 0; i < size; i++) {
        let sum = input[i]! * u;
        for (let k = 0; k < size; k++) sum += P[i * size + k]! * x[k]!;
        next[i] = sum;
      }
      x.set(next);
    }
  };
  return { start, run };
}
