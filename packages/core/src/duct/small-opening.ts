import { type Air, readAir, standardAir } from '../air/index.js';
import { InputError } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { type LengthInput, positive, readFields } from '../quantity/index.js';
import type { EndCorrection, Opening } from './end-correction.js';
import type { Radiation } from './radiation.js';

/**
 * Radiation impedance of an opening that is small compared with the wavelength: its end correction as a mass, and the
 * resistance of a point source that radiates into a solid angle. Without a solid angle there is no resistance, as at an end
 * inside a closed box.
 *
 * $$ \frac{Z}{\rho c/S} = \frac{k^2 \pi a^2}{\Omega} + jk\,\Delta\ell $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\Delta\ell$ | `end` | m | end correction |
 * | $\Omega$ | `solidAngle` | sr | $2\pi$ in a wide wall, $4\pi$ in free air |
 * | $a$ | `radius` | m | radius |
 * | $k$ | `k` | rad/m | wave number |
 *
 * @validity $ka \le 0.3$ (resistance within 4 %), and the range of the end correction.
 * @neglects the terms of higher order in ka.
 * @returns a {@link Radiation}
 * @throws InputError `not-finite`, `not-positive`
 * @source rayleigh1896 secs. 278 and 302
 * @example smallOpening(flanged, 2 * Math.PI)({ radius: 0.05 }, 2, out) // out: 0.005, 0.0819
 */
export function smallOpening(end: EndCorrection, solidAngle?: number): Radiation {
  if (solidAngle !== undefined && !(solidAngle > 0 && solidAngle < Number.POSITIVE_INFINITY)) {
    const code = Number.isFinite(solidAngle) ? 'not-positive' : 'not-finite';
    const remedy = 'Leave it out for an end that radiates nothing.';
    throw new InputError([
      { code, path: 'solidAngle', got: solidAngle, expected: 'a solid angle above zero, sr', remedy },
    ]);
  }
  const perArea = solidAngle === undefined ? 0 : Math.PI / solidAngle;
  const radiation = (opening: Opening, k: number, out: Float64Array) => {
    out[0] = perArea * (k * opening.radius) ** 2;
    out[1] = k * end(opening, k);
  };
  return Object.assign(radiation, { sources: end.sources, greatestKa: Math.min(0.3, end.greatestKa ?? 0.3) });
}

export interface RadiationInput {
  /** Diameter of the opening; for one that is not round, the diameter of a circle of the same area. */
  readonly diameter: LengthInput;
  readonly radiation: Radiation;
}

/**
 * Compiles the radiation impedance of an opening over frequency.
 *
 * $$ Z = \frac{\rho c}{\pi a^2}\,z(ka) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $2a$ | `diameter` | m | diameter of the opening |
 * | $z$ | `radiation` | 1 | impedance over $\rho c/S$ |
 *
 * @validity the range of the radiation, without warnings.
 * @neglects what the radiation neglects.
 * @returns a kernel that fills the acoustic impedance, Pa·s/m³
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source rayleigh1896 sec. 302
 * @example compileRadiation({ diameter: '100 mm', radiation: pistonRadiation })(frequencies, out)
 */
export function compileRadiation(
  input: RadiationInput,
  air: Air = standardAir,
): (frequencies: Float64Array, out: ComplexColumn) => void {
  readAir(air);
  const { diameter } = readFields('radiation', { diameter: input.diameter }, { diameter: positive('length') });
  const { radiation } = input;
  const opening = { radius: diameter / 2 };
  const perHertz = (2 * Math.PI) / air.speedOfSound;
  const scale = (air.density * air.speedOfSound) / (Math.PI * opening.radius ** 2);
  const room = new Float64Array(2);
  return (frequencies, { re, im }) => {
    for (let i = 0; i < frequencies.length; i++) {
      radiation(opening, perHertz * frequencies[i]!, room);
      re[i] = scale * room[0]!;
      im[i] = scale * room[1]!;
    }
  };
}
