import type { ComplexColumn } from '../numeric/index.js';
import { term } from './sweep.js';

/** How many terms of each polynomial one pass takes. */
export const TERMS = 6;

/**
 * z ← z + by (p + q x + r y): six terms each of three polynomials in jω, whose coefficients stay out of the inner
 * loop. `c` holds the coefficients of rising powers, those of each polynomial from its place on. The terms from `first` on are
 * taken, as if that were the power 0. `toUnit` turns Hz into the unit of ω that they are for.
 */
export function weightedSum(
  z: ComplexColumn,
  by: ComplexColumn,
  c: Float64Array,
  width: number,
  first: number,
  p: number,
  q: number,
  x: ComplexColumn,
  r: number,
  y: ComplexColumn,
  frequencies: Float64Array,
  toUnit: number,
): void {
  const p0 = term(c, p, width, first);
  const p1 = term(c, p, width, first + 1);
  const p2 = term(c, p, width, first + 2);
  const p3 = term(c, p, width, first + 3);
  const p4 = term(c, p, width, first + 4);
  const p5 = term(c, p, width, first + 5);
  const q0 = term(c, q, width, first);
  const q1 = term(c, q, width, first + 1);
  const q2 = term(c, q, width, first + 2);
  const q3 = term(c, q, width, first + 3);
  const q4 = term(c, q, width, first + 4);
  const q5 = term(c, q, width, first + 5);
  const r0 = term(c, r, width, first);
  const r1 = term(c, r, width, first + 1);
  const r2 = term(c, r, width, first + 2);
  const r3 = term(c, r, width, first + 3);
  const r4 = term(c, r, width, first + 4);
  const r5 = term(c, r, width, first + 5);
  const { re, im } = z;
  const { re: xr, im: xi } = x;
  const { re: yr, im: yi } = y;
  const { re: br, im: bi } = by;
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    const square = -w * w;
    const a = (q4 * square + q2) * square + q0;
    const b = ((q5 * square + q3) * square + q1) * w;
    const d = (r4 * square + r2) * square + r0;
    const e = ((r5 * square + r3) * square + r1) * w;
    const g = xr[i]!;
    const h = xi[i]!;
    const u = yr[i]!;
    const v = yi[i]!;
    const real = (p4 * square + p2) * square + p0 + (a * g - b * h) + (d * u - e * v);
    const imaginary = ((p5 * square + p3) * square + p1) * w + (a * h + b * g) + (d * v + e * u);
    const m = br[i]!;
    const n = bi[i]!;
    re[i]! += real * m - imaginary * n;
    im[i]! += real * n + imaginary * m;
  }
}

/** z ← (jω)⁶ w, which is a real factor: what the next six terms are multiplied by. */
export function timesSixthPower(z: ComplexColumn, w: ComplexColumn, frequencies: Float64Array, toUnit: number): void {
  for (let i = 0; i < frequencies.length; i++) {
    const factor = -((frequencies[i]! * toUnit) ** TERMS);
    z.re[i] = factor * w.re[i]!;
    z.im[i] = factor * w.im[i]!;
  }
}
