/** From this |z| on, the expansion in 1/z is exact to rounding. Below it, the recurrence is. */
const far = 25;
/** From this Im z on, e^{2jz} is below rounding beside 1. */
const deep = 19;

/**
 * Quotients of Bessel functions of a complex argument, $J_1/J_0$ and $J_2/J_0$; a kernel. Both stay finite where the
 * functions themselves overflow, and $J_2/J_0$ keeps its digits where $1 - 2J_1/(zJ_0)$ would lose them.
 *
 * $$ \frac{J_2(z)}{J_0(z)} = \frac2z\,\frac{J_1(z)}{J_0(z)} - 1 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $z$ | `re`, `im` | 1 | argument, anywhere in the plane |
 *
 * Near 0 it uses a power series, farther out the downward recurrence, which needs no scaling for quotients. Far out it uses
 * the expansions in 1/z with $e^{2jz}$, which vanishes away from the real axis instead of overflowing. Where it has vanished, the
 * quotient itself has an expansion in 1/z.
 *
 * @validity finite z other than the zeros of $J_0$, all of which are real; relative error below 1e-13, except near the zeros
 *   of the three functions
 * @neglects nothing
 * @returns nothing; fills `out` with real and imaginary part of $J_1/J_0$, then those of $J_2/J_0$
 * @source dlmf 10.2.2, 10.6.1, 10.17.3, 10.17.5
 * @example besselQuotients(1, -1, out) // out: 0.350548, -0.574958, -0.074494, -0.224410
 */
export function besselQuotients(re: number, im: number, out: Float64Array): void {
  // J1/J0 is odd, J2/J0 is even, and both are real on the real axis, so the first quadrant determines the others.
  const x = Math.abs(re);
  const y = Math.abs(im);
  const size = Math.hypot(x, y);
  if (size < 1) fromSeries(x, y, out);
  else if (size < far) fromRecurrence(x, y, size, out);
  else if (y < deep) fromExpansion(x, y, out);
  else fromQuotientExpansion(x, y, size, out);
  const turned = re < 0 !== im < 0;
  if (re < 0) out[0] = -out[0]!;
  if (im < 0) out[1] = -out[1]!;
  if (turned) out[3] = -out[3]!;
}

/** out[at, at + 1] ← (a + jb)/(c + jd). */
function divide(out: Float64Array, at: number, a: number, b: number, c: number, d: number): void {
  const unit = 1 / (c * c + d * d);
  out[at] = (a * c + b * d) * unit;
  out[at + 1] = (b * c - a * d) * unit;
}

function fromSeries(x: number, y: number, out: Float64Array): void {
  const q = (y * y - x * x) / 4;
  const p = (-x * y) / 2;
  // Σ (−z²/4)^k n!/(k! (k + n)!) for n = 0, 1, 2, each 1 at z = 0.
  const re = [1, 1, 1];
  const im = [0, 0, 0];
  for (let n = 0; n < 3; n++) {
    let a = 1;
    let b = 0;
    for (let k = 1; k < 14; k++) {
      const unit = 1 / (k * (k + n));
      [a, b] = [(a * q - b * p) * unit, (a * p + b * q) * unit];
      re[n]! += a;
      im[n]! += b;
    }
  }
  const [s0, s1, s2] = re as [number, number, number];
  const [t0, t1, t2] = im as [number, number, number];
  divide(out, 0, (x * s1 - y * t1) / 2, (x * t1 + y * s1) / 2, s0, t0);
  // z²/8 = −(q + jp)/2
  divide(out, 2, (p * t2 - q * s2) / 2, -(q * t2 + p * s2) / 2, s0, t0);
}

function fromRecurrence(x: number, y: number, size: number, out: Float64Array): void {
  const unit = 1 / (size * size);
  let [aboveRe, aboveIm, hereRe, hereIm] = [0, 0, 1, 0];
  let [secondRe, secondIm] = [0, 0];
  // From this order on, J is below 1e-20 of J0, so any start value will do.
  for (let k = Math.ceil(size) + 36; k > 0; k--) {
    const [a, b] = [2 * k * x * unit, -2 * k * y * unit];
    if (k === 1) [secondRe, secondIm] = [aboveRe, aboveIm];
    const belowRe = a * hereRe - b * hereIm - aboveRe;
    const belowIm = a * hereIm + b * hereRe - aboveIm;
    [aboveRe, aboveIm, hereRe, hereIm] = [hereRe, hereIm, belowRe, belowIm];
  }
  divide(out, 0, aboveRe, aboveIm, hereRe, hereIm);
  divide(out, 2, secondRe, secondIm, hereRe, hereIm);
}

function fromExpansion(x: number, y: number, out: Float64Array): void {
  const size = Math.hypot(x, y);
  const [ur, ui] = [x / size / size, -y / size / size];
  // P and Q of both orders, with the terms a_k(ν)/z^k.
  const sums = [1, 0, 0, 0, 1, 0, 0, 0];
  for (let order = 0; order < 2; order++) {
    let [a, b] = [1, 0];
    for (let k = 1; k < 60 && Math.abs(a) + Math.abs(b) > 1e-18; k++) {
      const factor = (4 * order - (2 * k - 1) ** 2) / (8 * k);
      [a, b] = [factor * (a * ur - b * ui), factor * (a * ui + b * ur)];
      const at = 4 * order + (k % 2 === 1 ? 2 : 0);
      const sign = k % 4 === 0 || k % 4 === 1 ? 1 : -1;
      sums[at]! += sign * a;
      sums[at + 1]! += sign * b;
    }
  }
  const [p0, v0, q0, w0, p1, v1, q1, w1] = sums as [number, number, number, number, number, number, number, number];
  // w = e^{2jχ} = −j e^{2jz}, and tan χ = −j (w − 1)/(w + 1).
  const shrink = Math.exp(-2 * y);
  const wr = shrink * Math.sin(2 * x);
  const wi = -shrink * Math.cos(2 * x);
  const [lessRe, moreRe] = [wr - 1, wr + 1];
  // −j P1 (w − 1) + Q1 (w + 1) over P0 (w + 1) + j Q0 (w − 1)
  const topRe = p1 * wi + v1 * lessRe + q1 * moreRe - w1 * wi;
  const topIm = v1 * wi - p1 * lessRe + q1 * wi + w1 * moreRe;
  const lowRe = p0 * moreRe - v0 * wi - (q0 * wi + w0 * lessRe);
  const lowIm = p0 * wi + v0 * moreRe + q0 * lessRe - w0 * wi;
  divide(out, 0, topRe, topIm, lowRe, lowIm);
  const [a, b] = [out[0]!, out[1]!];
  out[2] = 2 * (a * ur - b * ui) - 1;
  out[3] = 2 * (a * ui + b * ur);
}

/**
 * The terms of $I_1/I_0 = \\sum c_k w^{-k}$, from its own equation $q' = 1 - q/w - q^2$. So many are enough where `far` begins.
 */
const terms = /* @__PURE__ */ quotientTerms(24);

function quotientTerms(count: number): Float64Array {
  const found = new Float64Array(count);
  found[0] = 1;
  for (let k = 1; k < count; k++) {
    let products = 0;
    for (let i = 1; i < k; i++) products += found[i]! * found[k - i]!;
    found[k] = ((k - 2) * found[k - 1]! - products) / 2;
  }
  return found;
}

/** J1/J0 (z) = j I1/I0 (−jz), for an argument far from the real axis. */
function fromQuotientExpansion(x: number, y: number, size: number, out: Float64Array): void {
  const unit = 1 / (size * size);
  // 1/w for w = −jz = y − jx.
  const [ur, ui] = [y * unit, x * unit];
  let last = 0;
  for (let power = 1; last < terms.length - 1 && Math.abs(terms[last]!) * power > 1e-17; last++) power /= size;
  let [re, im] = [terms[last]!, 0];
  for (let k = last - 1; k >= 0; k--) {
    const a = re * ur - im * ui + terms[k]!;
    im = re * ui + im * ur;
    re = a;
  }
  out[0] = -im;
  out[1] = re;
  // J2/J0 = (2/z) J1/J0 − 1, with 1/z = −j/w.
  out[2] = 2 * (re * ur - im * ui) - 1;
  out[3] = 2 * (re * ui + im * ur);
}
