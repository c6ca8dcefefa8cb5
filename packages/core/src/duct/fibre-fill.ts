import { type Air, readAir, standardAir } from '../air/index.js';
import { type FlowResistivityInput, notNegative, readFields } from '../quantity/index.js';
import type { LineSection } from './line-section.js';

export interface FillInput {
  /** Pressure drop over 1 m of the fill for air that flows through it at 1 m/s. */
  readonly flowResistivity: FlowResistivityInput;
}

/**
 * The same section, loosely filled with fibre that does not move. The fibres resist the motion of the air, and keep it at one
 * temperature at low frequencies.
 *
 * $$ \frac{1}{1 - F_v'} = \frac{1}{1 - F_v} + \frac{\sigma}{j\omega\rho},\qquad
 *    \frac{1}{1 - F_t'} = \frac{1}{1 - F_t} + \frac{\sigma}{j\omega\rho\,\mathrm{Pr}} $$
 *
 * Without friction at the walls the density of the air becomes $\rho + \sigma/j\omega$, and its compressibility goes from
 * isothermal below $\sigma/(2\pi\rho\,\mathrm{Pr})$ to adiabatic above. The fibres exchange heat as they exchange momentum, as the
 * walls of narrow tubes do.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\sigma$ | `flowResistivity` | Pa·s/m² | flow resistivity |
 * | $F_v, F_t$ | `section` | 1 | see `lineConstants` |
 * | $\rho, \mathrm{Pr}$ | `air` | | the medium |
 *
 * @validity fibres that take up little of the volume, and $f \le \sigma/(2\pi\rho)$, where the layers of friction around fibres
 *   overlap. From a sixteenth of that up to it, attenuation is within 18 % and velocity within 13 % of the power laws that
 *   delany1970 drew through measurements (from memory). Above it the loss of a real fill grows further
 * @neglects the motion of the fibres, which the air drags along at low frequencies; the volume and the tortuosity of the fill;
 *   a resistance that grows with the speed of the air
 * @returns a {@link LineSection}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zwikker1949 rigid frame, low frequencies; delany1970 for comparison
 * @example withFill(roundSection({ diameter: '150 mm' }), { flowResistivity: '2000 Pa·s/m²' })
 */
export function withFill(section: LineSection, fill: FillInput, air: Air = standardAir): LineSection {
  readAir(air);
  const { flowResistivity } = readFields('fill', fill, { flowResistivity: notNegative('flowResistivity') });
  return fillOf(section, flowResistivity, air.viscosity);
}

/** {@link withFill} for an unchecked flow resistivity in Pa·s/m². */
export const fillOf = (section: LineSection, flowResistivity: number, viscosity: number): LineSection =>
  flowResistivity === 0
    ? section
    : {
        ...section,
        layer: (s, out) => {
          section.layer(s, out);
          // 1/(1 − F) = (c − jd)/(c² + d²); σ/jωρ is −jσ/μs², and σ/jωρPr likewise with the s of heat.
          const [c, d] = [out[2]!, out[3]!];
          const unit = 1 / (c * c + d * d);
          const re = c * unit;
          const im = -d * unit - flowResistivity / (viscosity * s * s);
          const size = 1 / (re * re + im * im);
          out[2] = re * size;
          out[3] = -im * size;
          // F = (w − 1)/w with w = re + j im, so that nothing cancels where F is small: w − 1 = F/(1 − F) + σ/jωρ.
          const a = (out[0]! * c + out[1]! * d) * unit;
          const b = (out[1]! * c - out[0]! * d) * unit - flowResistivity / (viscosity * s * s);
          out[0] = (a * re + b * im) * size;
          out[1] = (b * re - a * im) * size;
        },
        sources: [...section.sources, 'zwikker1949'],
      };
