import { kept, type System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { compileGradient, gradientAt, type ProbeGradient } from '../network/index.js';
import { type FrequencyInput, read } from '../quantity/index.js';
import { givenSystem } from './compile.js';

/** The gradient of a complex value, or why there is none. */
export type ComplexGradientResult = ({ readonly ok: true } & ProbeGradient) | Impossible;

/** {@link complexGradient} at a frequency in Hz, of the system or of its reference. */
export function complexGradientAt(
  system: System,
  probe: string,
  frequency: number,
  inReference = false,
): ComplexGradientResult {
  const name = `gradient of ${probe}${inReference ? ' in the reference' : ''}`;
  const prepared = kept(system, name, () => compileGradient(givenSystem(system).network, probe, inReference));
  const found = gradientAt(prepared, frequency);
  return found === undefined
    ? impossible('undamped', `nothing damps the network at ${frequency} Hz, so it has no gradient there`)
    : { ok: true, ...found };
}

/**
 * Value of any probe at one frequency per volt of drive, and its gradient by every number of the network. It is exact, from the
 * adjoint equations. For a slope $y'$, the real part of $y'/y$ is the slope of ln |y|, and the imaginary part that of the phase in rad.
 *
 * $$ \frac{\partial y}{\partial \ln\theta}, \quad \frac{\partial y}{\partial \ln f} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $y$ | `value` | SI per V | the probe |
 * | $\theta$ | `byElement` | SI | a number of the network: `Mms`, `Bl`, `Cab`; of the finished network, not of the spec |
 * | $f$ | `byFrequency` | Hz | frequency |
 *
 * @validity small changes, since it is a slope
 * @neglects what the network neglects
 * @returns the gradient, or `undamped` at a resonance that nothing damps
 * @throws InputError `empty` for a probe that is not there; `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source director1969 adjoint network
 * @example complexGradient(system, 'coneVelocity', '30 Hz')
 */
export const complexGradient = (system: System, probe: string, frequency: FrequencyInput): ComplexGradientResult =>
  complexGradientAt(system, probe, read('frequency', frequency, 'frequency'));
