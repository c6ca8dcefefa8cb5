import type { ComplexColumn } from '../numeric/index.js';
import { term } from './sweep.js';

// Sums of polynomials in jω times columns: the loops of a sweep with elements over frequency. `c` holds the coefficients of
// rising powers, those of each polynomial from its own place on; `toUnit` turns Hz into the unit of ω that they are for.

/** z ← by (p + q x + r y), where each polynomial has at most six terms: their coefficients stay out of the inner loop. */
export function sumOfTwo(
  z: ComplexColumn,
  by: ComplexColumn,
  c: Float64Array,
  width: number,
  [p, q, r]: readonly number[],
  [x, y]: readonly ComplexColumn[],
  frequencies: Float64Array,
  toUnit: number,
): void {
  const p0 = term(c, p as number, width, 0);
  const p1 = term(c, p as number, width, 1);
  const p2 = term(c, p as number, width, 2);
  const p3 = term(c, p as number, width, 3);
  const p4 = term(c, p as number, width, 4);
  const p5 = term(c, p as number, width, 5);
  const q0 = term(c, q as number, width, 0);
  const q1 = term(c, q as number, width, 1);
  const q2 = term(c, q as number, width, 2);
  const q3 = term(c, q as number, width, 3);
  const q4 = term(c, q as number, width, 4);
  const q5 = term(c, q as number, width, 5);
  const r0 = term(c, r as number, width, 0);
  const r1 = term(c, r as number, width, 1);
  const r2 = term(c, r as number, width, 2);
  const r3 = term(c, r as number, width, 3);
  const r4 = term(c, r as number, width, 4);
  const r5 = term(c, r as number, width, 5);
  const { re, im } = z;
  const { re: br, im: bi } = by;
  const { re: xr, im: xi } = x as ComplexColumn;
  const { re: yr, im: yi } = y as ComplexColumn;
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
    re[i] = real * m - imaginary * n;
    im[i] = real * n + imaginary * m;
  }
}

/** z ← by (p + q x + r y + t v), for polynomials of any length, in one Horner scheme with complex coefficients. */
export function sumOfThree(
  z: ComplexColumn,
  by: ComplexColumn,
  c: Float64Array,
  width: number,
  [p, q, r, t]: readonly number[],
  [x, y, v]: readonly ComplexColumn[],
  frequencies: Float64Array,
  toUnit: number,
): void {
  const { re, im } = z;
  const { re: br, im: bi } = by;
  const { re: xr, im: xi } = x as ComplexColumn;
  const { re: yr, im: yi } = y as ComplexColumn;
  const { re: vr, im: vi } = v as ComplexColumn;
  const [p0, q0, r0, t0] = [p, q, r, t] as [number, number, number, number];
  for (let i = 0; i < frequencies.length; i++) {
    const w = frequencies[i]! * toUnit;
    const a = xr[i]!;
    const b = xi[i]!;
    const d = yr[i]!;
    const e = yi[i]!;
    const g = vr[i]!;
    const h = vi[i]!;
    let real = 0;
    let imaginary = 0;
    for (let k = width - 1; k >= 0; k--) {
      const q = c[q0 + k]!;
      const r = c[r0 + k]!;
      const t = c[t0 + k]!;
      const next = c[p0 + k]! + q * a + r * d + t * g - w * imaginary;
      imaginary = q * b + r * e + t * h + w * real;
      real = next;
    }
    const m = br[i]!;
    const n = bi[i]!;
    re[i] = real * m - imaginary * n;
    im[i] = real * n + imaginary * m;
  }
}
