import { type EndCorrection, flared } from '@airspring/core/duct';
import { type LengthInput, positive, readFields } from '@airspring/core/quantity';
import type { PlanePoint } from '../outline/index.js';

/**
 * How a duct widens at one end, in plain SI numbers. You can use a flare of your own in the same way.
 *
 * @example const cone: Flare = { name: 'cone', depth: 0.02, widening: 0.01, curve: (t) => [0.02 * t, 0.01 * t], sources: ['own'] };
 */
export interface Flare {
  readonly name: string;
  /** Length along the centre line, m. It is part of the length of the duct. */
  readonly depth: number;
  /** How much wider the mouth is than the duct, on each side, m. */
  readonly widening: number;
  /** From the throat at t = 0 to the mouth at t = 1: distance from the throat along the centre line, and widening there, m. */
  readonly curve: (t: number) => PlanePoint;
  /** Values of t, in increasing order, at which one curve joins the next. */
  readonly joints?: readonly number[];
  /** The end correction that it gives a round duct whose sharp end has the given one; default that of `flareEnd`. */
  readonly endCorrection?: (end: EndCorrection) => EndCorrection;
  /** Citation keys. */
  readonly sources: readonly string[];
}

/**
 * A quarter of a circle.
 *
 * $$ x = R\sin\varphi,\qquad y = R\,(1 - \cos\varphi) $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $R$ | m | radius of the rounding |
 * | $x$, $y$ | m | distance from the throat and widening |
 *
 * @validity exact geometry; its end correction is core's `flared`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source own derivation: the circle
 * @example roundFlare({ radius: '20 mm' }).widening // 0.02
 */
export function roundFlare(input: { readonly radius: LengthInput }): Flare {
  const { radius } = readFields('flare', input, { radius: positive('length') });
  return {
    ...ellipse(radius, radius),
    name: 'quarter round',
    endCorrection: (end) => flared({ radius, end }),
  };
}

/** Sizes of a flare that is longer than it is wide, or the reverse. */
export interface FlareSizes {
  /** Length along the centre line. */
  readonly depth: LengthInput;
  /** How much wider the mouth is than the duct, on each side. */
  readonly widening: LengthInput;
}

const sizesShape = { depth: positive('length'), widening: positive('length') };

/**
 * A quarter of an ellipse.
 *
 * $$ x = D\sin\varphi,\qquad y = W\,(1 - \cos\varphi) $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $D$, $W$ | m | depth and widening |
 * | $x$, $y$ | m | distance from the throat and widening there |
 *
 * @validity exact geometry
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source own derivation: the ellipse
 * @example ellipticFlare({ depth: '40 mm', widening: '20 mm' }).curve(1) // [0.04, 0.02]
 */
export function ellipticFlare(input: FlareSizes): Flare {
  const { depth, widening } = readFields('flare', input, sizesShape);
  return ellipse(depth, widening);
}

const ellipse = (depth: number, widening: number): Flare => ({
  name: 'quarter ellipse',
  depth,
  widening,
  curve: (t) =>
    t >= 1 ? [depth, widening] : [depth * Math.sin((Math.PI / 2) * t), 2 * widening * Math.sin((Math.PI / 4) * t) ** 2],
  sources: [],
});

/**
 * A flare whose widening grows exponentially from the throat, where it is parallel to the duct.
 *
 * $$ y = W\,\frac{e^{m x/D} - 1 - m x/D}{e^m - 1 - m},\qquad m = 4 $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $D$, $W$ | m | depth and widening |
 * | $x$, $y$ | m | distance from the throat and widening there |
 *
 * @validity exact geometry
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source own derivation: the exponential function, less its tangent, so that no edge is left at the throat
 * @example exponentialFlare({ depth: '40 mm', widening: '20 mm' }).curve(0.5) // [0.02, 0.0018]
 */
export function exponentialFlare(input: FlareSizes): Flare {
  const { depth, widening } = readFields('flare', input, sizesShape);
  const above = (m: number) => Math.expm1(m) - m;
  return {
    name: 'exponential',
    depth,
    widening,
    curve: (t) => [depth * t, (widening * above(RATE * t)) / above(RATE)],
    sources: [],
  };
}

/** Logarithm of the growth of an exponential flare over its depth. */
const RATE = 4;
