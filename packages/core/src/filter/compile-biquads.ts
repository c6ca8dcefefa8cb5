import { type Fault, refuse } from '../fault/index.js';
import type { Biquad, DigitalFilter } from './biquads.js';
import type { FilterKernel } from './compile.js';

const NAMES = ['b0', 'b1', 'b2', 'a1', 'a2'] as const;

/** Whether the output dies away by itself. */
export const isStable = ({ a1, a2 }: Biquad): boolean => Math.abs(a2) < 1 && Math.abs(a1) < 1 + a2;

/** The faults of digital sections from any source. */
function judge({ sampleRate, sections }: DigitalFilter): Fault[] {
  const faults: Fault[] = [];
  if (!(sampleRate > 0 && sampleRate < Infinity)) {
    const [path, expected, remedy] = ['digital.sampleRate', 'a frequency above 0', 'Give the rate in hertz.'];
    faults.push({ code: 'not-positive', path, got: sampleRate, expected, remedy });
  }
  for (const [i, section] of sections.entries()) {
    const path = `digital.sections[${i}]`;
    const bad = NAMES.filter((name) => !Number.isFinite(section[name]));
    for (const name of bad) {
      const got = section[name];
      faults.push({
        code: 'not-finite',
        path: `${path}.${name}`,
        got,
        expected: 'a finite number',
        remedy: 'Check the coefficients.',
      });
    }
    if (bad.length === 0 && !isStable(section)) {
      const expected = 'a stable section: |a2| < 1 and |a1| < 1 + a2';
      const remedy = 'Check the signs of a1 and a2: the output is b0 x[n] + … − a1 y[n−1] − a2 y[n−2].';
      faults.push({ code: 'inconsistent', path, got: `a1 ${section.a1}, a2 ${section.a2}`, expected, remedy });
    }
  }
  return faults;
}

/**
 * Compiles digital sections into a kernel that multiplies any response by theirs.
 *
 * $$ H(e^{j\theta}) = \prod_i \frac{b_{0i} + b_{1i} e^{-j\theta} + b_{2i} e^{-2j\theta}}{1 + a_{1i} e^{-j\theta} + a_{2i} e^{-2j\theta}}, \quad
 *    \theta = 2\pi f/f_s $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $b_{ki}$, $a_{ki}$ | `sections` | 1 | coefficients, $a_0 = 1$ |
 * | $f_s$ | `sampleRate` | Hz | sample rate |
 *
 * @validity stable sections; frequencies up to half the sample rate, above which the response repeats itself
 * @neglects the hold of the converter, and rounding of the samples
 * @returns a {@link FilterKernel}; exp(+jωt)
 * @throws InputError `not-finite`, `not-positive`, `inconsistent`
 * @source oppenheim1975 ch. 2, frequency response of a difference equation
 * @example compileBiquads(biquads(filter, { sampleRate: '48 kHz' }))(grid, pressure) // pressure is filtered now
 */
export function compileBiquads(digital: DigitalFilter): FilterKernel {
  refuse(judge(digital));
  const { sampleRate } = digital;
  // Numerator and denominator turned by one sample: a sum that nearly vanishes at 0 is taken once, and loses nothing later.
  const sections = digital.sections.map(({ b0, b1, b2, a1, a2 }) =>
    Float64Array.of(b0 + b2 + b1, b0 + b2, b0 - b2, 1 + a1 + a2, 1 + a2, 1 - a2),
  );
  return (grid, { re, im }) => {
    for (let i = 0; i < grid.length; i++) {
      const half = (Math.PI * grid[i]!) / sampleRate;
      const square = 2 * Math.sin(half) ** 2;
      const sine = Math.sin(2 * half);
      let x = re[i]!;
      let y = im[i]!;
      for (const part of sections) {
        const a = part[0]! - part[1]! * square;
        const b = part[2]! * sine;
        const c = part[3]! - part[4]! * square;
        const d = part[5]! * sine;
        const inverse = 1 / (c * c + d * d);
        const gainRe = (a * c + b * d) * inverse;
        const gainIm = (b * c - a * d) * inverse;
        const turned = x * gainRe - y * gainIm;
        y = x * gainIm + y * gainRe;
        x = turned;
      }
      re[i] = x;
      im[i] = y;
    }
  };
}
