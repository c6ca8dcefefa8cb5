import { notNegative, positive, type RatioInput, readFields } from '../quantity/index.js';
import type { CoilModel } from './coil.js';
import { coilOverFrequency } from './coil-over-frequency.js';
import { exponent } from './exponent.js';

/** What {@link fourParameterInductor} takes. */
export interface FourParameterInput {
  readonly Kr: RatioInput;
  readonly Xr: number;
  readonly Ki: RatioInput;
  readonly Xi: number;
}

const shape = { Kr: notNegative('ratio'), Xr: exponent(2), Ki: positive('ratio'), Xi: exponent(1) };

const build = (Kr: number, Xr: number, Ki: number, Xi: number): CoilModel =>
  coilOverFrequency({
    name: 'four-parameter inductor',
    parameters: { Kr, Xr, Ki, Xi },
    sources: ['wright1990', 'leach2002'],
    impedance: (values, w, out) => {
      out[0] = values[0]! * w ** values[1]!;
      out[1] = values[2]! * w ** values[3]!;
    },
    slopes: (values, w, out) => {
      const [r, i] = [w ** values[1]!, w ** values[3]!];
      const log = Math.log(w);
      out.fill(0, 0, 10);
      out[0] = values[1]! * values[0]! * r;
      out[1] = values[3]! * values[2]! * i;
      out[2] = r;
      out[4] = values[0]! * r * log;
      out[7] = i;
      out[9] = values[2]! * i * log;
    },
    scaled: (impedance, time) => build(Kr * impedance * time ** Xr, Xr, Ki * impedance * time ** Xi, Xi),
  });

/**
 * A voice coil whose resistance and reactance follow a power of frequency each: two straight lines through measured points.
 *
 * $$ Z_E = R_e + K_r\,\omega^{X_r} + j K_i\,\omega^{X_i} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $K_r, X_r$ | `Kr` `Xr` | Ω·s^Xr, 1 | size and exponent of the resistance that is added to Re |
 * | $K_i, X_i$ | `Ki` `Xi` | Ω·s^Xi, 1 | size and exponent of the reactance |
 *
 * @validity the band in which the points were measured. It is a description and no physical part: with unlike exponents
 * no part that answers after its cause has exactly this impedance, so that a step response is only fitted
 * @neglects any dependence on position and current
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range` for an exponent that is not above 0, or is above 2 (Xr) or 1 (Xi)
 * @source wright1990 empirical model of the motor impedance, form as quoted by leach2002
 * @example driver({ ...ten, coil: fourParameterInductor({ Kr: 0.0022, Xr: 0.75, Ki: 0.0048, Xi: 0.76 }) })
 */
export function fourParameterInductor(input: FourParameterInput): CoilModel {
  const { Kr, Xr, Ki, Xi } = readFields('fourParameterInductor', input, shape);
  return build(Kr, Xr, Ki, Xi);
}
