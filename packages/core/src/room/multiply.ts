import type { ComplexColumn } from '../numeric/index.js';

/** Multiplies one place of a complex column. */
export function multiplyAt({ re, im }: ComplexColumn, i: number, byRe: number, byIm: number): void {
  const a = re[i]!;
  const b = im[i]!;
  re[i] = a * byRe - b * byIm;
  im[i] = a * byIm + b * byRe;
}
