import { decimalText, type FrequencyInput, read } from '../quantity/index.js';
import type { Filter } from './filter.js';
import { highPassOf } from './product.js';
import { type FilterShape, refuseBadShape } from './shape.js';

const nameOf = (kind: string, { name, denominator }: FilterShape, corner: number): string =>
  `${kind} of order ${denominator.length - 1} at ${decimalText(corner, 4)} Hz, ${name}`;

/**
 * The high-pass of a shape: a low-pass with its frequency axis turned over.
 *
 * $$ H(s) = \frac{1}{D(\omega_0/s)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $D$ | `shape` | 1 | denominator of the low-pass over its corner |
 * | $\omega_0/2\pi$ | `corner` | Hz | corner: half the power passes there, or what the shape says |
 *
 * @validity any corner; shapes of order 1 to 8
 * @neglects the electronics that realise it: noise, headroom, tolerances.
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`
 * @source zverev1967 ch. 2, low-pass to high-pass by s → 1/s
 * @example highPass(butterworthShape(2), '25 Hz').denominator // [24674, 222.1, 1]
 */
export function highPass(shape: FilterShape, corner: FrequencyInput): Filter {
  refuseBadShape(shape);
  const hertz = read('frequency', corner, 'corner');
  const w0 = 2 * Math.PI * hertz;
  const order = shape.denominator.length - 1;
  const denominator = highPassOf(shape.denominator).map((value, k) => value * w0 ** (order - k));
  return {
    kind: 'high-pass',
    name: nameOf('High-pass', shape, hertz),
    numerator: denominator.map((_, k) => (k === order ? 1 : 0)),
    denominator,
  };
}

/**
 * The low-pass of a shape.
 *
 * $$ H(s) = \frac{1}{D(s/\omega_0)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $D$ | `shape` | 1 | denominator of the low-pass over its corner |
 * | $\omega_0/2\pi$ | `corner` | Hz | corner: half the power passes there, or what the shape says |
 *
 * @validity any corner; shapes of order 1 to 8
 * @neglects the electronics that realise it: noise, headroom, tolerances.
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`
 * @source zverev1967 ch. 2
 * @example lowPass(linkwitzRileyShape(4), '80 Hz') // a quarter of the power at 80 Hz, −24 dB per octave above
 */
export function lowPass(shape: FilterShape, corner: FrequencyInput): Filter {
  refuseBadShape(shape);
  const hertz = read('frequency', corner, 'corner');
  const w0 = 2 * Math.PI * hertz;
  const order = shape.denominator.length - 1;
  const last = shape.denominator[order]!;
  const denominator = shape.denominator.map((value, k) => (value / last) * w0 ** (order - k));
  return {
    kind: 'low-pass',
    name: nameOf('Low-pass', shape, hertz),
    numerator: [denominator[0]!],
    denominator,
  };
}
