import { type Air, readAir, standardAir } from '../air/index.js';
import type { Warning } from '../fault/index.js';
import { type FrequencyInput, given, positive, readFields, type Speed, si } from '../quantity/index.js';
import { lineAir, lineKernel, lineRoom } from './line-kernel.js';
import type { LineSection } from './line-section.js';

/** The properties of a line at one frequency. */
export interface LineConstants {
  /** α, Np/m. */
  readonly attenuation: number;
  /** β, rad/m. */
  readonly phaseConstant: number;
  readonly phaseVelocity: Speed;
  /** Z, Pa·s/m³: ratio of pressure to volume flow in a wave that travels in one direction. */
  readonly impedance: { readonly re: number; readonly im: number };
  readonly warnings: readonly Warning[];
}

export interface LineInput {
  readonly section: LineSection;
  readonly frequency: FrequencyInput;
}

const shape = { section: given<LineSection>(), frequency: positive('frequency') };

/**
 * Attenuation, phase velocity and characteristic impedance of a line, with friction and heat conduction at its walls. They are
 * exact for wavelengths that are long compared with the section.
 *
 * $$ \Gamma = \alpha + j\beta = \frac{j\omega}{c}\sqrt{\frac{1 + (\gamma - 1)F_t}{1 - F_v}},\qquad
 *    Z = \frac{\rho c}{S}\,\frac{1}{\sqrt{(1 - F_v)\,(1 + (\gamma - 1)F_t)}},\qquad
 *    s_v = \sqrt{\frac{\omega\rho}{\mu}},\quad s_t = s_v\sqrt{\mathrm{Pr}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $F_v, F_t$ | `section` | 1 | fraction of the section in the viscous and the thermal boundary layer, at $s_v$ and $s_t$ |
 * | $\omega$ | `frequency` | rad/s | $2\pi f$ |
 * | $\rho, c, \gamma, \mu, \mathrm{Pr}$ | `air` | | the medium |
 *
 * @validity smooth walls, and frequencies below the first transverse mode; above it results carry the warning `outside-validity`.
 * @neglects losses in the free air, flow, large amplitudes.
 * @returns Np/m, rad/m, m/s, Pa·s/m³, with warnings
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zwikker1949 line constants; keefe1984 and stinson1991 in the same form
 * @example lineConstants({ section: roundSection({ diameter: '75 mm' }), frequency: '40 Hz' }).attenuation // 0.00502 Np/m
 */
export function lineConstants(input: LineInput, air: Air = standardAir): LineConstants {
  readAir(air);
  const { section, frequency } = readFields('line', input, shape);
  const omega = 2 * Math.PI * frequency;
  const room = lineRoom();
  lineKernel(section.area, section.layer, lineAir(air), omega, room);
  const [attenuation, phaseConstant, re, im] = [room[0]!, room[1]!, room[2]!, room[3]!];
  return {
    attenuation,
    phaseConstant,
    phaseVelocity: si('speed', omega / phaseConstant),
    impedance: { re, im },
    warnings: lineWarnings(section, omega / air.speedOfSound),
  };
}

/** Warns when a wave number is above the first transverse mode of a section, and repeats the warnings of the section. */
export function lineWarnings({ width, cutOn, warnings }: LineSection, k: number): readonly Warning[] {
  if (k * width <= cutOn) return warnings;
  const expected = `at most ${cutOn}, below the first transverse mode`;
  return [...warnings, { code: 'outside-validity', path: 'k·width', got: k * width, expected }];
}
