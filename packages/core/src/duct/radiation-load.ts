import { type Air, readAir, standardAir } from '../air/index.js';
import type { Warning } from '../fault/index.js';
import {
  type AcousticMass,
  type AcousticResistance,
  type FrequencyInput,
  type LengthInput,
  positive,
  readFields,
  si,
} from '../quantity/index.js';

export interface PistonInput {
  readonly diameter: LengthInput;
  readonly frequency: FrequencyInput;
}

/** A mass and a resistance in series, in the acoustic domain (pressure over volume flow). */
export interface RadiationLoad {
  readonly mass: AcousticMass;
  readonly resistance: AcousticResistance;
  readonly warnings: readonly Warning[];
}

const pistonShape = { diameter: positive('length'), frequency: positive('frequency') };

/**
 * Acoustic mass and radiation resistance of the air in front of a small rigid piston in a wide baffle.
 *
 * $$ M_{AR} = \frac{8\,\rho}{3\pi^2 a},\qquad R_{AR} = \frac{\rho\,\omega^2}{2\pi c} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $2a$ | `diameter` | m | diameter of the piston |
 * | $\omega$ | `frequency` | rad/s | $2\pi f$ |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 * | $c$ | `speedOfSound` | m/s | speed of sound |
 *
 * @validity $ka \le 0.3$ (mass within 2.4 %, resistance within 1.5 %), otherwise the warning `outside-validity`.
 * @neglects the terms of higher order in $ka$, the edges of the baffle.
 * @returns kg/m⁴ and Pa·s/m³, with warnings
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source rayleigh1896 sec. 302
 * @example radiationLoad({ diameter: '200 mm', frequency: '50 Hz' }).mass // 3.24 kg/m⁴
 */
export function radiationLoad(input: PistonInput, air: Air = standardAir): RadiationLoad {
  readAir(air);
  const { diameter, frequency } = readFields('piston', input, pistonShape);
  const radius = diameter / 2;
  const omega = 2 * Math.PI * frequency;
  const ka = (omega / air.speedOfSound) * radius;
  const expected = 'at most 0.3, small compared with the wavelength';
  return {
    mass: si('acousticMass', (8 * air.density) / (3 * Math.PI ** 2 * radius)),
    resistance: si('acousticResistance', (air.density * omega * omega) / (2 * Math.PI * air.speedOfSound)),
    warnings: ka > 0.3 ? [{ code: 'outside-validity', path: 'ka', got: ka, expected }] : [],
  };
}
