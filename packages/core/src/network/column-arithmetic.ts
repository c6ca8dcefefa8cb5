import type { ComplexColumn } from '../numeric/index.js';

// Complex arithmetic on columns of frequencies, one loop an operation. A factor is a column, or one real number for all.

/** A column, or the same real number at each frequency. */
export type Factor = ComplexColumn | number;

/** z ← w. */
export function assign(z: ComplexColumn, w: Factor, count: number): void {
  if (typeof w === 'number') {
    z.re.fill(w, 0, count);
    z.im.fill(0, 0, count);
    return;
  }
  const [zr, zi, wr, wi] = [z.re, z.im, w.re, w.im];
  for (let i = 0; i < count; i++) {
    zr[i] = wr[i]!;
    zi[i] = wi[i]!;
  }
}

/** z ← f w; z may be f or w. */
export function multiply(z: ComplexColumn, f: Factor, w: Factor, count: number): void {
  if (typeof f === 'number' && typeof w === 'number') assign(z, f * w, count);
  else if (typeof f === 'number') scale(z, f, w as ComplexColumn, count);
  else if (typeof w === 'number') scale(z, w, f, count);
  else multiplyColumns(z, f, w, count);
}

function multiplyColumns(z: ComplexColumn, f: ComplexColumn, w: ComplexColumn, count: number): void {
  const [zr, zi, fr, fi, wr, wi] = [z.re, z.im, f.re, f.im, w.re, w.im];
  for (let i = 0; i < count; i++) {
    const a = fr[i]!;
    const b = fi[i]!;
    const c = wr[i]!;
    const d = wi[i]!;
    zr[i] = a * c - b * d;
    zi[i] = a * d + b * c;
  }
}

function scale(z: ComplexColumn, by: number, w: ComplexColumn, count: number): void {
  const [zr, zi, wr, wi] = [z.re, z.im, w.re, w.im];
  for (let i = 0; i < count; i++) {
    zr[i] = by * wr[i]!;
    zi[i] = by * wi[i]!;
  }
}

/** z ← z − f w. */
export function subtractProduct(z: ComplexColumn, f: Factor, w: Factor, count: number): void {
  if (typeof f === 'number' && typeof w === 'number') subtractNumber(z, f * w, count);
  else if (typeof f === 'number') subtractScaled(z, f, w as ComplexColumn, count);
  else if (typeof w === 'number') subtractScaled(z, w, f, count);
  else subtractColumns(z, f, w, count);
}

function subtractColumns(z: ComplexColumn, f: ComplexColumn, w: ComplexColumn, count: number): void {
  const [zr, zi, fr, fi, wr, wi] = [z.re, z.im, f.re, f.im, w.re, w.im];
  for (let i = 0; i < count; i++) {
    const a = fr[i]!;
    const b = fi[i]!;
    const c = wr[i]!;
    const d = wi[i]!;
    zr[i]! -= a * c - b * d;
    zi[i]! -= a * d + b * c;
  }
}

function subtractScaled(z: ComplexColumn, by: number, w: ComplexColumn, count: number): void {
  const [zr, zi, wr, wi] = [z.re, z.im, w.re, w.im];
  for (let i = 0; i < count; i++) {
    zr[i]! -= by * wr[i]!;
    zi[i]! -= by * wi[i]!;
  }
}

function subtractNumber(z: ComplexColumn, number: number, count: number): void {
  for (let i = 0; i < count; i++) z.re[i]! -= number;
}

/** sum ← sum + |f| |w|, with |z| = |Re z| + |Im z|. */
export function addSizes(sum: Float64Array, f: Factor, w: Factor, count: number): void {
  const [fr, fi] = typeof f === 'number' ? [undefined, undefined] : [f.re, f.im];
  const [wr, wi] = typeof w === 'number' ? [undefined, undefined] : [w.re, w.im];
  for (let i = 0; i < count; i++) {
    const a = fr === undefined ? Math.abs(f as number) : Math.abs(fr[i]!) + Math.abs(fi[i]!);
    const b = wr === undefined ? Math.abs(w as number) : Math.abs(wr[i]!) + Math.abs(wi[i]!);
    sum[i]! += a * b;
  }
}

/** z ← by (jω)^power z, ω = 2πf. */
export function timesPower(
  { re, im }: ComplexColumn,
  by: number,
  power: -1 | 0 | 1,
  frequencies: Float64Array,
  count: number,
): void {
  if (power === 0) {
    for (let i = 0; i < count; i++) {
      re[i]! *= by;
      im[i]! *= by;
    }
    return;
  }
  for (let i = 0; i < count; i++) {
    const omega = 2 * Math.PI * frequencies[i]!;
    const turn = power === 1 ? by * omega : -by / omega;
    const a = re[i]!;
    re[i] = -turn * im[i]!;
    im[i] = turn * a;
  }
}

/** out ← out + by z, from `offset` on. */
export function addScaled(
  out: ComplexColumn,
  { re, im }: ComplexColumn,
  by: number,
  count: number,
  offset: number,
): void {
  const { re: toRe, im: toIm } = out;
  for (let i = 0; i < count; i++) {
    toRe[offset + i]! += by * re[i]!;
    toIm[offset + i]! += by * im[i]!;
  }
}
