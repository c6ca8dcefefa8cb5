import { matrixExponential } from '@airspring/core/numeric';
import type { Hold } from './hold.js';

/** x₊ = P x + before · u + after · u₊, by rows: the exact step of ẋ = A x + B u over one interval. */
export interface StepMatrices {
  readonly P: Float64Array;
  readonly before: Float64Array;
  readonly after: Float64Array;
}

/**
 * The exact step of linear states over an interval between whose ends the drive goes as a hold says. State, drive and its rise are
 * one larger system without a drive of its own:
 *
 * $$ \exp\begin{pmatrix} AT & BT & 0 \\ 0 & 0 & 1 \\ 0 & 0 & 0 \end{pmatrix} =
 *    \begin{pmatrix} P & \Gamma_0 & \Gamma_1 \\ 0 & 1 & 1 \\ 0 & 0 & 1 \end{pmatrix} $$
 *
 * $\Gamma_0$ belongs to a drive of 1, $\Gamma_1$ to one that rises from 0 to 1 over the interval (@source franklin1998 §4.3).
 */
export function stepMatrices(
  size: number,
  A: ArrayLike<number>,
  B: ArrayLike<number>,
  interval: number,
  { start, rise }: Hold,
): StepMatrices {
  const n = size + 2;
  const whole = new Float64Array(n * n);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < size; k++) whole[i * n + k] = A[i * size + k]! * interval;
    whole[i * n + size] = B[i]! * interval;
  }
  whole[size * n + size + 1] = 1;
  const exponential = matrixExponential(n, whole);
  const P = new Float64Array(size * size);
  const [before, after] = [new Float64Array(size), new Float64Array(size)];
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < size; k++) P[i * size + k] = exponential[i * n + k]!;
    const [constant, ramp] = [exponential[i * n + size]!, exponential[i * n + size + 1]!];
    before[i] = start[0] * constant + rise[0] * ramp;
    after[i] = start[1] * constant + rise[1] * ramp;
  }
  return { P, before, after };
}
