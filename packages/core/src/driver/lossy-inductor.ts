import { positive, type RatioInput, readFields } from '../quantity/index.js';
import type { CoilModel } from './coil.js';
import { coilOverFrequency } from './coil-over-frequency.js';
import { exponent } from './exponent.js';

const build = (K: number, n: number): CoilModel =>
  coilOverFrequency({
    name: 'lossy inductor',
    parameters: { K, exponent: n },
    sources: ['leach2002'],
    impedance: (values, w, out) => {
      const [size, angle] = [values[0]! * w ** values[1]!, (values[1]! * Math.PI) / 2];
      out[0] = size * Math.cos(angle);
      out[1] = size * Math.sin(angle);
    },
    slopes: (values, w, out) => {
      const [power, angle] = [w ** values[1]!, (values[1]! * Math.PI) / 2];
      const [re, im] = [power * Math.cos(angle), power * Math.sin(angle)];
      const [x, y] = [values[0]! * re, values[0]! * im];
      const log = Math.log(w);
      out[0] = values[1]! * x;
      out[1] = values[1]! * y;
      out[2] = re;
      out[3] = im;
      // ∂/∂n of (jω)ⁿ is (jω)ⁿ (ln ω + jπ/2).
      out[4] = x * log - (y * Math.PI) / 2;
      out[5] = y * log + (x * Math.PI) / 2;
    },
    scaled: (impedance, time) => build(K * impedance * time ** n, n),
  });

/**
 * A voice coil whose inductance is lossy because eddy currents flow in the iron: its impedance follows a power of frequency.
 *
 * $$ Z_E = R_e + K (j\omega)^n = R_e + K\omega^n\left(\cos\frac{n\pi}{2} + j\sin\frac{n\pi}{2}\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $K$ | `K` | Ω·sⁿ | size of the impedance at 1 rad/s |
 * | $n$ | `exponent` | 1 | 1 without loss, 0.5 where eddy currents take all; 0.6 to 0.7 is usual |
 *
 * @validity from where the loss is felt, about 200 Hz, to 20 kHz; a straight line in the logarithms of size and frequency
 * @neglects the bend towards a lossless inductance at low frequency, and any dependence on position and current
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range` for an exponent that is not above 0 and up to 1
 * @source leach2002 lossy inductance: Z = K (jω)ⁿ
 * @example driver({ ...ten, coil: lossyInductor({ K: 0.02, exponent: 0.7 }) })
 */
export function lossyInductor(input: { readonly K: RatioInput; readonly exponent: number }): CoilModel {
  const read = readFields('lossyInductor', input, { K: positive('ratio'), exponent: exponent(1) });
  return build(read.K, read.exponent);
}
