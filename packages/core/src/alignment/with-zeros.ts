import { stableDenominator } from '../filter/from-magnitude.js';
import { polynomialProduct, polynomialRoots } from '../numeric/index.js';

/** $|N(j\omega)|^2$ in ascending powers of $\omega^2$. */
export function squaredMagnitude(numerator: ArrayLike<number>): number[] {
  const mirrored = Array.from(numerator, (value, k) => (k % 2 === 0 ? value : -value));
  return Array.from(polynomialProduct(numerator, mirrored))
    .filter((_, k) => k % 2 === 0)
    .map((value, k) => (k % 2 === 0 ? value : -value));
}

/** The denominator of a squared magnitude; NaN where there is no such shape. */
export const denominatorOf = (squared: readonly number[]): readonly number[] =>
  stableDenominator(squared) ?? squared.map(() => Number.NaN);

/**
 * The denominator with which a high-pass of given zeros differs from 1 as little as it can far above, but for terms of low powers:
 *
 * $$ |D|^2 = |N|^2 + \sum_k c_k\,\omega^{2k}, \quad |D(0)| = 1 $$
 *
 * `added` are the coefficients from that of $\omega^2$ on; none of them gives the maximally flat shape. The zeros at the origin make
 * the constant 1.
 */
export function flatWithZeros(numerator: ArrayLike<number>, added: readonly number[] = []): readonly number[] {
  const squared = squaredMagnitude(numerator);
  for (const [k, value] of added.entries()) squared[k + 1]! += value;
  squared[0] = 1;
  return denominatorOf(squared);
}

/** A complex number. */
type Complex = readonly [re: number, im: number];

/** Where $|N|^2$ vanishes as a polynomial in $\omega^2$, once for each zero of a numerator that is not at the origin: $-s_i^2$. */
export function zerosOf(numerator: ArrayLike<number>): readonly Complex[] {
  const list = Array.from(numerator);
  const rest = list.slice(
    list.findIndex((value) => value !== 0),
    list.findLastIndex((value) => value !== 0) + 1,
  );
  if (rest.length === 1) return [];
  const [c, b, a] = rest as [number, number, number];
  if (rest.length === 2) return [[-((c / b) ** 2), 0]];
  // Of a notch, both at once: the zeros of a s² + b s + c.
  const [middle, damping] = [c / a, (b / a) ** 2 / 2];
  const imaginary = Math.sqrt(2 * damping * (middle - damping / 2));
  if (rest.length === 3 && imaginary >= 0) return [1, -1].map((side) => [middle - damping, side * imaginary]);
  const { re, im } = polynomialRoots(rest);
  return Array.from(re, (x, i): Complex => [im[i]! ** 2 - x ** 2, -2 * x * im[i]!]);
}

/**
 * The polynomial h without zeros in the unit circle whose $|h(e^{j\theta})|^2$ is, over $x = \cos\theta$, proportional to the product
 * of $x - x_i$. The $x_i$ are real and outside of −1 to 1, or pairs of conjugates.
 */
export function factorOf(places: readonly Complex[]): readonly number[] {
  const [re, im] = [[1], [0]];
  for (const [x, y] of places) {
    // The root of x² − 1 on the side of x: with it x ends up outside of the unit circle, and its inverse inside.
    const [a, b] = [x * x - y * y - 1, 2 * x * y];
    const half = Math.sqrt((Math.sqrt(a * a + b * b) + Math.abs(a)) / 2);
    const other = half === 0 ? 0 : b / (2 * half);
    const [p, q] = a >= 0 ? [half, other] : [other, half];
    const side = x * p + y * q >= 0 ? 1 : -1;
    const [u, v] = [x + side * p, y + side * q];
    const size = u * u + v * v;
    const [nearRe, nearIm] = [u / size, -v / size];
    re.push(0);
    im.push(0);
    for (let k = re.length - 1; k > 0; k--) {
      const [c, d] = [re[k - 1]!, im[k - 1]!];
      re[k]! -= c * nearRe - d * nearIm;
      im[k]! -= c * nearIm + d * nearRe;
    }
  }
  return re;
}

/** A polynomial in Chebyshev polynomials of $x = 2 u - 1$, as one in u. */
export function inPowers(series: readonly number[]): number[] {
  const out = series.map(() => 0);
  let [before, now] = [[0], [1]] as [readonly number[], readonly number[]];
  for (const [k, factor] of series.entries()) {
    for (const [power, value] of now.entries()) out[power]! += factor * value;
    const next = [...now, 0].map(
      (_, power) => (k === 0 ? 1 : 2) * (2 * (now[power - 1] ?? 0) - (now[power] ?? 0)) - (before[power] ?? 0),
    );
    [before, now] = [now, next];
  }
  return out;
}

/**
 * The squared denominator of an equal ripple over $-1 \le x \le 1$, in Chebyshev polynomials of x, for zeros that are given by
 * {@link factorOf}. The response squared is $|h|^2$ over
 *
 * $$ |h|^2 + \epsilon^2\,\tfrac12\bigl(|h|^2 + \operatorname{Re}(e^{jn\theta}\,\bar h^2)\bigr), \quad x = \cos\theta $$
 *
 * These are the polynomials of Bernstein and Szegő; without zeros they are Chebyshev's.
 */
export function equalRipple(order: number, h: readonly number[], squaredRipple: number): readonly number[] {
  const series = rippleAlone(order, h).map((value) => squaredRipple * value);
  for (const [i, a] of h.entries()) for (const [k, b] of h.entries()) series[Math.abs(i - k)]! += a * b;
  return series;
}

/** What the ripple adds in {@link equalRipple}, over its square $\epsilon^2$. */
export function rippleAlone(order: number, h: readonly number[]): number[] {
  const series = Array.from({ length: order + 1 }, () => 0);
  for (const [i, a] of h.entries())
    for (const [k, b] of h.entries()) {
      series[Math.abs(i - k)]! += (a * b) / 2;
      series[Math.abs(order - i - k)]! += (a * b) / 2;
    }
  return series;
}

/** The value of {@link factorOf} at −1, which is where x is −1. */
export const atLowEnd = (h: readonly number[]): number =>
  h.reduce((sum, value, k) => sum + (k % 2 === 0 ? value : -value), 0);

/** A number that a function gives back, sought by the secant from a start, on a logarithmic scale. */
export function fixedPoint(of: (value: number) => number, start: number): number {
  let [x, next] = [Math.log(start), Math.log(of(start))];
  let slope = 0;
  for (let turn = 0; turn < 40 && Math.abs(next - x) > 4 * Number.EPSILON * Math.max(1, Math.abs(x)); turn++) {
    const moved = x + (next - x) / (1 - slope);
    const there = Math.log(of(Math.exp(moved)));
    slope = Math.min(0.9, Math.max(-4, (there - next) / (moved - x)));
    [x, next] = [moved, there];
  }
  return Math.exp(next);
}
