import type { ExactSpring } from './curve.js';
import { fillPolynomial, type PolynomialCurve, type PolynomialInput, readPolynomial } from './polynomial-curve.js';

/**
 * The suspension over displacement, with a stiffness over that at rest of
 *
 * $$ k(x) = 1 + \sum_i k_i \left(\frac{x}{x_r}\right)^i,\qquad F = k(x)\,x,\qquad E = \int_0^x k(\xi)\,\xi\,d\xi $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x_r$ | `reach` | m | up to where it was measured; beyond, $k$ stays as it is there |
 * | $k_i$ | `coefficients` | 1 | of the first, second … power; odd ones make it unequal out and in |
 *
 * The mean force over a move comes without a difference of energies:
 * $(b^n - a^n)/(b - a) = \sum_m a^m b^{n-1-m}$ for each power.
 *
 * @validity up to the reach
 * @neglects creep and hysteresis
 * @returns a {@link Spring}
 * @throws InputError `not-positive` for a stiffness that falls to zero within the reach, and those of the fields
 * @source klippel2006 power series of the stiffness
 * @example stiffnessCurve({ reach: '10 mm', coefficients: [0.1, 0.8] }) // 70 % to 90 % stiffer at the ends
 */
export function stiffnessCurve(input: PolynomialInput): ExactSpring {
  const polynomial = readPolynomial('stiffness', 'a stiffness', input);
  const { reach } = polynomial;
  const room = new Float64Array(2);
  const stiffnessAt = (x: number): number => {
    fillPolynomial(polynomial, x, room);
    return room[0]!;
  };
  const [low, high] = [stiffnessAt(-reach), stiffnessAt(reach)];
  /** The stiffness at the end that x lies beyond, or nearest to. */
  const endOf = (x: number): number => (x < 0 ? low : high);
  const energy = (x: number): number => {
    const inside = Math.max(-reach, Math.min(reach, x));
    return reach ** 2 * energyWithin(polynomial, inside / reach) + endOf(x) * ((x ** 2 - inside ** 2) / 2);
  };
  const at = (x: number, out: Float64Array): void => {
    fillPolynomial(polynomial, x, out);
    const k = out[0]!;
    out[1] = k + out[1]! * x;
    out[0] = k * x;
  };
  const between = (from: number, to: number, out: Float64Array): void => {
    if (from <= reach && from >= -reach && to <= reach && to >= -reach) {
      betweenWithin(polynomial, from / reach, to / reach, out);
      out[0]! *= reach;
    } else if ((from > reach && to > reach) || (from < -reach && to < -reach)) {
      const k = endOf(to);
      out[0] = (k * (from + to)) / 2;
      out[1] = k / 2;
    } else if (from === to) {
      at(to, out);
      out[1]! /= 2;
    } else {
      const mean = (energy(to) - energy(from)) / (to - from);
      at(to, out);
      out[1] = (out[0]! - mean) / (to - from);
      out[0] = mean;
    }
  };
  return { name: 'stiffness', sources: ['klippel2006'], reach, energy, at, between };
}

/** ∫ k ξ dξ. */
function energyWithin({ coefficients }: PolynomialCurve, xi: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * xi + coefficients[k]! / (k + 2);
  return sum * xi * xi;
}

/** Σ c_k/(k + 2) Σ_m a^m b^(k+1−m), and its derivative by b. */
function betweenWithin({ coefficients }: PolynomialCurve, a: number, b: number, out: Float64Array): void {
  // q_n = Σ_m a^m b^(n−m) is a^n + b q_(n−1), and its derivative q_(n−1) + b q'_(n−1).
  let q = 1;
  let dq = 0;
  let power = 1;
  let mean = 0;
  let slope = 0;
  for (let k = 0; k < coefficients.length; k++) {
    power *= a;
    dq = q + b * dq;
    q = power + b * q;
    const c = coefficients[k]! / (k + 2);
    mean += c * q;
    slope += c * dq;
  }
  out[0] = mean;
  out[1] = slope;
}
