import { refuse } from '@airspring/core/fault';
import type { Harmonics } from './harmonics.js';

/** Harmonic distortion of a period with one tone. */
export interface HarmonicDistortion {
  /** Each order over the fundamental, by its order; 0 and 1 stand for 0 and 1. */
  readonly byOrder: Float64Array;
  /** All orders above the first together, over the fundamental. */
  readonly total: number;
}

/**
 * How large the harmonics of a tone are beside it:
 *
 * $$ d_k = \frac{a_k}{a_1},\qquad d = \sqrt{\sum_{k \ge 2} d_k^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a_k$ | `amplitudes` | any | amplitudes of the harmonics of the tone |
 *
 * @validity one tone whose fundamental is not zero
 * @neglects orders beyond the last that is given
 * @returns distortion by order and total, over the fundamental
 * @throws InputError `not-positive` for a fundamental of nothing
 * @source iec60268-5 harmonic distortion
 * @example harmonicDistortion(harmonicsOf(period, 10)).byOrder[3]
 */
export function harmonicDistortion({ amplitudes }: Pick<Harmonics, 'amplitudes'>): HarmonicDistortion {
  refuseSilent('amplitudes[1]', amplitudes[1]);
  const byOrder = amplitudes.map((value, k) => (k === 0 ? 0 : value / amplitudes[1]!));
  return { byOrder, total: Math.hypot(...byOrder.subarray(2)) };
}

/** Modulation of a high tone by a low one. */
export interface ModulationDistortion {
  /** Of the high tone with the low one, and with twice the low one. */
  readonly second: number;
  readonly third: number;
}

/**
 * How much a low tone modulates a high one: sidebands over the high tone,
 *
 * $$ d_2 = \frac{a(f_2 - f_1) + a(f_2 + f_1)}{a(f_2)},\qquad d_3 = \frac{a(f_2 - 2f_1) + a(f_2 + 2f_1)}{a(f_2)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_1, f_2$ | `low`, `high` | 1 | both tones as multiples of the base of the period |
 * | $a$ | `amplitudes` | any | amplitudes by multiple of the base |
 *
 * @validity sidebands that are no harmonics of the low tone: otherwise these are counted with them
 * @neglects sidebands of higher order
 * @returns second and third order, over the high tone
 * @throws InputError `not-positive` for a high tone that is not there
 * @source iec60268-5 modulation distortion
 * @example modulationDistortion(harmonicsOf(period, 20), 3, 15)
 */
export function modulationDistortion(
  { amplitudes }: Pick<Harmonics, 'amplitudes'>,
  low: number,
  high: number,
): ModulationDistortion {
  refuseSilent(`amplitudes[${high}]`, amplitudes[high]);
  const at = (order: number) => amplitudes[Math.abs(order)] ?? 0;
  const beside = (by: number) => (at(high - by) + at(high + by)) / at(high);
  return { second: beside(low), third: beside(2 * low) };
}

/** What is told over a tone needs one. */
function refuseSilent(path: string, got: number | undefined): void {
  if (got !== undefined && got > 0 && got < Infinity) return;
  const code = got !== undefined && !Number.isFinite(got) ? 'not-finite' : 'not-positive';
  refuse([
    { code, path, got, expected: 'the amplitude of a tone, above 0', remedy: 'Take apart a period that has it.' },
  ]);
}
