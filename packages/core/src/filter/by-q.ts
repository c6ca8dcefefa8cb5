import { type Fault, refuse } from '../fault/index.js';
import { unlessWhole } from '../numeric/refusal.js';
import { decimalText } from '../quantity/index.js';
import { productOf } from './product.js';
import { type FilterShape, MOST_ORDER } from './shape.js';

/** Order and quality factors of second-order sections. An odd order also has one first-order section. */
export type ShapeByQInput =
  | { readonly order: 1 }
  | { readonly order: 2 | 3; readonly Q: number | readonly [number] }
  | { readonly order: 4 | 5; readonly Q: readonly [number, number] }
  | { readonly order: 6 | 7; readonly Q: readonly [number, number, number] }
  | { readonly order: 8; readonly Q: readonly [number, number, number, number] };

const leastQ = 0.05;
const greatestQ = 50;

/** The fault of a quality factor that no section can have. */
export function unlessQuality(path: string, got: unknown): Fault[] {
  const fault = (code: Fault['code'], remedy: string): Fault[] => [
    { code, path, got, expected: `a Q of ${leastQ} to ${greatestQ}`, remedy },
  ];
  if (typeof got !== 'number' || !Number.isFinite(got)) return fault('not-finite', 'Give a number.');
  if (got <= 0) return fault('not-positive', 'Check the sign.');
  return got < leastQ || got > greatestQ ? fault('out-of-range', 'Check the power of ten.') : [];
}

/** As many quality factors as the order has second-order sections. */
function readQ(order: number, value: unknown): readonly number[] {
  const path = 'sections.Q';
  const list = value === undefined ? [] : Array.isArray(value) ? value : [value];
  const wanted = Math.floor(order / 2);
  const faults: Fault[] = [];
  if (list.length !== wanted) {
    const expected = wanted === 0 ? 'no Q for order 1' : wanted === 1 ? 'one Q' : `a list of ${wanted} Q values`;
    const code = value === undefined ? 'empty' : 'inconsistent';
    faults.push({ code, path, got: value, expected, remedy: 'Give one Q for each second-order section.' });
  }
  list.forEach((got, i) => {
    faults.push(...unlessQuality(Array.isArray(value) ? `${path}[${i}]` : path, got));
  });
  refuse(faults);
  return list;
}

/**
 * A shape given by the quality factors of its sections, which all have the same corner.
 *
 * $$ D(s) = \prod_i \left(s^2 + \frac{s}{Q_i} + 1\right) \cdot \begin{cases} 1 & n \text{ even} \\ s + 1 & n \text{ odd} \end{cases} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 1 to 8 |
 * | $Q_i$ | `Q` | 1 | quality factor, which is the gain of a second-order section at the corner; from order 4 on a list |
 *
 * @validity orders from 1 to 8; 0.05 ≤ Q ≤ 50
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`
 * @source zverev1967 ch. 2
 * @example highPass(shapeByQ({ order: 2, Q: 2 }), '25 Hz') // +6.02 dB at 25 Hz, −12 dB per octave below
 */
export function shapeByQ(input: ShapeByQInput): FilterShape {
  const { order, Q: value } = (input ?? {}) as { readonly order: number; readonly Q?: unknown };
  refuse(unlessWhole('sections.order', order, 1, MOST_ORDER));
  const Q = readQ(order, value);
  const pairs = Q.map((q) => [1, 1 / q, 1]);
  return {
    name: Q.length === 0 ? 'one pole' : `Q ${Q.map((q) => decimalText(q, 3)).join(' and ')}`,
    denominator: productOf(order % 2 === 1 ? [...pairs, [1, 1]] : pairs),
    sources: ['zverev1967'],
  };
}
