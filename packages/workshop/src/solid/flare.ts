import { type EndCorrection, flared } from '@airspring/core/duct';
import { type Fault, refuse } from '@airspring/core/fault';
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

/**
 * A flare through points of your own, joined by straight lines.
 *
 * @validity points that lead from the throat, [0, 0], outwards and never back
 * @throws InputError `empty`, `not-finite`, `unsorted`
 * @source own derivation: the straight line
 * @example flareThrough([[0, 0], [0.01, 0.002], [0.02, 0.01]]).depth // 0.02
 */
export function flareThrough(points: readonly PlanePoint[]): Flare {
  const faults: Fault[] = [];
  if (points.length < 2) {
    const expected = 'two points or more, the first of them [0, 0]';
    faults.push({ code: 'empty', path: 'points', got: points.length, expected, remedy: 'Give the points in metres.' });
  }
  refuse(faults);
  const last = points.length - 1;
  const [depth, widening] = points[last]!;
  const flare: Flare = {
    name: 'own profile',
    depth,
    widening,
    curve: (t) => {
      const i = Math.min(last - 1, Math.floor(t * last));
      const part = t * last - i;
      const [[x, y], [nextX, nextY]] = [points[i]!, points[i + 1]!];
      return [x + part * (nextX - x), y + part * (nextY - y)];
    },
    joints: points.slice(1, -1).map((_, i) => (i + 1) / last),
    sources: [],
  };
  refuse(flareFaults(flare, 'points', (i) => `points[${i}]`));
  return flare;
}

/** Points of a flare from the throat to the mouth, so many that no side is farther than `chord` from the curve. */
export function flarePoints(flare: Flare, chord: number): readonly PlanePoint[] {
  const cuts = [0, ...(flare.joints ?? []), 1];
  const points: PlanePoint[] = [flare.curve(0)];
  for (let i = 1; i < cuts.length; i++) halve(flare.curve, cuts[i - 1]!, cuts[i]!, chord, points, MOST_HALVINGS);
  return points;
}

/** A side of a curve is halved at most so often. */
const MOST_HALVINGS = 10;

function halve(
  curve: Flare['curve'],
  from: number,
  to: number,
  chord: number,
  points: PlanePoint[],
  more: number,
): void {
  const [a, b] = [curve(from), curve(to)];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const far = [0.25, 0.5, 0.75].some((part) => {
    const p = curve(from + part * (to - from));
    const off = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    return Math.abs(off) > chord * long;
  });
  if (far && more > 0) {
    const middle = (from + to) / 2;
    halve(curve, from, middle, chord, points, more - 1);
    halve(curve, middle, to, chord, points, more - 1);
  } else points.push(b);
}

/** Faults of a flare that runs back, so that its wall would cross itself, or that does not go where it says. */
export function flareFaults(
  flare: Flare,
  path: string,
  place: (i: number) => string = (i) => `${path}.curve(${(i / SAMPLES).toFixed(2)})`,
): Fault[] {
  const own = path === 'points';
  if (!own && !isFlare(flare)) {
    const expected = `a flare: depth and widening of at most ${LONGEST} m, curve (a function that gives two numbers), joints in increasing order`;
    const remedy = 'Give roundFlare({ radius }) or one of your own.';
    return [{ code: 'inconsistent', path, got: flare, expected, remedy }];
  }
  const at = own ? [0, ...(flare.joints ?? []), 1] : Array.from({ length: SAMPLES + 1 }, (_, i) => i / SAMPLES);
  const points = at.map((t) => flare.curve(t));
  const faults: Fault[] = [];
  const remedy = 'Give it from the throat to the mouth.';
  points.forEach(([x, y], i) => {
    if (Number.isFinite(x) && Number.isFinite(y)) return;
    faults.push({
      code: 'not-finite',
      path: place(i),
      got: [x, y].find((v) => !Number.isFinite(v)),
      expected: 'finite lengths in m',
      remedy,
    });
  });
  if (faults.length > 0) return faults.slice(0, 1);
  const last = points.at(-1)!;
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6;
  if (!near(points[0]![0], 0) || !near(points[0]![1], 0)) {
    faults.push({
      code: 'inconsistent',
      path: place(0),
      got: points[0]!.join(', '),
      expected: 'the throat, 0, 0',
      remedy,
    });
  }
  if (!near(last[0], flare.depth) || !near(last[1], flare.widening)) {
    const expected = `its depth and widening, ${flare.depth}, ${flare.widening}`;
    faults.push({ code: 'inconsistent', path: place(points.length - 1), got: last.join(', '), expected, remedy });
  }
  if (!(flare.depth >= SHORTEST)) {
    const at = own ? path : `${path}.depth`;
    faults.push({
      code: 'not-positive',
      path: at,
      got: flare.depth,
      expected: `a depth of ${SHORTEST} m or more`,
      remedy,
    });
  }
  for (let i = 1; i < points.length; i++) {
    const [[x, y], [beforeX]] = [points[i]!, points[i - 1]!];
    if (x >= beforeX - 1e-12 && y >= -1e-12) continue;
    const expected =
      x < beforeX
        ? `a distance from the throat of ${beforeX} m or more: it runs back and would cross itself`
        : 'a widening of zero or more';
    faults.push({
      code: x < beforeX ? 'unsorted' : 'not-positive',
      path: place(i),
      got: x < beforeX ? x : y,
      expected,
      remedy,
    });
    break;
  }
  return faults;
}

/** What a stranger gives may lack anything. */
function isFlare(flare: Partial<Flare> | undefined): boolean {
  if (typeof flare?.curve !== 'function') return false;
  const { depth, widening, joints = [], endCorrection } = flare;
  const sizes = [depth, widening].every((size) => typeof size === 'number' && Math.abs(size) <= LONGEST);
  const joined =
    Array.isArray(joints) && joints.every((t, i) => typeof t === 'number' && t > (joints[i - 1] ?? 0) && t < 1);
  const point = flare.curve(0.5);
  const gives = Array.isArray(point) && point.length === 2 && point.every((x) => typeof x === 'number');
  return sizes && joined && gives && (endCorrection === undefined || typeof endCorrection === 'function');
}

/** No flare is shorter or longer, m: no printer makes it. */
const [SHORTEST, LONGEST] = [1e-5, 10];

/** Places at which a flare of a stranger is tried. */
const SAMPLES = 64;
