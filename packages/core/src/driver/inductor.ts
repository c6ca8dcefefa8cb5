import { type InductanceInput, positive, readFields } from '../quantity/index.js';
import type { CoilModel } from './coil.js';

/** {@link inductor} of an SI number. */
export const inductorOf = (Le: number): CoilModel => ({
  name: 'inductor',
  parameters: { Le },
  sources: ['small1972direct'],
  impedance: (values, w, out) => {
    out[0] = 0;
    out[1] = w * values[0]!;
  },
  scaled: (impedance, time) => inductorOf(Le * impedance * time),
  circuit: [{ kind: 'inductor', parameter: 'Le', joints: [0, 1] }],
});

/**
 * A voice coil as a resistance and an inductance. A driver with `Le` has this model.
 *
 * $$ Z_E = R_e + j\omega L_e $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L_e$ | `Le` | H | inductance of the voice coil |
 *
 * @validity below the frequencies at which eddy currents in the iron matter, a few hundred hertz
 * @neglects eddy currents, and any dependence on the position of the coil and on current
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source small1972direct circuit of the driver: Re and Le in series
 * @example driver({ ...ten, coil: inductor({ Le: '0.9 mH' }) })
 */
export const inductor = (input: { readonly Le: InductanceInput }): CoilModel =>
  inductorOf(readFields('inductor', input, { Le: positive('inductance') }).Le);
