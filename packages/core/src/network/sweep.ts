import type { ComplexColumn } from '../numeric/index.js';
import { multiply } from './column-arithmetic.js';

/**
 * Evaluates rows of polynomials over one shared denominator on the imaginary axis, the frequency loop innermost.
 * `coefficients` are those of a topology: row 0 the denominator, row 1 + i goes into `out[i]`; `frequencies` in Hz.
 * Even powers of jω are real and odd ones imaginary: two Horner schemes in −ω².
 *
 * @validity up to some thirty powers of s: beyond, their squares may leave double precision far from `scale`
 * @neglects nothing; checks nothing, allocates nothing
 * @returns nothing
 * @source own (Horner's scheme)
 * @example sweepRows(coefficients, width, scale, frequencies, columns, complexColumn(frequencies.length))
 */
export function sweepRows(
  coefficients: Float64Array,
  width: number,
  scale: number,
  frequencies: Float64Array,
  out: readonly ComplexColumn[],
  work: ComplexColumn,
): void {
  const toUnit = (2 * Math.PI) / scale;
  const short = width <= 8;
  (short ? shortPolynomial : longPolynomial)(coefficients, 0, width, frequencies, toUnit, work);
  invertColumn(work, frequencies.length);
  for (let row = 1; row <= out.length; row++) {
    const column = out[row - 1] as ComplexColumn;
    if (short) shortPolynomial(coefficients, row * width, width, frequencies, toUnit, column, work);
    else {
      longPolynomial(coefficients, row * width, width, frequencies, toUnit, column);
      multiply(column, column, work, frequencies.length);
    }
  }
}

/** Coefficient k of a row, 0 beyond its end. */
const term = (coefficients: Float64Array, base: number, width: number, k: number): number =>
  k < width ? (coefficients[base + k] as number) : 0;

/**
 * A polynomial of at most eight terms on the imaginary axis, its coefficients in registers, times a column where one is
 * given: in the same loop, since to write it down and read it again would cost a third of the sweep.
 */
function shortPolynomial(
  coefficients: Float64Array,
  base: number,
  width: number,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
  by?: ComplexColumn,
): void {
  const c0 = term(coefficients, base, width, 0);
  const c1 = term(coefficients, base, width, 1);
  const c2 = term(coefficients, base, width, 2);
  const c3 = term(coefficients, base, width, 3);
  const c4 = term(coefficients, base, width, 4);
  const c5 = term(coefficients, base, width, 5);
  const c6 = term(coefficients, base, width, 6);
  const c7 = term(coefficients, base, width, 7);
  const [br, bi] = by === undefined ? [undefined, undefined] : [by.re, by.im];
  for (let i = 0; i < frequencies.length; i++) {
    const w = (frequencies[i] as number) * toUnit;
    const square = -w * w;
    const a = ((c6 * square + c4) * square + c2) * square + c0;
    const b = (((c7 * square + c5) * square + c3) * square + c1) * w;
    if (br === undefined) {
      re[i] = a;
      im[i] = b;
      continue;
    }
    const c = br[i] as number;
    const d = bi[i] as number;
    re[i] = a * c - b * d;
    im[i] = a * d + b * c;
  }
}

/** The same for any number of terms. */
function longPolynomial(
  coefficients: Float64Array,
  base: number,
  width: number,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
): void {
  const topEven = width - 1 - ((width - 1) % 2);
  const topOdd = width % 2 === 0 ? width - 1 : width - 2;
  for (let i = 0; i < frequencies.length; i++) {
    const w = (frequencies[i] as number) * toUnit;
    const square = -w * w;
    let even = 0;
    let odd = 0;
    for (let k = topEven; k >= 0; k -= 2) even = even * square + (coefficients[base + k] as number);
    for (let k = topOdd; k >= 1; k -= 2) odd = odd * square + (coefficients[base + k] as number);
    re[i] = even;
    im[i] = odd * w;
  }
}

function invertColumn({ re, im }: ComplexColumn, count: number): void {
  for (let i = 0; i < count; i++) {
    const a = re[i] as number;
    const b = im[i] as number;
    const unit = 1 / (a * a + b * b);
    re[i] = a * unit;
    im[i] = -b * unit;
  }
}
