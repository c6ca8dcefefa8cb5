import { type ComplexColumn, polynomialColumnOnImaginaryAxis } from '../numeric/index.js';
import { multiply } from './column-arithmetic.js';

/** A kernel that evaluates polynomials over one shared denominator, as {@link sweepRows} does. */
export type SweepRows = typeof sweepRows;

/**
 * Evaluates rows of polynomials over one shared denominator on the imaginary axis, the frequency loop innermost.
 * `coefficients` are those of a compiled network: row 0 the denominator, row 1 + i goes into `out[i]`; `frequencies` in Hz.
 * Even powers of jω are real and odd ones imaginary: two Horner schemes in −ω². Two rows share a pass over the frequencies.
 *
 * @validity up to some thirty powers of s: beyond, their squares may leave double precision far from `scale`
 * @neglects nothing; checks nothing, allocates nothing
 * @returns the first place at which the terms of the denominator cancel to the last bits, so that nothing damps the network
 * there, or −1; `work` holds the inverse of the denominator
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
): number {
  const toUnit = (2 * Math.PI) / scale;
  if (width <= 8) {
    const stopped = invertOfEight(coefficients, width, frequencies, toUnit, work);
    if (stopped >= 0) return stopped;
    const pair = width <= 6 ? pairOfSix : pairOfEight;
    for (let row = 1; row <= out.length; row += 2) {
      const first = out[row - 1] as ComplexColumn;
      const isPair = row < out.length;
      const second = isPair ? (out[row] as ComplexColumn) : first;
      // A row alone is swept beside itself.
      pair(
        coefficients,
        row * width,
        (isPair ? row + 1 : row) * width,
        width,
        frequencies,
        toUnit,
        first,
        second,
        work,
      );
    }
    return -1;
  }
  const denominator = coefficients.subarray(0, width);
  polynomialColumnOnImaginaryAxis(denominator, frequencies, work.re, work.im, toUnit);
  const stopped = cancelledAt(denominator, frequencies, toUnit, work);
  if (stopped >= 0) return stopped;
  invertColumn(work, frequencies.length);
  for (let row = 1; row <= out.length; row++) {
    const column = out[row - 1] as ComplexColumn;
    const polynomial = coefficients.subarray(row * width, (row + 1) * width);
    polynomialColumnOnImaginaryAxis(polynomial, frequencies, column.re, column.im, toUnit);
    multiply(column, column, work, frequencies.length);
  }
  return -1;
}

/** What is left of a sum this much smaller than its terms is rounding. */
export const ROUNDING = 8 * Number.EPSILON;

/** The first frequency at which what is left of a polynomial is rounding, or −1. */
function cancelledAt(
  polynomial: Float64Array,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
): number {
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    let sizes = 0;
    for (let k = polynomial.length - 1; k >= 0; k--) sizes = sizes * w + Math.abs(polynomial[k]!);
    if (!(Math.abs(re[i]!) + Math.abs(im[i]!) > ROUNDING * sizes)) return i;
  }
  return -1;
}

/** 1 over a polynomial of at most eight terms; the first frequency at which what is left of it is rounding, or −1. */
function invertOfEight(
  coefficients: Float64Array,
  width: number,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
): number {
  const c0 = term(coefficients, 0, width, 0);
  const c1 = term(coefficients, 0, width, 1);
  const c2 = term(coefficients, 0, width, 2);
  const c3 = term(coefficients, 0, width, 3);
  const c4 = term(coefficients, 0, width, 4);
  const c5 = term(coefficients, 0, width, 5);
  const c6 = term(coefficients, 0, width, 6);
  const c7 = term(coefficients, 0, width, 7);
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    const square = -w * w;
    const a = ((c6 * square + c4) * square + c2) * square + c0;
    const b = (((c7 * square + c5) * square + c3) * square + c1) * w;
    const size = a * a + b * b;
    const terms =
      ((Math.abs(c6) * -square + Math.abs(c4)) * -square + Math.abs(c2)) * -square +
      Math.abs(c0) +
      (((Math.abs(c7) * -square + Math.abs(c5)) * -square + Math.abs(c3)) * -square + Math.abs(c1)) * w;
    if (!(size > LEAST * terms * terms)) return i;
    const unit = 1 / size;
    re[i] = a * unit;
    im[i] = -b * unit;
  }
  return -1;
}

const LEAST = ROUNDING ** 2;

/** Coefficient k of a row, 0 beyond its end. */
export const term = (coefficients: Float64Array, base: number, width: number, k: number): number =>
  k < width ? coefficients[base + k]! : 0;

/** Two polynomials of at most six terms times one column: their coefficients stay in registers. */
function pairOfSix(
  coefficients: Float64Array,
  base: number,
  other: number,
  width: number,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
  { re: re2, im: im2 }: ComplexColumn,
  { re: br, im: bi }: ComplexColumn,
): void {
  const a0 = term(coefficients, base, width, 0);
  const a1 = term(coefficients, base, width, 1);
  const a2 = term(coefficients, base, width, 2);
  const a3 = term(coefficients, base, width, 3);
  const a4 = term(coefficients, base, width, 4);
  const a5 = term(coefficients, base, width, 5);
  const b0 = term(coefficients, other, width, 0);
  const b1 = term(coefficients, other, width, 1);
  const b2 = term(coefficients, other, width, 2);
  const b3 = term(coefficients, other, width, 3);
  const b4 = term(coefficients, other, width, 4);
  const b5 = term(coefficients, other, width, 5);
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    const square = -w * w;
    const c = br[i]!;
    const d = bi[i]!;
    const x = (a4 * square + a2) * square + a0;
    const y = ((a5 * square + a3) * square + a1) * w;
    const u = (b4 * square + b2) * square + b0;
    const v = ((b5 * square + b3) * square + b1) * w;
    re[i] = x * c - y * d;
    im[i] = x * d + y * c;
    re2[i] = u * c - v * d;
    im2[i] = u * d + v * c;
  }
}

/** The same of at most eight terms. */
function pairOfEight(
  coefficients: Float64Array,
  base: number,
  other: number,
  width: number,
  frequencies: Float64Array,
  toUnit: number,
  { re, im }: ComplexColumn,
  { re: re2, im: im2 }: ComplexColumn,
  { re: br, im: bi }: ComplexColumn,
): void {
  const a0 = term(coefficients, base, width, 0);
  const a1 = term(coefficients, base, width, 1);
  const a2 = term(coefficients, base, width, 2);
  const a3 = term(coefficients, base, width, 3);
  const a4 = term(coefficients, base, width, 4);
  const a5 = term(coefficients, base, width, 5);
  const a6 = term(coefficients, base, width, 6);
  const a7 = term(coefficients, base, width, 7);
  const b0 = term(coefficients, other, width, 0);
  const b1 = term(coefficients, other, width, 1);
  const b2 = term(coefficients, other, width, 2);
  const b3 = term(coefficients, other, width, 3);
  const b4 = term(coefficients, other, width, 4);
  const b5 = term(coefficients, other, width, 5);
  const b6 = term(coefficients, other, width, 6);
  const b7 = term(coefficients, other, width, 7);
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    const square = -w * w;
    const c = br[i]!;
    const d = bi[i]!;
    const x = ((a6 * square + a4) * square + a2) * square + a0;
    const y = (((a7 * square + a5) * square + a3) * square + a1) * w;
    const u = ((b6 * square + b4) * square + b2) * square + b0;
    const v = (((b7 * square + b5) * square + b3) * square + b1) * w;
    re[i] = x * c - y * d;
    im[i] = x * d + y * c;
    re2[i] = u * c - v * d;
    im2[i] = u * d + v * c;
  }
}

/** z ← 1/z. */
export function invertColumn({ re, im }: ComplexColumn, count: number): void {
  for (let i = 0; i < count; i++) {
    const a = re[i]!;
    const b = im[i]!;
    const unit = 1 / (a * a + b * b);
    re[i] = a * unit;
    im[i] = -b * unit;
  }
}
