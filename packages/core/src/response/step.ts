import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { matrixExponential } from '../numeric/index.js';
import { count, positive, readFields, type TimeInput } from '../quantity/index.js';
import { compileNetwork, probeIndex } from './compile.js';

/** Sound pressure after a step of the drive. */
export interface StepResponse {
  /** s, evenly spaced from 0. */
  readonly times: Float64Array;
  /** Pa at 1 m in half space, for a step of 1 V. */
  readonly pressure: Float64Array;
}

/**
 * Sound pressure at 1 m after a step of 1 V at the drive, exact at each time: the rational response as a state space,
 * its transition over one interval by the matrix exponential.
 *
 * $$ p(t) = \mathcal{L}^{-1}\!\left\{\frac{1}{s}\,\frac{\rho s}{2\pi}\frac{N(s)}{D(s)}\right\} $$
 *
 * @validity lumped systems whose radiated flow cannot jump: parts that move have mass
 * @neglects propagation
 * @throws InputError `inconsistent` for a system that is not lumped
 * @returns Pa, and the times
 * @source oppenheim1997 (state space of a rational response)
 * @example stepResponse(closedBox({ drivers, netVolume: '40 L' }), { until: '0.1 s', points: 201 })
 */
export function stepResponse(
  system: System,
  options: { readonly until: TimeInput; readonly points: number },
): StepResponse {
  const { until, points } = readFields('step', options, { until: positive('time'), points: count(1_000_000) });
  const { probes, polynomials } = compileNetwork(system.network);
  if (polynomials === undefined) {
    const remedy = 'Use a lumped network.';
    const expected = 'a network of lumped elements';
    throw new InputError([
      { code: 'inconsistent', path: 'network', got: 'frequency-dependent elements', expected, remedy },
    ]);
  }
  const { coefficients, width, scale } = polynomials;
  const row = 1 + probeIndex(probes, 'radiatedFlow');
  // The step's 1/s cancels the s of the pressure: p = ρ/2π · scale-free N/D with s in units of `scale`.
  let order = width - 1;
  while (order > 0 && coefficients[order] === 0) order--;
  const lead = coefficients[order] as number;
  if (coefficients.subarray(row * width + order, (row + 1) * width).some((value) => value !== 0)) {
    const remedy = 'Give its moving parts a mass.';
    const expected = 'a radiated flow that cannot jump';
    throw new InputError([{ code: 'inconsistent', path: 'network', got: 'a flow that jumps', expected, remedy }]);
  }
  // Companion form: x' = A x, x(0) = last unit vector, p = N · x.
  const a = new Float64Array(order * order);
  for (let i = 0; i + 1 < order; i++) a[i * order + i + 1] = 1;
  for (let k = 0; k < order; k++) a[(order - 1) * order + k] = -(coefficients[k] as number) / lead;
  const interval = points > 1 ? until / (points - 1) : 0;
  const transition = matrixExponential(order, a, interval * scale);
  const times = Float64Array.from({ length: points }, (_, i) => i * interval);
  const pressure = new Float64Array(points);
  const unit = (system.air.density * scale) / (2 * Math.PI * lead);
  let state = new Float64Array(order);
  let next = new Float64Array(order);
  state[order - 1] = 1;
  for (let i = 0; i < points; i++) {
    let sum = 0;
    for (let k = 0; k < order; k++) sum += (coefficients[row * width + k] as number) * (state[k] as number);
    pressure[i] = unit * sum;
    for (let r = 0; r < order; r++) {
      let value = 0;
      for (let k = 0; k < order; k++) value += (transition[r * order + k] as number) * (state[k] as number);
      next[r] = value;
    }
    [state, next] = [next, state];
  }
  return { times, pressure };
}
