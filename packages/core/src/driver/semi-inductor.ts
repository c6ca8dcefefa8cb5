import {
  type InductanceInput,
  notNegative,
  positive,
  type RatioInput,
  type ResistanceInput,
  readFields,
} from '../quantity/index.js';
import type { CoilModel } from './coil.js';
import { coilOverFrequency } from './coil-over-frequency.js';

/** What {@link semiInductor} takes. */
export interface SemiInductorInput {
  readonly Leb: InductanceInput;
  readonly Le: InductanceInput;
  readonly K: RatioInput;
  readonly Rss: ResistanceInput;
}

const shape = {
  Leb: notNegative('inductance'),
  Le: positive('inductance'),
  K: positive('ratio'),
  Rss: positive('resistance'),
};

const build = (Leb: number, Le: number, K: number, Rss: number): CoilModel =>
  coilOverFrequency({
    name: 'semi-inductor',
    parameters: { Leb, Le, K, Rss },
    sources: ['thorborg2008', 'vanderkooy1989'],
    impedance: (values, w, out) => {
      // 1/(K √(jω)) = (1 − j)/(K √(2ω)).
      const half = 1 / (values[2]! * Math.sqrt(2 * w));
      const conductance = 1 / values[3]! + half;
      const susceptance = 1 / (w * values[1]!) + half;
      const size = conductance * conductance + susceptance * susceptance;
      out[0] = conductance / size;
      out[1] = w * values[0]! + susceptance / size;
    },
    slopes: (values, w, out) => {
      const [eb = 0, e = 0, k = 0, ss = 0] = [values[0], values[1], values[2], values[3]];
      const half = 1 / (k * Math.sqrt(2 * w));
      const conductance = 1 / ss + half;
      const susceptance = 1 / (w * e) + half;
      const size = conductance * conductance + susceptance * susceptance;
      const [x, y] = [conductance / size, susceptance / size];
      // (x + jy)² times −∂Y: of the three side by side.
      const [re, im] = [x * x - y * y, 2 * x * y];
      const put = (at: number, a: number, b: number) => {
        out[at] = re * a - im * b;
        out[at + 1] = re * b + im * a;
      };
      put(0, half / 2, -1 / (w * e) - half / 2);
      out[1] = out[1]! + w * eb;
      out[2] = 0;
      out[3] = w;
      put(4, 0, -1 / (w * e * e));
      put(6, half / k, -half / k);
      put(8, 1 / (ss * ss), 0);
    },
    scaled: (impedance, time) =>
      build(Leb * impedance * time, Le * impedance * time, K * impedance * Math.sqrt(time), Rss * impedance),
  });

/**
 * A voice coil around iron in which the field only reaches a thin layer: an inductance, in series with an inductance, a
 * semi-inductance and a resistance side by side. The impedance of a semi-inductance rises with the root of frequency.
 *
 * $$ Z_E = R_e + j\omega L_{eb} + \left(\frac{1}{j\omega L_e} + \frac{1}{K\sqrt{j\omega}} + \frac{1}{R_{ss}}\right)^{-1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L_{eb}$ | `Leb` | H | inductance of the turns that are outside the iron; 0 for none |
 * | $L_e$ | `Le` | H | inductance at low frequency, beside the semi-inductance |
 * | $K$ | `K` | Ω·√s | semi-inductance |
 * | $R_{ss}$ | `Rss` | Ω | losses of a shorting ring; a very large value for none |
 *
 * @validity the audio band
 * @neglects any dependence on position and current
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source thorborg2008 equivalent circuit with semi-inductor (recalled); vanderkooy1989 impedance of eddy currents, K √(jω)
 * @example driver({ ...ten, coil: semiInductor({ Leb: '0.1 mH', Le: '1 mH', K: 0.03, Rss: '50 ohm' }) })
 */
export function semiInductor(input: SemiInductorInput): CoilModel {
  const { Leb, Le, K, Rss } = readFields('semiInductor', input, shape);
  return build(Leb, Le, K, Rss);
}
