import { hankelExpansion } from './hankel-expansion.js';

/** From this x on, the expansion in 1/x is exact to rounding. Below it, the recurrence is. */
const far = 25;

/**
 * Bessel function of the first kind, order 0, of a real argument; a kernel.
 *
 * $$ J_0(x) = \frac1\pi \int_0^\pi \cos(x\sin\theta)\,d\theta $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x$ | `x` | 1 | argument, any sign |
 *
 * @validity finite x; error below 1e-14 of $\max(|J_0|, \sqrt{2/(\pi x)})$ up to x = 1000, above that as exact as sin x
 * @neglects nothing
 * @returns 1
 * @source dlmf 10.2.2, 10.12.4, 10.17.3
 * @example besselJ0(1) // 0.765197686557967
 */
export function besselJ0(x: number): number {
  const z = Math.abs(x);
  return z < far ? fromRecurrence(0, z) : hankelExpansion(0, z, 'J');
}

/**
 * Bessel function of the first kind, order 1, of a real argument; a kernel.
 *
 * $$ J_1(x) = \frac1\pi \int_0^\pi \cos(\theta - x\sin\theta)\,d\theta $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x$ | `x` | 1 | argument, any sign |
 *
 * @validity finite x; error below 1e-14 of $\max(|J_1|, \sqrt{2/(\pi x)})$ up to x = 1000, and below 1e-14 of $J_1$ for small x
 * @neglects nothing
 * @returns 1
 * @source dlmf 10.2.2, 10.12.4, 10.17.3
 * @example besselJ1(1) // 0.440050585744934
 */
export function besselJ1(x: number): number {
  const z = Math.abs(x);
  const value = z < far ? fromRecurrence(1, z) : hankelExpansion(1, z, 'J');
  return x < 0 ? -value : value;
}

/** Uses the power series near 0, and elsewhere the downward recurrence, scaled by 1 = J0 + 2 J2 + 2 J4 + … */
function fromRecurrence(order: 0 | 1, x: number): number {
  if (x < 1) {
    const q = (-x * x) / 4;
    let term = order === 0 ? 1 : x / 2;
    let sum = term;
    for (let k = 1; k < 12; k++) {
      term *= q / (k * (k + order));
      sum += term;
    }
    return sum;
  }
  let above = 0;
  let here = 1;
  let even = 0;
  // From this order on, J is below 1e-20, so any start value will do. The order must be even.
  for (let k = 2 * Math.ceil((x + 36) / 2); k > 0; k--) {
    if (k % 2 === 0) even += here;
    const below = ((2 * k) / x) * here - above;
    above = here;
    here = below;
  }
  return (order === 0 ? here : above) / (here + 2 * even);
}
