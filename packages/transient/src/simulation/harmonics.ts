import { type Fault, refuse } from '@airspring/core/fault';

/** The harmonics of one period: amplitude, and phase in rad of the cosine, from the mean (order 0) on. */
export interface Harmonics {
  readonly amplitudes: Float64Array;
  readonly phases: Float64Array;
}

/**
 * The harmonics of a signal of which one period is given, by the sums of Fourier:
 *
 * $$ c_k = \frac{2}{N}\sum_{n=0}^{N-1} y_n\,e^{-2\pi j k n/N} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $y_n$ | `period` | any | N samples of one period |
 * | $k$ | | 1 | order, up to `most`; the mean is c₀/2 |
 *
 * @validity orders below half of the samples; higher ones are folded onto these
 * @neglects nothing
 * @returns amplitude and phase of each order, the mean with its sign as amplitude of order 0
 * @throws InputError `empty`, `not-finite`, `out-of-range`
 * @source oppenheim1997 ch. 3 (Fourier series of a periodic sequence)
 * @example harmonicsOf([0, 1, 0, -1], 1).amplitudes // 0, 1
 */
export function harmonicsOf(period: ArrayLike<number>, most: number): Harmonics {
  refuse(faultsOf(period, most));
  const N = period.length;
  const [amplitudes, phases] = [new Float64Array(most + 1), new Float64Array(most + 1)];
  for (let k = 0; k <= most; k++) {
    let re = 0;
    let im = 0;
    for (let n = 0; n < N; n++) {
      // Whole turns are left out, so that the angle keeps its digits.
      const angle = (2 * Math.PI * ((k * n) % N)) / N;
      re += period[n]! * Math.cos(angle);
      im -= period[n]! * Math.sin(angle);
    }
    amplitudes[k] = k === 0 ? re / N : (2 * Math.hypot(re, im)) / N;
    phases[k] = k === 0 ? 0 : Math.atan2(im, re);
  }
  return { amplitudes, phases };
}

function faultsOf(period: ArrayLike<number>, most: number): Fault[] {
  const fault = (code: Fault['code'], path: string, got: unknown, expected: string, remedy: string): Fault[] => [
    { code, path, got, expected, remedy },
  ];
  const remedy = 'Give the samples of one period.';
  if (!(period?.length > 0)) return fault('empty', 'period', period, 'a list of at least one sample', remedy);
  if (!Number.isInteger(most) || most < 0)
    return fault('out-of-range', 'most', most, 'a whole number from 0', 'Give the greatest order.');
  const odd = Array.from(period).findIndex((sample) => !Number.isFinite(sample));
  return odd < 0 ? [] : fault('not-finite', `period[${odd}]`, period[odd], 'a finite number', 'Correct the signal.');
}
