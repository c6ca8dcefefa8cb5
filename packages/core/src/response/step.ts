import { kept, type System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { stateSpace } from '../network/index.js';
import { matrixExponential } from '../numeric/index.js';
import { count, positive, readFields, type TimeInput } from '../quantity/index.js';
import { compiledSystem, probeIndex } from './compile.js';

/** Sound pressure after a step of the drive. */
export interface StepResponse {
  /** s, evenly spaced from 0. */
  readonly times: Float64Array;
  /** Pa at 1 m in half space, for a step of 1 V. */
  readonly pressure: Float64Array;
}

/**
 * Sound pressure at 1 m after a step of 1 V at the drive. It is exact at each time: it comes from the state matrices of the
 * network, with the matrix exponential for the transition over one interval.
 *
 * $$ p(t) = \frac{\rho}{2\pi}\,\frac{dU}{dt} = \frac{\rho}{2\pi}\, C e^{At} B $$
 *
 * @validity lumped systems whose radiated flow cannot jump because all moving parts have mass
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
  const space = kept(system, 'state space', () => stateSpace(system.network));
  const refused = (got: string, expected: string, remedy: string) =>
    new InputError([{ code: 'inconsistent', path: 'network', got, expected, remedy }]);
  if (!space.ok) {
    const why = space.because.map(({ text }) => text).join('; ');
    throw refused(why, 'a network of lumped elements with states', 'Use a lumped network.');
  }
  const { size, A, B, C, D, outputs } = space;
  const row = outputs.indexOf('radiatedFlow');
  if (row < 0) probeIndex(compiledSystem(system).probes, 'radiatedFlow');
  if (row < 0 || D[row] !== 0) {
    throw refused('a flow that jumps', 'a radiated flow that cannot jump', 'Give the moving parts a mass.');
  }
  const interval = points > 1 ? until / (points - 1) : 0;
  const transition = matrixExponential(size, A, interval);
  const times = Float64Array.from({ length: points }, (_, i) => i * interval);
  const pressure = new Float64Array(points);
  const unit = system.air.density / (2 * Math.PI);
  let state = new Float64Array(B);
  let next = new Float64Array(size);
  for (let i = 0; i < points; i++) {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += C[row * size + k]! * state[k]!;
    pressure[i] = unit * sum;
    for (let r = 0; r < size; r++) {
      let value = 0;
      for (let k = 0; k < size; k++) value += transition[r * size + k]! * state[k]!;
      next[r] = value;
    }
    [state, next] = [next, state];
  }
  return { times, pressure };
}
