import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import type { Chain } from './line-chain.js';
import { chainKernel, lineAir, lineKernel, lineRoom, mostNepers } from './line-kernel.js';
import { type LineSection, roundSectionOf } from './line-section.js';
import type { Profile } from './profile.js';
import { profileFaults, radiusAt } from './profile-mass.js';

/** Default number of steps. */
const usualSteps = 60;

/**
 * Compiles a round duct of any profile as a chain of short uniform lines, each with the radius of the profile at its middle.
 *
 * $$ \begin{bmatrix} A & B\\ C & D \end{bmatrix} = \prod_{i=1}^{N} \begin{bmatrix} \cosh\Gamma_i h & Z_i\sinh\Gamma_i h\\
 *    Z_i^{-1}\sinh\Gamma_i h & \cosh\Gamma_i h \end{bmatrix},\qquad h = L/N $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $N$ | `steps` | 1 | steps, 1 to 10000; 60 by default |
 * | $L$ | `profile.length` | m | length |
 * | $\Gamma_i, Z_i$ | `profile` | 1/m, Pa·s/m³ | line constants for the radius at the middle of a step, see `lineConstants` |
 *
 * `walls` changes the section of every step: `withoutLoss` removes friction and heat conduction. The error falls as $1/N^2$;
 * with 60 steps it is 0.01 % for a vent that doubles its diameter.
 *
 * @validity as `compileLine`; steps that are short compared with the wavelength, $kh \le 0.1$; walls that open by no more than 45°.
 * @neglects what `compileLine` neglects; the curvature of the wave fronts in a flare; the added mass at each step.
 * @returns a kernel with the inner end near and the outer end far; A and D without unit, B in Pa·s/m³, C in m³/(Pa·s)
 * @throws InputError when it is compiled: `out-of-range`, and `not-finite`, `not-positive`, `unsorted` as `profileMass`
 * @source zwikker1949 line constants; fletcher1998 the horn equation, which it approaches
 * @example compileSteppedLine(flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' }))(frequencies, out)
 */
export function compileSteppedLine(
  profile: Profile,
  steps: number = usualSteps,
  air: Air = standardAir,
  walls: (section: LineSection) => LineSection = (section) => section,
): Chain {
  readAir(air);
  const faults: Fault[] = profileFaults(profile);
  if (!(Number.isInteger(steps) && steps >= 1 && steps <= 10000)) {
    const remedy = 'Give a whole number.';
    const expected = 'a whole number from 1 to 10000';
    faults.push({ code: 'out-of-range', path: 'steps', got: steps, expected, remedy });
  }
  refuse(faults);
  const length = profile.length / steps;
  const radii = Float64Array.from({ length: steps }, (_, i) => radiusAt(profile, (i + 0.5) * length));
  const medium = lineAir(air);
  const room = lineRoom();
  const sections = Array.from(radii, (radius) => walls(roundSectionOf(radius)));
  return (frequencies, { A, B, C, D }) => {
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      let [ar, ai, br, bi, cr, ci, dr, di] = [1, 0, 0, 0, 0, 0, 1, 0];
      for (let n = 0; n < steps; n++) {
        if (n === 0 || radii[n] !== radii[n - 1]) {
          const { area, layer } = sections[n]!;
          lineKernel(area, layer, medium, omega, room);
          chainKernel(length, mostNepers / steps, room);
        }
        const tr = room[4]!;
        const ti = room[5]!;
        const ur = room[6]!;
        const ui = room[7]!;
        const vr = room[8]!;
        const vi = room[9]!;
        [ar, ai, br, bi] = [
          ar * tr - ai * ti + br * vr - bi * vi,
          ar * ti + ai * tr + br * vi + bi * vr,
          ar * ur - ai * ui + br * tr - bi * ti,
          ar * ui + ai * ur + br * ti + bi * tr,
        ];
        [cr, ci, dr, di] = [
          cr * tr - ci * ti + dr * vr - di * vi,
          cr * ti + ci * tr + dr * vi + di * vr,
          cr * ur - ci * ui + dr * tr - di * ti,
          cr * ui + ci * ur + dr * ti + di * tr,
        ];
      }
      A.re[i] = ar;
      A.im[i] = ai;
      B.re[i] = br;
      B.im[i] = bi;
      C.re[i] = cr;
      C.im[i] = ci;
      D.re[i] = dr;
      D.im[i] = di;
    }
  };
}
