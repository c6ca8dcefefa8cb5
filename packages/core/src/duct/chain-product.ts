import type { Chain } from './line-chain.js';

/** The chain matrix of nothing, to which steps are added: A, B, C, D, real and imaginary part each. */
export function startProduct(product: Float64Array): void {
  product.fill(0);
  product[0] = 1;
  product[6] = 1;
}

/** Multiplies a product of chain matrices by that of the next step. */
export function timesStep(
  product: Float64Array,
  tr: number,
  ti: number,
  ur: number,
  ui: number,
  vr: number,
  vi: number,
  wr: number,
  wi: number,
): void {
  for (let row = 0; row < 8; row += 4) {
    const pr = product[row]!;
    const pi = product[row + 1]!;
    const qr = product[row + 2]!;
    const qi = product[row + 3]!;
    product[row] = pr * tr - pi * ti + qr * vr - qi * vi;
    product[row + 1] = pr * ti + pi * tr + qr * vi + qi * vr;
    product[row + 2] = pr * ur - pi * ui + qr * wr - qi * wi;
    product[row + 3] = pr * ui + pi * ur + qr * wi + qi * wr;
  }
}

/** Writes a product to the i-th place of the columns of a chain matrix. */
export function putProduct(product: Float64Array, { A, B, C, D }: Parameters<Chain>[1], i: number): void {
  A.re[i] = product[0]!;
  A.im[i] = product[1]!;
  B.re[i] = product[2]!;
  B.im[i] = product[3]!;
  C.re[i] = product[4]!;
  C.im[i] = product[5]!;
  D.re[i] = product[6]!;
  D.im[i] = product[7]!;
}
