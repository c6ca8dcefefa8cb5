import { refuse } from '../fault/index.js';
import { unlessFiniteColumn } from './refusal.js';

/** Roots of a real polynomial, as one column of real parts and one of imaginary parts. */
export interface Roots {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** False when a root was still moving after the last sweep; the values are then the best so far. */
  readonly converged: boolean;
}

const epsilon = Number.EPSILON;
const sweeps = 500;

/** The magnitude of a complex number. The careful way is needed only where a square leaves double precision. */
function magnitude(x: number, y: number): number {
  const square = x * x + y * y;
  return square > 1e-280 && square < 1e280 ? Math.sqrt(square) : Math.hypot(x, y);
}

/** a · 2^e without an intermediate overflow. */
const shifted = (a: number, e: number): number => {
  if (Math.abs(e) < 1000) return a * 2 ** e;
  const half = Math.trunc(Math.max(-2200, Math.min(2200, e)) / 3);
  return a * 2 ** half * 2 ** half * 2 ** (Math.max(-2200, Math.min(2200, e)) - 2 * half);
};

/**
 * All roots of a polynomial with real coefficients in ascending powers, by the method of Ehrlich and Aberth: simultaneous
 * Newton steps in which the roots repel each other. The polynomial is never divided, so no error passes from root to root.
 *
 * $$ \Delta_i = \frac{p(z_i)/p'(z_i)}{1 - \frac{p(z_i)}{p'(z_i)} \sum_{k\ne i} \frac{1}{z_i - z_k}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p$ | `coefficients` | any | real coefficients, ascending powers |
 * | $z_i$ | `re`, `im` | as the variable | root |
 *
 * The start circles follow the upper hull of $\log|a_k|$, so that roots many decades apart are found together. The variable
 * is scaled by a power of two. Zero coefficients at the low end give roots at 0; those at the high end lower the degree.
 *
 * @validity degree up to about 20. A root of multiplicity m is found to about $\epsilon^{1/m}$ of its magnitude, because the
 * coefficients themselves determine it no better.
 * @neglects nothing
 * @returns roots in exact conjugate pairs, sorted by real part, then by magnitude of the imaginary part, then by its sign
 * @throws InputError `empty` (no coefficient, or all zero), `not-finite`, `out-of-range` (a root overflows)
 * @source dlmf §3.8(iv)
 * @source aberth1973 whole paper
 * @example polynomialRoots([5, 2, 1]) // re = -1, -1; im = -2, 2
 */
export function polynomialRoots(coefficients: ArrayLike<number>): Roots {
  let high = coefficients.length - 1;
  while (high > 0 && coefficients[high] === 0) high--;
  refuse([
    ...unlessFiniteColumn('coefficients', coefficients),
    ...(coefficients[high] === 0
      ? [
          {
            code: 'empty' as const,
            path: 'coefficients',
            got: coefficients,
            expected: 'a coefficient other than zero',
            remedy: 'Give at least one; the zero polynomial is zero everywhere.',
          },
        ]
      : []),
  ]);
  let low = 0;
  while (coefficients[low] === 0) low++;
  const degree = high - low;
  const size = (k: number) => Math.log2(Math.abs(coefficients[low + k]!));
  const scale = degree > 0 ? Math.round((size(0) - size(degree)) / degree) : 0;
  const logs = new Float64Array(degree + 1);
  for (let k = 0; k <= degree; k++) logs[k] = size(k) + k * scale;
  const top = Math.round(Math.max(...logs));
  const a = new Float64Array(degree + 1);
  for (let k = 0; k <= degree; k++) a[k] = shifted(coefficients[low + k]!, k * scale - top);
  const re = new Float64Array(degree);
  const im = new Float64Array(degree);
  spreadOnHull(logs, re, im);
  const converged = sweepUntilStill(a, re, im);
  makeConjugate(re, im);
  const order = [...re.keys()].sort(
    (i, k) => re[i]! - re[k]! || Math.abs(im[i]!) - Math.abs(im[k]!) || im[i]! - im[k]!,
  );
  // Roots at 0 were never among the unknowns, so their place in the order is found here.
  const zero = order.filter((i) => re[i]! < 0).length;
  const gathered = (part: Float64Array) => {
    const sorted = order.map((i) => shifted(part[i]!, scale));
    return Float64Array.from([...sorted.slice(0, zero), ...new Array<number>(low).fill(0), ...sorted.slice(zero)]);
  };
  const roots = { re: gathered(re), im: gathered(im), converged };
  if (!roots.re.every(Number.isFinite) || !roots.im.every(Number.isFinite))
    refuse([
      {
        code: 'out-of-range',
        path: 'coefficients',
        got: coefficients,
        expected: 'roots below the largest representable number',
        remedy: 'Scale the variable.',
      },
    ]);
  return roots;
}

/** Start values: each edge of the upper hull of (k, log2|a_k|) gives a circle, with as many points as the edge is wide. */
function spreadOnHull(logs: Float64Array, re: Float64Array, im: Float64Array): void {
  for (let from = 0; from < logs.length - 1; ) {
    let to = from + 1;
    const slope = (k: number) => (logs[k]! - logs[from]!) / (k - from);
    for (let k = from + 2; k < logs.length; k++) if (slope(k) >= slope(to)) to = k;
    const radius = 2 ** Math.max(-1000, Math.min(1000, -slope(to)));
    for (let k = from; k < to; k++) {
      // The points lie off the axes and differ from edge to edge, because a symmetric start would stay symmetric.
      const angle = (2 * Math.PI * (k - from)) / (to - from) + (2 * Math.PI * from) / logs.length + 0.7;
      re[k] = radius * Math.cos(angle);
      im[k] = radius * Math.sin(angle);
    }
    from = to;
  }
}

/** Moves the roots until each stands still or its residual is only rounding. Returns true when all came to rest. */
function sweepUntilStill(a: Float64Array, re: Float64Array, im: Float64Array): boolean {
  const degree = re.length;
  const still = new Uint8Array(degree);
  const step = new Float64Array(2);
  const last = new Float64Array(degree).fill(Infinity);
  let moving = degree;
  for (let sweep = 0; sweep < sweeps && moving > 0; sweep++) {
    for (let i = 0; i < degree; i++) {
      if (still[i]) continue;
      const x = re[i]!;
      const y = im[i]!;
      const residual = inverseNewton(a, x, y, step);
      // 1/Δ = p'/p − Σ 1/(z − z_k)
      let u = step[0]!;
      let v = step[1]!;
      for (let k = 0; k < degree; k++) {
        const dx = x - re[k]!;
        const dy = y - im[k]!;
        const d = dx * dx + dy * dy;
        if (k !== i && d > 0) {
          u -= dx / d;
          v += dy / d;
        }
      }
      const d = magnitude(u, v);
      const moved = d > 0 ? 1 / d : 0;
      const nextX = x - (u / d) * moved;
      const nextY = y + (v / d) * moved;
      // The step is not finite at a saddle, or where roots lie some 300 decades apart. Such a point waits for the others to move.
      const moves = residual > 2 && Number.isFinite(nextX + nextY);
      if (moves) {
        re[i] = nextX;
        im[i] = nextY;
      }
      // Within the rounding of Horner's scheme, a step that no longer shrinks is noise.
      const noise = residual <= 4 * degree && moved > last[i]! / 2;
      if (residual <= 2 || (moves && (noise || moved <= epsilon * magnitude(x, y)))) {
        still[i] = 1;
        moving--;
      }
      last[i] = moved;
    }
  }
  return moving === 0;
}

/**
 * Puts p'(z)/p(z) into `out`. Returns |p(z)| in units of the rounding of its terms, or 0 when nothing can be improved.
 * Outside the unit circle it evaluates the polynomial with reversed coefficients in 1/z, so that no power overflows.
 */
function inverseNewton(a: Float64Array, x: number, y: number, out: Float64Array): number {
  const degree = a.length - 1;
  const size = magnitude(x, y);
  const reversed = size > 1;
  const u = reversed ? x / size / size : x;
  const v = reversed ? -y / size / size : y;
  const r = reversed ? 1 / size : size;
  let pr = 0;
  let pi = 0;
  let dr = 0;
  let di = 0;
  let bound = 0;
  for (let k = 0; k <= degree; k++) {
    const nextDr = dr * u - di * v + pr;
    di = dr * v + di * u + pi;
    dr = nextDr;
    const c = reversed ? a[k]! : a[degree - k]!;
    const nextPr = pr * u - pi * v + c;
    pi = pr * v + pi * u;
    pr = nextPr;
    bound = bound * r + Math.abs(c);
  }
  const p = magnitude(pr, pi);
  const residual = p / (epsilon * bound);
  if (residual <= 2) return residual;
  const qr = ((dr / p) * pr + (di / p) * pi) / p;
  const qi = ((di / p) * pr - (dr / p) * pi) / p;
  // A step below the smallest representable number moves nothing.
  if (!Number.isFinite(qr + qi)) return 0;
  if (reversed) {
    // p'/p = w (n − w q'/q), w = 1/z
    const er = degree - (u * qr - v * qi);
    const ei = -(u * qi + v * qr);
    out[0] = u * er - v * ei;
    out[1] = u * ei + v * er;
  } else {
    out[0] = qr;
    out[1] = qi;
  }
  return residual;
}

/** Pairs each root with the one nearest to its mirror image, or puts it on the real axis if that is nearer. */
function makeConjugate(re: Float64Array, im: Float64Array): void {
  const paired = new Uint8Array(re.length);
  for (;;) {
    let i = -1;
    for (let k = 0; k < re.length; k++) if (!paired[k] && !(i >= 0 && Math.abs(im[k]!) <= Math.abs(im[i]!))) i = k;
    if (i < 0) return;
    let partner = i;
    let nearest = 2 * Math.abs(im[i]!);
    for (let k = 0; k < re.length; k++) {
      const distance = magnitude(re[i]! - re[k]!, im[i]! + im[k]!);
      if (k === i || paired[k] || distance >= nearest) continue;
      nearest = distance;
      partner = k;
    }
    paired[i] = 1;
    paired[partner] = 1;
    const x = re[i]! / 2 + re[partner]! / 2;
    const y = im[i]! / 2 - im[partner]! / 2;
    re[i] = x;
    re[partner] = x;
    im[i] = y;
    im[partner] = partner === i ? 0 : -y;
  }
}
