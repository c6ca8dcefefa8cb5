import { kept, type System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type CompiledNetwork, compileNetwork, lumpedFit, stateSpace } from '../network/index.js';
import { matrixExponential } from '../numeric/index.js';
import {
  count,
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
  type TimeInput,
} from '../quantity/index.js';
import { compiledSystem, givenSystem, probeColumns, probeIndex } from './compile.js';

/** Frequencies at which a fit is compared. */
const POINTS = 300;

/** Sound pressure after a step of the drive. */
export interface StepResponse {
  /** s, evenly spaced from 0. */
  readonly times: Float64Array;
  /** Pa at 1 m in half space, for a step of 1 V. */
  readonly pressure: Float64Array;
  /** Where elements over frequency had to be fitted: the band of the fit, Hz, and how far it is off. */
  readonly fit?: StepFit;
}

/** How well a lumped network stands for one with elements over frequency. */
export interface StepFit {
  readonly from: Frequency;
  readonly to: Frequency;
  /** Greatest deviation of the pressure over frequency in the band, of its own size there. */
  readonly greatestError: number;
}

/** Options of {@link stepResponse}. */
export interface StepOptions {
  readonly until: TimeInput;
  readonly points: number;
  /** Band in which elements over frequency are fitted; default 1 Hz to 20 kHz. */
  readonly fitFrom?: FrequencyInput;
  readonly fitTo?: FrequencyInput;
}

/**
 * Sound pressure at 1 m after a step of 1 V at the drive. It is exact at each time: it comes from the state matrices of the
 * network, with the matrix exponential for the transition over one interval. Coils and suspensions that no finite circuit is are
 * replaced by their `lumpedFit`, and the answer tells in which band, and how far that is off.
 *
 * $$ p(t) = \frac{\rho}{2\pi}\,\frac{dU}{dt} = \frac{\rho}{2\pi}\, C e^{At} B $$
 *
 * @validity lumped systems, and models of coil and suspension, whose radiated flow cannot jump because all moving parts have mass
 * @neglects propagation
 * @throws InputError `inconsistent` for a system that is not lumped and has no fit, or a band without width
 * @returns Pa, the times, and the fit if there is one
 * @source oppenheim1997 (state space of a rational response)
 * @example stepResponse(closedBox({ drivers, netVolume: '40 L' }), { until: '0.1 s', points: 201 })
 */
export function stepResponse(system: System, options: StepOptions): StepResponse {
  const { until, points, fitFrom = FIT.from, fitTo = FIT.to } = readFields('step', options, shape);
  const refused = (got: string, expected: string, remedy: string) =>
    new InputError([{ code: 'inconsistent', path: 'network', got, expected, remedy }]);
  if (fitFrom >= fitTo) {
    const expected = `a frequency below the end of the fit, ${fitTo} Hz`;
    throw new InputError([
      {
        code: 'inconsistent',
        path: 'step.fitFrom',
        got: options.fitFrom,
        expected,
        remedy: 'Swap the two, or leave them out.',
      },
    ]);
  }
  const isFitted = givenSystem(system).network.topology.elements.some(({ kind }) => kind === 'law');
  const fitted = isFitted
    ? kept(system, `fit from ${fitFrom} to ${fitTo}`, () => fitOf(system, fitFrom, fitTo))
    : undefined;
  const space = fitted?.space ?? kept(system, 'state space', () => stateSpace(system.network));
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
  return { times, pressure, ...(fitted?.fit && { fit: fitted.fit }) };
}

const FIT = { from: si('frequency', 1), to: si('frequency', 20_000) };

const shape = {
  until: positive('time'),
  points: count(1_000_000),
  fitFrom: optional(positive('frequency')),
  fitTo: optional(positive('frequency')),
};

/** The states of the lumped fit of a system, and how far its pressure is off. */
function fitOf(system: System, from: Frequency, to: Frequency) {
  const lumped = lumpedFit(system.network, { from, to });
  if (!lumped.ok) return { space: lumped };
  const grid = logarithmicGrid(from, to, POINTS);
  const flow = (network: CompiledNetwork) => probeColumns(network, grid).radiatedFlow;
  const [ours, exact] = [flow(compileNetwork(lumped.network)), flow(compiledSystem(system))];
  let greatestError = 0;
  if (ours !== undefined && exact !== undefined) {
    for (let i = 0; i < grid.length; i++) {
      const off = Math.hypot(ours.re[i]! - exact.re[i]!, ours.im[i]! - exact.im[i]!);
      greatestError = Math.max(greatestError, off / Math.hypot(exact.re[i]!, exact.im[i]!));
    }
  }
  return { space: stateSpace(lumped.network), fit: { from, to, greatestError } };
}
