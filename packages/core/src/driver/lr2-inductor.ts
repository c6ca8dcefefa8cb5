import {
  type InductanceInput,
  notNegative,
  optional,
  positive,
  type ResistanceInput,
  readFields,
} from '../quantity/index.js';
import type { CoilModel } from './coil.js';

/** What {@link lr2Inductor} takes. */
export interface Lr2Input {
  /** Default 0. */
  readonly Le?: InductanceInput | undefined;
  readonly R2: ResistanceInput;
  readonly L2: InductanceInput;
}

const shape = { Le: optional(notNegative('inductance')), R2: positive('resistance'), L2: positive('inductance') };

const build = (Le: number, R2: number, L2: number): CoilModel => ({
  name: 'LR-2',
  parameters: { Le, R2, L2 },
  sources: ['dodd2004', 'leach2002'],
  impedance: (values, w, out) => {
    const x = (w * values[2]!) / values[1]!;
    const y = values[1]! / (1 + x * x);
    out[0] = y * x * x;
    out[1] = w * values[0]! + y * x;
  },
  scaled: (impedance, time) => build(Le * impedance * time, R2 * impedance, L2 * impedance * time),
  circuit: [
    { kind: 'inductor', parameter: 'Le', joints: [0, 2] },
    { kind: 'resistor', parameter: 'R2', joints: [2, 1] },
    { kind: 'inductor', parameter: 'L2', joints: [2, 1] },
  ],
});

/**
 * A voice coil with eddy currents as a circuit (LR-2): an inductance, in series with a resistance and an inductance side by
 * side. Step response, netlist and polynomials of it are exact.
 *
 * $$ Z_E = R_e + j\omega L_e + \frac{j\omega L_2 R_2}{R_2 + j\omega L_2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L_e$ | `Le` | H | series inductance, 0 by default |
 * | $R_2$ | `R2` | Ω | eddy-current loss |
 * | $L_2$ | `L2` | H | inductance in parallel with R2 |
 *
 * @validity near the frequency at which R2 and L2 were fitted, because the true loss follows a power of frequency. At the ends
 * of the decade around it the impedance of the pair is 16 to 24 % too small, and its angle is wrong by up to 31°
 * @neglects any dependence on the position of the coil, on current and on temperature
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source dodd2004 LR-2 model (recalled); leach2002 lossy inductor as resistance in parallel with inductance
 * @example driver({ ...ten, coil: lr2Inductor({ Le: '0.3 mH', R2: '6 ohm', L2: '0.8 mH' }) })
 */
export function lr2Inductor(input: Lr2Input): CoilModel {
  const { Le = 0, R2, L2 } = readFields('lr2Inductor', input, shape);
  return build(Le, R2, L2);
}
