/**
 * How a voltage that is known at samples alone goes on between them: from `start` it rises by `rise` over the interval. Each is a
 * sum of the samples at the two ends of the interval, given by two weights. Ours and your own are used alike.
 */
export interface Hold {
  readonly name: string;
  readonly start: readonly [earlier: number, later: number];
  readonly rise: readonly [earlier: number, later: number];
  readonly sources: readonly string[];
}

/** Each sample is held until the next: what a converter without a filter gives. It comes half an interval late. */
export const zeroOrderHold: Hold = { name: 'zero order', start: [1, 0], rise: [0, 0], sources: ['oppenheim1997'] };

/** Straight lines between the samples. It comes in time, and loses less than 0.001 dB below a fiftieth of the sample rate. */
export const firstOrderHold: Hold = { name: 'first order', start: [1, 0], rise: [-1, 1], sources: ['oppenheim1997'] };

/**
 * What a hold makes of a sine: the transfer from the samples to the voltage at the same frequency. Beside it the voltage has images
 * at the sums and differences with multiples of the sample rate, each with the transfer at its own frequency.
 *
 * $$ H(\theta) = (s_0 + s_1 e^{j\theta})\,E_0 + (r_0 + r_1 e^{j\theta})\,E_1,\quad
 *    E_0 = \int_0^1 e^{-j\theta\tau}\,d\tau,\quad E_1 = \int_0^1 \tau e^{-j\theta\tau}\,d\tau $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\theta$ | `frequency`, `sampleRate` | rad | 2π times frequency over sample rate |
 * | $s_0, s_1$ | `start` | 1 | weights of the earlier and the later sample at the start of an interval |
 * | $r_0, r_1$ | `rise` | 1 | weights of both in the rise over the interval |
 *
 * For zero order it is $\mathrm{sinc}(\theta/2)\,e^{-j\theta/2}$, for first order $\mathrm{sinc}^2(\theta/2)$. A positive real part
 * with an angle below zero is a voltage that comes late.
 *
 * @validity frequencies of either sign and any size, Hz
 * @neglects nothing
 * @returns real and imaginary part
 * @source oppenheim1997 ch. 7 (reconstruction by a hold)
 * @example holdTransfer(firstOrderHold, 24_000, 48_000) // { re: 0.405, im: 0 }
 */
export function holdTransfer(
  { start, rise }: Hold,
  frequency: number,
  sampleRate: number,
): { readonly re: number; readonly im: number } {
  const angle = (2 * Math.PI * frequency) / sampleRate;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const e0 = integral(angle, 0);
  const e1 = integral(angle, 1);
  const [sr, si] = [start[0] + start[1] * cos, start[1] * sin];
  const [rr, ri] = [rise[0] + rise[1] * cos, rise[1] * sin];
  return {
    re: sr * e0.re - si * e0.im + rr * e1.re - ri * e1.im,
    im: sr * e0.im + si * e0.re + rr * e1.im + ri * e1.re,
  };
}

/** ∫ τ^power e^(−jθτ) dτ from 0 to 1, for a power of 0 or 1. */
function integral(angle: number, power: 0 | 1): { readonly re: number; readonly im: number } {
  if (Math.abs(angle) < 1) {
    // The closed form would cancel: Σ (−jθ)^k / (k! (k + 1 + power)).
    let [re, im, size] = [0, 0, 1];
    for (let k = 0; k < 24; size *= angle / ++k) {
      const term = size / (k + 1 + power);
      if (k % 2 === 0) re += k % 4 === 0 ? term : -term;
      else im += k % 4 === 1 ? -term : term;
    }
    return { re, im };
  }
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  if (power === 0) return { re: sin / angle, im: (cos - 1) / angle };
  return { re: (cos + angle * sin - 1) / angle ** 2, im: (angle * cos - sin) / angle ** 2 };
}
