import { positive, type RatioInput, readFields } from '../quantity/index.js';
import type { SuspensionModel } from './suspension.js';
import { suspensionOverFrequency } from './suspension-over-frequency.js';

const build = (lossFactor: number): SuspensionModel =>
  suspensionOverFrequency({
    name: 'hysteretic damping',
    parameters: { lossFactor },
    sources: ['crandall1970'],
    compliance: (values, _, out) => {
      const size = 1 + values[0]! * values[0]!;
      out[0] = 1 / size;
      out[1] = -values[0]! / size;
    },
    slopes: (values, _, out) => {
      const loss = values[0]!;
      const size = 1 + loss * loss;
      out[0] = 0;
      out[1] = 0;
      // −j/(1 + jη)²
      out[2] = (-2 * loss) / (size * size);
      out[3] = -(1 - loss * loss) / (size * size);
    },
    scaled: () => build(lossFactor),
  });

/**
 * A suspension whose damping depends on frequency: the loss of each swing is the same however fast it is, so that the
 * mechanical resistance falls with frequency, and Rms is what is added to it.
 *
 * $$ Z_m = R_{ms} + \frac{1 + j\eta}{j\omega C_{ms}}, \quad R(\omega) = R_{ms} + \frac{\eta}{\omega C_{ms}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\eta$ | `lossFactor` | 1 | loss factor of the material: 1/η is its quality factor |
 *
 * @validity steady sines. A part with exactly this loss would answer before its cause, so that a step response is only fitted
 * @neglects the change of compliance that goes with any loss, and any dependence on travel
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source crandall1970 hysteretic damping: complex stiffness k (1 + jη)
 * @example driver({ ...ten, suspension: hystereticDamping({ lossFactor: 0.1 }) })
 */
export const hystereticDamping = (input: { readonly lossFactor: RatioInput }): SuspensionModel =>
  build(readFields('hystereticDamping', input, { lossFactor: positive('ratio') }).lossFactor);
