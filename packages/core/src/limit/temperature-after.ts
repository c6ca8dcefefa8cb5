import type { Warning } from '../fault/index.js';
import {
  notNegative,
  type PowerInput,
  readFields,
  si,
  type TemperatureDifference,
  type TimeInput,
} from '../quantity/index.js';
import { riseWarnings, type ThermalModelInput, thermalModel } from './thermal-model.js';

/** Rise of coil and magnet above the air. */
export interface TemperatureRise {
  readonly coil: TemperatureDifference;
  readonly magnet: TemperatureDifference;
  /** `outside-validity` where the coil is beyond what the model can tell. */
  readonly warnings: readonly Warning[];
}

const shape = { power: notNegative('power'), time: notNegative('time') };

/**
 * Temperature of coil and magnet after a time of constant heat, from cold.
 *
 * $$ \theta_v = P \sum_{k=1,2} A_k\,(1 - e^{-\lambda_k t}),\quad \theta_m = P \sum_{k=1,2} B_k\,(1 - e^{-\lambda_k t}) $$
 * $$ \lambda_{1,2} = \tfrac12 b \pm \sqrt{\tfrac14 b^2 - \tfrac{1}{\tau_v\tau_m}},\quad
 *    b = \frac1{\tau_v} + \Bigl(1 + \frac{R_m}{R_v}\Bigr)\frac1{\tau_m} $$
 *
 * The amplitudes follow from the start: $\sum A_k = R_v + R_m$, $\sum A_k\lambda_k = R_v/\tau_v$, $\sum B_k = R_m$,
 * $\sum B_k\lambda_k = 0$.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $P$ | `power` | W | heat in the coil of one driver |
 * | $t$ | `time` | s | how long it lasts |
 * | $R_v, R_m, \tau_v, \tau_m$ | model | K/W, s | see `thermalModel` |
 *
 * @validity heat that does not change meanwhile: at a constant voltage it falls as the coil warms up, see `respondWithHeat`
 * @neglects what `thermalModel` neglects
 * @throws InputError those of `thermalModel`; `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @returns rises in kelvins, with warnings
 * @source button1992 two stages, coil and magnet, solved exactly
 * @example temperatureAfter(model, { power: '40 W', time: '30 s' }).coil
 */
export function temperatureAfter(
  model: ThermalModelInput,
  heating: { readonly power: PowerInput; readonly time: TimeInput },
): TemperatureRise {
  const { coilToMagnet: Rv, magnetToAir: Rm, coilTime, magnetTime } = thermalModel(model);
  const { power, time } = readFields('heating', heating, shape);
  const b = 1 / coilTime + (1 + Rm / Rv) / magnetTime;
  // The product of the rates is 1 / (coilTime magnetTime); the fast one has no cancellation.
  const apart = Math.sqrt(
    (1 / coilTime - 1 / magnetTime) ** 2 + (Rm / Rv / magnetTime) * (2 * b - Rm / Rv / magnetTime),
  );
  const fast = (b + apart) / 2;
  const slow = 1 / (coilTime * magnetTime) / fast;
  const [nearly, soon] = [-Math.expm1(-fast * time), -Math.expm1(-slow * time)];
  const A = (Rv / coilTime - slow * (Rv + Rm)) / apart;
  const coil = power * (A * nearly + (Rv + Rm - A) * soon);
  const magnet = ((power * Rm) / apart) * (fast * soon - slow * nearly);
  return {
    coil: si('temperatureDifference', coil),
    magnet: si('temperatureDifference', magnet),
    warnings: riseWarnings(coil),
  };
}
