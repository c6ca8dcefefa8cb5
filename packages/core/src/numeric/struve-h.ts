import { hankelExpansion } from './hankel-expansion.js';

/** From this x on, the expansion in 1/x is exact to rounding. Below it, the sum of Bessel functions is. */
const far = 40;

/**
 * Struve function of order 0 of a real argument; a kernel.
 *
 * $$ \mathbf H_0(x) = \frac4\pi \sum_{k=0}^\infty \frac{J_{2k+1}(x)}{2k+1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x$ | `x` | 1 | argument, any sign |
 *
 * Below 40 it uses this sum, with all Bessel functions from one downward recurrence. Above 40 it uses $Y_0$ and powers of 1/x.
 *
 * @validity finite x; error below 1e-14 of $\max(|\mathbf H_0|, \sqrt{2/(\pi x)})$ up to x = 1000
 * @neglects nothing
 * @returns 1
 * @source dlmf 11.4.20, 11.6.1
 * @example struveH0(1) // 0.568656627048287
 */
export function struveH0(x: number): number {
  const z = Math.abs(x);
  const value = z < far ? fromBesselSum(0, z) : hankelExpansion(0, z, 'Y') + powersFar(0, z);
  return x < 0 ? -value : value;
}

/**
 * Struve function of order 1 of a real argument, which gives the reactance of a piston in a wall; a kernel.
 *
 * $$ \mathbf H_1(x) = \frac4\pi \sum_{k=1}^\infty \frac{4k^2}{4k^2-1} J_{2k}(x) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x$ | `x` | 1 | argument, any sign |
 *
 * This is the published sum with $1 = J_0 + 2\sum J_{2k}$ inserted, so that no two large terms cancel at small x.
 *
 * @validity finite x; error below 1e-14 of $\mathbf H_1$ up to x = 1000
 * @neglects nothing
 * @returns 1
 * @source dlmf 11.4.21, 11.6.1
 * @example struveH1(1) // 0.198457336201944
 */
export function struveH1(x: number): number {
  const z = Math.abs(x);
  return z < far ? fromBesselSum(1, z) : hankelExpansion(1, z, 'Y') + powersFar(1, z);
}

function fromBesselSum(order: 0 | 1, x: number): number {
  if (x < 1) {
    // The power series is used here because the recurrence would overflow near 0.
    let term = order === 0 ? (2 * x) / Math.PI : (2 * x * x) / (3 * Math.PI);
    let sum = term;
    for (let k = 1; k < 12; k++) {
      term *= (-x * x) / ((2 * k + 1) * (2 * k + 1 + 2 * order));
      sum += term;
    }
    return sum;
  }
  let above = 0;
  let here = 1;
  let even = 0;
  let sum = 0;
  for (let k = 2 * Math.ceil((x + 36) / 2); k > 0; k--) {
    if (k % 2 === 0) {
      even += here;
      if (order === 1) sum += ((k * k) / (k * k - 1)) * here;
    } else if (order === 0) sum += here / k;
    const below = ((2 * k) / x) * here - above;
    above = here;
    here = below;
  }
  return ((4 / Math.PI) * sum) / (here + 2 * even);
}

/** H − Y at large x: (1/π) Σ Γ(k + ½) (x/2)^(ν−2k−1) / Γ(ν + ½ − k). */
function powersFar(order: 0 | 1, x: number): number {
  let term = order === 0 ? 2 / (Math.PI * x) : 2 / Math.PI;
  let sum = term;
  for (let k = 1; k < 40; k++) {
    const ratio = ((2 * k - 1) * (2 * order + 1 - 2 * k)) / (x * x);
    if (Math.abs(ratio) >= 1) break;
    term *= ratio;
    sum += term;
  }
  return sum;
}
