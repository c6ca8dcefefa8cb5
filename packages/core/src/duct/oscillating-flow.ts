import { type Air, readAir, standardAir } from '../air/index.js';
import {
  type AirSpeedPeakInput,
  type DisplacementPeak,
  type FrequencyInput,
  type LengthInput,
  positive,
  readFields,
  si,
} from '../quantity/index.js';

/** Air that swings to and fro in a duct. */
export interface OscillatingFlowInput {
  readonly diameter: LengthInput;
  /** Peak in time of the mean speed over the section. */
  readonly airSpeedPeak: AirSpeedPeakInput;
  readonly frequency: FrequencyInput;
}

/** The numbers by which flows that swing to and fro are compared. */
export interface OscillatingFlow {
  /** How far the air moves to each side, m. */
  readonly displacementPeak: DisplacementPeak;
  /** Speed × period over diameter. */
  readonly keuleganCarpenter: number;
  /** Frequency × diameter over speed: 1 over the Keulegan–Carpenter number. */
  readonly strouhal: number;
  /** Speed × thickness of the layer at the wall over kinematic viscosity. */
  readonly boundaryReynolds: number;
}

const shape = {
  diameter: positive('length'),
  airSpeedPeak: positive('airSpeedPeak'),
  frequency: positive('frequency'),
};

/**
 * The numbers by which flows that swing to and fro are compared:
 *
 * $$ \xi = \frac{\hat u}{\omega},\qquad KC = \frac{\hat u}{f D},\qquad St = \frac{f D}{\hat u},\qquad
 *    Re_\delta = \frac{\hat u\,\delta}{\nu},\quad \delta = \sqrt{\frac{2\nu}{\omega}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\hat u$ | `airSpeedPeak` | m/s | peak of the mean speed |
 * | $D$ | `diameter` | m | inner diameter |
 * | $\xi$ | `displacementPeak` | m | how far the air moves to each side |
 * | $\delta$ | | m | thickness of the layer of air that the wall holds back |
 *
 * Papers differ in their Strouhal numbers: ω radius over speed is π times this one.
 *
 * @validity any sinusoidal flow
 * @neglects nothing: they are definitions
 * @returns the numbers
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source keulegan1958 period parameter; hino1976 Reynolds number of the layer at the wall
 * @example oscillatingFlow({ diameter: '75 mm', airSpeedPeak: '10 m/s', frequency: '30 Hz' }).keuleganCarpenter // 4.44
 */
export function oscillatingFlow(input: OscillatingFlowInput, air: Air = standardAir): OscillatingFlow {
  const { diameter, airSpeedPeak, frequency } = readFields('flow', input, shape);
  const { density, viscosity } = readAir(air);
  const nu = viscosity / density;
  return {
    displacementPeak: si('displacementPeak', airSpeedPeak / (2 * Math.PI * frequency)),
    keuleganCarpenter: airSpeedPeak / (frequency * diameter),
    strouhal: (frequency * diameter) / airSpeedPeak,
    boundaryReynolds: airSpeedPeak / Math.sqrt(Math.PI * frequency * nu),
  };
}
