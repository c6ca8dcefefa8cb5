import { type Fault, refuse } from '../fault/index.js';
import { polynomialProduct } from '../numeric/index.js';
import { decimalText, type Frequency, type FrequencyInput, positive, readFieldsInto } from '../quantity/index.js';
import type { Filter } from './filter.js';

/** A high-pass given by the quality factors of its second-order sections. An odd order also has one first-order section. */
export type HighPassByQInput =
  | { readonly order: 1; readonly corner: FrequencyInput }
  | { readonly order: 2 | 3; readonly corner: FrequencyInput; readonly Q: number }
  | { readonly order: 4; readonly corner: FrequencyInput; readonly Q: readonly [number, number] };

const leastQ = 0.05;
const greatestQ = 50;

/** Product of sections with the same corner, in rad/s. The inputs are not checked. */
export function highPass(name: string, order: number, corner: Frequency, Q: readonly number[]): Filter {
  const w0 = 2 * Math.PI * corner;
  const sections = Q.map((q) => [w0 * w0, w0 / q, 1]);
  if (order % 2 === 1) sections.push([w0, 1]);
  const denominator = Array.from(sections.reduce<ArrayLike<number>>(polynomialProduct, [1]));
  const numerator = denominator.map((_, k) => (k === order ? 1 : 0));
  return {
    kind: 'high-pass',
    name: `${name} of order ${order} at ${decimalText(corner, 4)} Hz`,
    numerator,
    denominator,
  };
}

/** How the order, 1 to 4, and the corner are read. */
export const highPassShape = {
  corner: positive('frequency'),
  order: {
    optional: false,
    read: (faults: Fault[], value: unknown, path: string): 1 | 2 | 3 | 4 | undefined => {
      if (value === 1 || value === 2 || value === 3 || value === 4) return value;
      const code = typeof value === 'number' && !Number.isFinite(value) ? 'not-finite' : 'out-of-range';
      faults.push({ code, path, got: value, expected: '1, 2, 3 or 4', remedy: 'Choose one of them.' });
      return undefined;
    },
  },
} as const;

/** Reads no, one or two quality factors, depending on the order. */
function readQ(faults: Fault[], order: number, value: unknown): number[] {
  const path = 'highPass.Q';
  const list = value === undefined ? [] : Array.isArray(value) ? value : [value];
  const wanted = Math.floor(order / 2);
  if (list.length !== wanted) {
    const expected = ['no Q for order 1', 'one Q', 'a list of two Q values'][wanted] as string;
    const code = value === undefined ? 'empty' : 'inconsistent';
    faults.push({ code, path, got: value, expected, remedy: 'Give one Q for each second-order section.' });
  }
  list.forEach((got, i) => {
    const at = Array.isArray(value) ? `${path}[${i}]` : path;
    const expected = `a Q of ${leastQ} to ${greatestQ}`;
    const fault = (code: Fault['code'], remedy: string) => faults.push({ code, path: at, got, expected, remedy });
    if (!Number.isFinite(got)) fault('not-finite', 'Give a number.');
    else if (got <= 0) fault('not-positive', 'Check the sign.');
    else if (got < leastQ || got > greatestQ) fault('out-of-range', 'Check the power of ten.');
  });
  return list;
}

/**
 * High-pass given by its corner and quality factors. All sections have the same corner.
 *
 * $$ H(s) = \prod_i \frac{s^2}{s^2 + s\,\omega_0/Q_i + \omega_0^2} \cdot
 *    \begin{cases} 1 & n \text{ even} \\ s/(s + \omega_0) & n \text{ odd} \end{cases} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 1 to 4 |
 * | $\omega_0/2\pi$ | `corner` | Hz | corner, where a second-order section has the gain $Q$ |
 * | $Q_i$ | `Q` | 1 | quality factor; for order 4 a list of two |
 *
 * @validity 0.05 ≤ Q ≤ 50.
 * @neglects the electronics that realise it: noise, headroom, tolerances.
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`, `unknown-field`
 * @source zverev1967 ch. 2
 * @example highPassByQ({ order: 2, corner: '25 Hz', Q: 2 }) // +6.02 dB at 25 Hz, −12 dB per octave below
 */
export function highPassByQ(input: HighPassByQInput): Filter {
  const faults: Fault[] = [];
  const { Q: value, ...rest } = (input ?? {}) as { readonly Q?: unknown };
  const read = readFieldsInto(faults, 'highPass', rest, highPassShape);
  const order = [1, 2, 3, 4].find((n) => n === input?.order);
  const Q = order === undefined ? [] : readQ(faults, order, value);
  refuse(faults);
  const { order: n, corner } = read as NonNullable<typeof read>;
  const name = Q.length === 0 ? 'High-pass' : `High-pass with Q ${Q.map((q) => decimalText(q, 3)).join(' and ')}`;
  return highPass(name, n, corner, Q);
}
