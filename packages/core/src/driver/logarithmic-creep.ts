import { type FrequencyInput, positive, type RatioInput, readFields } from '../quantity/index.js';
import type { SuspensionModel } from './suspension.js';
import { suspensionOverFrequency } from './suspension-over-frequency.js';

const QUARTER = Math.PI / (2 * Math.LN10);

const build = (lambda: number, frequency: number): SuspensionModel =>
  suspensionOverFrequency({
    name: 'logarithmic creep',
    parameters: { lambda, frequency },
    sources: ['knudsen1993'],
    compliance: (values, w, out) => {
      out[0] = 1 - values[0]! * Math.log10(w / (2 * Math.PI * values[1]!));
      out[1] = -values[0]! * QUARTER;
    },
    slopes: (values, w, out) => {
      out.fill(0, 0, 6);
      out[0] = -values[0]! / Math.LN10;
      out[2] = -Math.log10(w / (2 * Math.PI * values[1]!));
      out[3] = -QUARTER;
      out[4] = values[0]! / (Math.LN10 * values[1]!);
    },
    scaled: (time) => build(lambda, frequency / time),
  });

/**
 * A suspension that creeps: under a lasting force it goes on yielding, by the same amount in each tenfold time. Its compliance
 * falls with the logarithm of frequency, and it has a loss that goes with it.
 *
 * $$ C(j\omega) = C_{ms}\left(1 - \lambda\log_{10}\frac{j\omega}{\omega_0}\right),\quad \log_{10} j = \frac{j\pi}{2\ln 10} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\lambda$ | `lambda` | 1 | share of Cms by which the compliance grows in each decade downwards; often 0.03 to 0.15 (from memory) |
 * | $\omega_0/2\pi$ | `at` | Hz | where the real part is Cms: the resonance fs at which Cms was found |
 *
 * @validity three decades around `at`; up to the frequency at which the compliance would vanish, 10^(1/λ) times `at`
 * @neglects that the compliance ends somewhere towards zero frequency, and any dependence on travel
 * @returns the model; exp(+jωt)
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source knudsen1993 LOG model of creep (form recalled)
 * @example driver({ ...ten, suspension: logarithmicCreep({ lambda: 0.05, at: '27 Hz' }) })
 */
export function logarithmicCreep(input: { readonly lambda: RatioInput; readonly at: FrequencyInput }): SuspensionModel {
  const { lambda, at } = readFields('logarithmicCreep', input, {
    lambda: positive('ratio'),
    at: positive('frequency'),
  });
  return build(lambda, at);
}
