import { factorMatrix, polynomialRoots, solveFactored } from '../numeric/index.js';
import { productOf } from './product.js';

/** A factor of a polynomial in ascending powers, of second order or of first. Its last coefficient is 1. */
export type Factor = readonly number[];
/** A factor, and how often it stands in the product. */
type Repeated = readonly [factor: Factor, times: number];
type Root = readonly [re: number, im: number];

const expanded = (factors: readonly Repeated[]): Factor[] =>
  factors.flatMap(([factor, times]) => Array.from({ length: times }, () => factor));

/** Roots of the upper half plane, those that lie together as one of their number. Those that lie at the real axis become real. */
function repeated(roots: readonly Root[], radius: number): Repeated[] {
  const onAxis = ([re, im]: Root) => im <= radius * Math.hypot(re, im);
  const real = roots.filter(onAxis).flatMap(([re, im]): Root[] => (im === 0 ? [[re, 0]] : [re, re].map((x) => [x, 0])));
  const open = [...real, ...roots.filter((root) => !onAxis(root))];
  const groups: Repeated[] = [];
  while (open.length > 0) {
    const [x, y] = open[0]!;
    const cluster = open.filter(([re, im]) => Math.hypot(re - x, im - y) <= radius * Math.hypot(x, y));
    const [re, im] = [0, 1].map((part) => cluster.reduce((sum, root) => sum + root[part]!, 0) / cluster.length) as [
      number,
      number,
    ];
    groups.push([im === 0 ? [-re, 1] : [re * re + im * im, -2 * re, 1], cluster.length]);
    for (const root of cluster) open.splice(open.indexOf(root), 1);
  }
  return groups;
}

/** What each coefficient is compared with: its own size, unless it is next to nothing. */
function sizesOf(polynomial: readonly number[]): readonly number[] {
  const least = 1e-6 * Math.max(...polynomial.map(Math.abs));
  return polynomial.map((value) => Math.max(Math.abs(value), least));
}

/** One step of Gauss and Newton on the coefficients of the distinct factors, after which their product is nearer to the polynomial. */
function refined(groups: readonly Repeated[], polynomial: readonly number[]): readonly Repeated[] {
  const product = productOf(expanded(groups));
  const slopes = groups.flatMap(([factor, times], i) => {
    const others = productOf(expanded(groups.map(([one, n], k) => [one, k === i ? n - 1 : n])));
    return Array.from({ length: factor.length - 1 }, (_, power) =>
      polynomial.map((_, k) => times * (others[k - power] ?? 0)),
    );
  });
  const sizes = sizesOf(polynomial);
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, k) => sum + (value * b[k]!) / sizes[k]! ** 2, 0);
  const missing = polynomial.map((value, k) => value - product[k]!);
  const count = slopes.length;
  const matrix = Float64Array.from(slopes.flatMap((a) => slopes.map((b) => dot(a, b))));
  const steps = Float64Array.from(slopes, (a) => dot(a, missing));
  const exchanges = new Int32Array(count);
  if (factorMatrix(count, matrix, exchanges) === 0) return groups;
  solveFactored(count, matrix, exchanges, steps, 1);
  let at = 0;
  return groups.map(([factor, times]) => [
    factor.map((value, k) => (k < factor.length - 1 ? value + steps[at++]! : 1)),
    times,
  ]);
}

/** How far apart roots may lie that are tried as one, as a share of their size. */
const RADII = [0, 1e-6, 1e-4, 1e-2, 0.1];
const STEPS = 4;

/**
 * The factors of second order of a polynomial with all its coefficients, and one of first if its order is odd. Rounding scatters the
 * roots of a multiple root; the factors of a product that is held to their multiplicity keep their digits.
 *
 * @source zeng2005 Gauss-Newton steps on the distinct roots, with their multiplicities held
 */
export function factorsOf(polynomial: ArrayLike<number>): readonly Factor[] {
  const last = polynomial[polynomial.length - 1]!;
  const monic = Array.from(polynomial, (value) => value / last);
  const { re, im } = polynomialRoots(monic);
  const upper = Array.from(re, (x, i): Root => [x, im[i]!]).filter(([, y]) => y >= 0);
  const sizes = sizesOf(monic);
  const missed = (groups: readonly Repeated[]): number =>
    productOf(expanded(groups)).reduce((sum, value, k) => sum + Math.abs(value - monic[k]!) / sizes[k]!, 0);
  const tried = RADII.flatMap((radius) => {
    const walk = [repeated(upper, radius) as readonly Repeated[]];
    for (let step = 0; step < STEPS; step++) walk.push(refined(walk.at(-1)!, monic));
    return walk;
  });
  const best = tried.reduce((nearest, one) => (missed(one) < missed(nearest) ? one : nearest));
  const factors = expanded(best);
  const real = factors.filter((factor) => factor.length === 2);
  const pairs = factors.filter((factor) => factor.length === 3);
  for (let i = 0; i + 1 < real.length; i += 2) pairs.push(productOf([real[i]!, real[i + 1]!]));
  return real.length % 2 === 1 ? [...pairs, real.at(-1)!] : pairs;
}
