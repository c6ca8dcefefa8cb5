import { type Fault, refuse } from '../fault/index.js';

/** A filter as a transfer function in s = jω with ω in rad/s. It is a plain record that can be stored as JSON. */
export interface Filter {
  readonly kind: 'high-pass' | 'low-pass' | 'shelf' | 'pole shift';
  /** A name for people, such as 'High-pass of order 4 at 24 Hz, Butterworth'. */
  readonly name: string;
  /** Coefficients in ascending powers of s. */
  readonly numerator: readonly number[];
  /** Coefficients in ascending powers of s, at least as many as in the numerator. Every root lies left of the imaginary axis. */
  readonly denominator: readonly number[];
}

/** The transfer function in x = s/scale, where the first and last coefficient of the denominator are 1, so that no sweep overflows. */
export interface NormalisedFilter {
  /** rad/s */
  readonly scale: number;
  readonly numerator: Float64Array;
  readonly denominator: Float64Array;
}

const mostOrder = 8;
const leastMargin = 1e-6;

/** First column of the Routh array. Its entries have the same sign exactly when every root lies left of the imaginary axis. */
function routhColumn(coefficients: ArrayLike<number>): number[] {
  const descending = Array.from(coefficients).reverse();
  let above = descending.filter((_, k) => k % 2 === 0);
  let row = descending.filter((_, k) => k % 2 === 1);
  const column = [above[0]!];
  while (row.length > 0) {
    const [p, q] = [above[0]!, row[0]!];
    column.push(q);
    if (q === 0) break;
    const next = above.slice(1).map((a, k) => a - (p / q) * (row[k + 1] ?? 0));
    [above, row] = [row, next];
  }
  return column;
}

/** Checks a filter from any source, and scales it. */
export function normalisedFilter(filter: Filter, path = 'filter'): NormalisedFilter {
  const faults: Fault[] = [];
  for (const side of ['numerator', 'denominator'] as const) {
    const list = filter[side];
    const at = `${path}.${side}`;
    if (!Array.isArray(list) || list.length === 0 || list.every((a) => a === 0)) {
      faults.push({
        code: 'empty',
        path: at,
        got: list,
        expected: 'a coefficient other than 0',
        remedy: 'Give at least one.',
      });
      continue;
    }
    list.forEach((got, k) => {
      if (!Number.isFinite(got)) {
        const expected = 'a finite coefficient';
        faults.push({ code: 'not-finite', path: `${at}[${k}]`, got, expected, remedy: 'Give a finite number.' });
      }
    });
  }
  refuse(faults);

  const fail = (code: Fault['code'], side: string, expected: string, remedy: string) =>
    refuse([{ code, path: `${path}.${side}`, got: filter[side as 'denominator'], expected, remedy }]);
  const order = filter.denominator.findLastIndex((a) => a !== 0);
  const degree = filter.numerator.findLastIndex((a) => a !== 0);
  const first = filter.denominator[0]!;
  const last = filter.denominator[order]!;
  if (order > mostOrder) fail('out-of-range', 'denominator', `an order of at most ${mostOrder}`, 'Split the filter.');
  if (degree > order) fail('inconsistent', 'numerator', `an order of at most ${order}`, 'Check the coefficients.');
  const stable = 'every root clearly left of the imaginary axis';
  if (first === 0) fail('inconsistent', 'denominator', stable, 'Check the coefficients.');

  const scale = order === 0 ? 1 : Math.abs(first / last) ** (1 / order);
  if (!(scale > 1e-5 && scale < 1e9)) {
    fail('out-of-range', 'denominator', 'a corner of 1e-5 to 1e9 rad/s', 'Check the power of ten.');
  }
  const scaled = (list: readonly number[]) =>
    Float64Array.from(list.slice(0, order + 1), (a, k) => (a / first) * scale ** k);
  const denominator = scaled(filter.denominator);
  const numerator = scaled(filter.numerator);
  for (const [side, list] of Object.entries({ numerator, denominator })) {
    if (!list.every((a) => Math.abs(a) < 1e12)) {
      fail(
        'out-of-range',
        side,
        'coefficients within 1e12 times the first and last of the denominator',
        'Check the coefficients.',
      );
    }
  }
  if (!routhColumn(denominator).every((a) => a > leastMargin)) {
    fail('inconsistent', 'denominator', stable, 'Check the signs of the coefficients.');
  }
  return { scale, numerator, denominator };
}
