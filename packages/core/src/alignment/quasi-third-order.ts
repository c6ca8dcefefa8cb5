import type { Alignment } from './alignment.js';
import { flatWithZeros } from './with-zeros.js';

/** Coefficients of $s^4 + a_1 s^3 + a_2 s^2 + a_3 s + 1$ that make the terms $\omega^6$ and $\omega^4$ of $|D|^2$ vanish. */
function flatShape(a1: number): readonly number[] {
  const a2 = a1 ** 2 / 2;
  return [1, (a2 ** 2 + 2) / (2 * a1), a2, a1, 1];
}

/** $B^2$ of such a shape. */
const excess = (a1: number): number => {
  const [, a3, a2] = flatShape(a1) as [number, number, number];
  return a3 ** 2 - 2 * a2;
};

/**
 * The quasi-Butterworth alignment of third order, QB3: as flat as a box can be made whose driver decides the last coefficient.
 *
 * $$ |G(j\omega)|^2 = \frac{\omega^8}{\omega^8 + B^2 \omega^2 + 1} $$
 *
 * The driver decides $B$. At $B = 0$ it is the Butterworth alignment B4, which the driver of the highest total quality factor
 * reaches. With a notch $|D|^2 - |N|^2$ has the same two terms, $B^2\omega^2$ and a constant.
 *
 * @validity fourth-order boxes; $B$ of 0 to 90
 * @neglects nothing
 * @returns the alignment
 * @source small1973vented1 QB3 response
 * @example solveAlignment(quasiThirdOrder, ventedFamily, { drivers: driver, QL: 7 })
 */
export const quasiThirdOrder: Alignment = {
  name: 'QB3',
  order: 4,
  withZeros: true,
  target: (a1, numerator) => (numerator ? flatWithZeros(numerator, [Math.max(0, excess(a1))]) : flatShape(a1)),
  parameters: {},
  free: { from: Math.sqrt(4 + 2 * Math.SQRT2), to: 9, told: (a1) => ({ B: Math.sqrt(Math.max(0, excess(a1))) }) },
  sources: ['small1973vented1'],
};
