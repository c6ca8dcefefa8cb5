import { besselJ1, struveH1 } from '../numeric/index.js';
import { type Opening, unflanged } from './end-correction.js';

/**
 * The radiation impedance of an opening. It fills out[0], out[1] with the real and imaginary part of the impedance over
 * $\rho c/S$, for the wave number k in rad/m. It is a function that names its sources, and you can use your own in the same way.
 */
export interface Radiation {
  (opening: Opening, k: number, out: Float64Array): void;
  readonly name: string;
  /** Citation keys. */
  readonly sources: readonly string[];
  /** Greatest $ka$ for which it holds. Left out when no limit is known. */
  readonly greatestKa?: number;
}

/**
 * Exact radiation impedance of a rigid piston in a wide wall.
 *
 * $$ \frac{Z}{\rho c/S} = 1 - \frac{2J_1(2ka)}{2ka} + j\,\frac{2\mathbf H_1(2ka)}{2ka} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | radius |
 * | $k$ | `k` | rad/m | wave number |
 *
 * @validity any ka.
 * @neglects the edges of the wall.
 * @returns nothing; fills `out`
 * @source rayleigh1896 sec. 302
 * @example pistonRadiation({ radius: 0.05 }, 20, out) // out: 0.4232752, 0.6467637
 */
export const pistonRadiation: Radiation = Object.assign(
  function pistonRadiation({ radius }: Opening, k: number, out: Float64Array): void {
    const x = 2 * k * radius;
    out[0] = x < 1 ? smallResistance(x) : 1 - (2 * besselJ1(x)) / x;
    out[1] = (2 * struveH1(x)) / x;
  },
  { sources: ['rayleigh1896'] },
);

/** 1 − 2 J1(x)/x by its power series, which avoids the difference. */
function smallResistance(x: number): number {
  const q = (-x * x) / 4;
  let term = 1;
  let sum = 0;
  for (let n = 1; n < 12; n++) {
    term *= q / (n * (n + 1));
    sum -= term;
  }
  return sum;
}

/**
 * Radiation impedance of a thin tube that ends in free air, from published fits of the length and of the reflection.
 *
 * $$ \frac{Z}{\rho c/S} = \frac{1 - m e^{-2jk\Delta\ell}}{1 + m e^{-2jk\Delta\ell}},\qquad
 *    m = \frac{1 + 0.2\,ka - 0.084\,(ka)^2}{1 + 0.2\,ka + 0.416\,(ka)^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | inner radius |
 * | $k$ | `k` | rad/m | wave number |
 * | $\Delta\ell$ | | m | {@link unflanged} |
 * | $m$ | | 1 | modulus of the reflection |
 *
 * @validity $ka \le 1.5$: resistance within 2 %, reactance within 0.6 % of the exact integrals. Passive at all ka.
 * @neglects wall thickness, flow.
 * @returns nothing; fills `out`
 * @source dalmont2001 unflanged fits
 * @example unflangedRadiation({ radius: 0.05 }, 10, out) // out: 0.05970, 0.29925
 */
export const unflangedRadiation: Radiation = Object.assign(
  function unflangedRadiation(opening: Opening, k: number, out: Float64Array): void {
    const x = k * opening.radius;
    const angle = 2 * k * unflanged(opening, k);
    // 1 − m, which the difference would lose at small ka.
    const missing = (0.5 * x * x) / (1 + 0.2 * x + 0.416 * x * x);
    const m = 1 - missing;
    const unit = 1 / (1 + 2 * m * Math.cos(angle) + m * m);
    out[0] = missing * (1 + m) * unit;
    out[1] = 2 * m * Math.sin(angle) * unit;
  },
  { sources: ['dalmont2001'], greatestKa: 1.5 },
);

/**
 * Radiation impedance of a tube that ends flush with a wide wall, from a published fit in powers of ka.
 *
 * $$ \frac{Z}{\rho c/S} = \frac{(ka)^2\left[0.5 + 0.1053\,(ka)^2\right] + j\,ka\left[0.82159 + 0.059\,(ka)^2\right]}
 *    {1 + (ka)^2\left[0.358 + 0.1053\,(ka)^2\right]} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | inner radius |
 * | $k$ | `k` | rad/m | wave number |
 *
 * The fits of length and reflection that belong to {@link flanged} would give a resistance that is 5 % too low at ka = 0.3.
 *
 * @validity $ka \le 1$: resistance within 1.1 %, reactance within 1.2 % of the exact solution; up to $ka = 3$ within 7 and
 *   31 %. Passive at all ka.
 * @neglects the edges of the wall, flow.
 * @returns nothing; fills `out`
 * @source silva2009 rational fit of the infinitely flanged pipe, read second-hand
 * @example flangedRadiation({ radius: 0.05 }, 10, out) // out: 0.12005, 0.38151
 */
export const flangedRadiation: Radiation = Object.assign(
  function flangedRadiation({ radius }: Opening, k: number, out: Float64Array): void {
    const x = k * radius;
    const square = x * x;
    const unit = 1 / (1 + square * (0.358 + 0.1053 * square));
    out[0] = square * (0.5 + 0.1053 * square) * unit;
    out[1] = x * (0.82159 + 0.059 * square) * unit;
  },
  { sources: ['silva2009'], greatestKa: 1 },
);
