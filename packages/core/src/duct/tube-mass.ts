import { type Air, readAir, standardAir } from '../air/index.js';
import { type AcousticMass, type LengthInput, positive, readFields, si } from '../quantity/index.js';

export interface TubeInput {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  /** Length; for a tube with open ends, the effective length with both end corrections. */
  readonly length: LengthInput;
}

const tubeShape = { diameter: positive('length'), length: positive('length') };

/**
 * Acoustic mass of the air in a round tube that is short compared with the wavelength.
 *
 * $$ M_A = \frac{\rho\,\ell}{S},\qquad S = \frac{\pi d^2}{4} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `diameter` | m | inner diameter |
 * | $\ell$ | `length` | m | length |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 *
 * @validity $k\ell \le 0.5$, and a boundary layer (0.5 mm at 20 Hz, 0.2 mm at 100 Hz) that is thin compared with the radius.
 * @neglects the viscous boundary layer, which increases the mass by the ratio of its thickness to the radius (1.4 % in a tube
 * of 50 mm at 40 Hz).
 * @returns kg/m⁴
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example tubeMass({ diameter: '50 mm', length: '150 mm' }) // 91.6 kg/m⁴
 */
export function tubeMass(input: TubeInput, air: Air = standardAir): AcousticMass {
  readAir(air);
  const { diameter, length } = readFields('tube', input, tubeShape);
  return si('acousticMass', (air.density * length) / (Math.PI * (diameter / 2) ** 2));
}
