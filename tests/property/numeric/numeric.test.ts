import {
  besselJ0,
  besselJ1,
  boundedMinimum,
  bracketedRoot,
  linear,
  logarithmic,
  matrixExponential,
  polynomialColumnOnImaginaryAxis,
  polynomialOnImaginaryAxis,
  polynomialProduct,
  polynomialRoots,
  signChanges,
  simplexMinimum,
  struveH0,
  struveH1,
} from '@airspring/core/numeric';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const any = fc.double();

/** Runs a door; what it refuses is refused by the one error. */
function doorOf<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    expect(error).toMatchObject({ code: 'airspring-input' });
    return undefined;
  }
}

test.prop([
  fc.array(size(-9, 9), { minLength: 1, maxLength: 9 }),
  fc.array(size(-9, 9), { minLength: 1, maxLength: 9 }),
  size(0, 3),
])('a product at jω is the product of the values, one by one and as a column', (a, b, omega) => {
  const at = (c: ArrayLike<number>) => {
    const out = new Float64Array(2);
    polynomialOnImaginaryAxis(c, omega, out);
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    polynomialColumnOnImaginaryAxis(c, Float64Array.of(omega), re, im);
    expect([re[0], im[0]]).toEqual([...out]);
    return [out[0]!, out[1]!] as const;
  };
  const [[ar, ai], [br, bi], [cr, ci]] = [at(a), at(b), at(polynomialProduct(a, b))];
  const scale = 81 * 9 * Math.max(1, omega) ** (a.length + b.length - 2) * 9;
  expect(Math.abs(cr - (ar * br - ai * bi))).toBeLessThanOrEqual(1e-14 * scale);
  expect(Math.abs(ci - (ar * bi + ai * br))).toBeLessThanOrEqual(1e-14 * scale);
});

// A root below 1e-100 would leave products that double precision cannot hold: the polynomial then is another one.
const real = size(-100, 100).map((x) => (Math.abs(x) < 1e-100 ? 0 : x));
const root = fc.record({ x: real, y: fc.oneof(fc.constant(0), size(0.01, 100)) });
test.prop([fc.array(root, { minLength: 1, maxLength: 8 })])(
  'each root leaves no more than rounding, in exact pairs',
  (roots) => {
    let c: Float64Array = Float64Array.of(1);
    for (const { x, y } of roots) c = polynomialProduct(c, y === 0 ? [-x, 1] : [x * x + y * y, -2 * x, 1]);
    const { re, im, converged } = polynomialRoots(c);
    expect(converged).toBe(true);
    expect(re.length).toBe(c.length - 1);
    for (let i = 0; i < re.length; i++) {
      const [x, y] = [re[i]!, im[i]!];
      if (y < 0) expect([re[i + 1], im[i + 1]]).toEqual([x, -y]);
      // Each is the exact root of a polynomial nearby, multiple or not.
      let [pr, pi, bound] = [0, 0, 0];
      for (const a of c.toReversed()) {
        [pr, pi] = [pr * x - pi * y + a, pr * y + pi * x];
        bound = bound * Math.hypot(x, y) + Math.abs(a);
      }
      expect(Math.hypot(pr, pi)).toBeLessThanOrEqual(1e-12 * bound);
    }
  },
);

test.prop([fc.array(size(-3, 3), { minLength: 9, maxLength: 9 }), size(0.01, 1), size(0.01, 1)])(
  'two steps are one: e^A(s+t) = e^As e^At',
  (a, s, t) => {
    const [es, et, both] = [matrixExponential(3, a, s), matrixExponential(3, a, t), matrixExponential(3, a, s + t)];
    const most = Math.max(...es.map(Math.abs)) * Math.max(...et.map(Math.abs));
    for (let i = 0; i < 3; i++)
      for (let k = 0; k < 3; k++) {
        const sum = [0, 1, 2].reduce((total, j) => total + es[3 * i + j]! * et[3 * j + k]!, 0);
        expect(Math.abs(sum - both[3 * i + k]!)).toBeLessThanOrEqual(1e-13 * most);
      }
  },
);

test.prop([size(0.01, 200)])('slopes of Bessel and Struve functions are those of the books', (x) => {
  const h = 1e-3 * Math.min(1, x);
  // Five points: an error of h⁴/30 and of rounding over h.
  const slope = (f: (x: number) => number) => (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
  expect(Math.abs(slope(besselJ0) + besselJ1(x))).toBeLessThan(1e-10);
  expect(Math.abs(slope(struveH0) - (2 / Math.PI - struveH1(x)))).toBeLessThan(1e-10);
  expect(Math.abs(slope((v) => v * struveH1(v)) - x * struveH0(x))).toBeLessThan(1e-10 * (1 + x));
  expect(besselJ1(-x)).toBe(-besselJ1(x));
  expect(struveH0(-x)).toBe(-struveH0(x));
});

test.prop([size(-1e3, 1e3), size(1e-3, 1e3), size(1e-3, 1e3)])('a root that is known is found', (at, below, above) => {
  const found = bracketedRoot((x) => Math.atan(x - at), at - below, at + above);
  expect(found.ok && Math.abs(found.x - at)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(at)));
});

test.prop([any, any, any])('doors answer finite numbers or refuse: two ends', (a, b, c) => {
  for (const spacing of [linear, logarithmic]) {
    const column = doorOf(() => spacing(a, b, 7));
    column?.forEach((v, i) => expect(v >= (column[i - 1] ?? a) && v <= b).toBe(true));
    doorOf(() => spacing(a, b, c > 1e4 ? Infinity : c));
  }
  const line = doorOf(() => boundedMinimum((x) => Math.sin(x), a, b));
  if (line) expect(line.x >= a && line.x <= b && Number.isFinite(line.value)).toBe(true);
  const cross = doorOf(() => bracketedRoot((x) => x - c, a, b));
  if (cross?.ok) expect(cross.x >= a && cross.x <= b).toBe(true);
});

test.prop([fc.array(any, { maxLength: 9 })])('doors answer finite numbers or refuse: lists', (list) => {
  const roots = doorOf(() => polynomialRoots(list));
  if (roots) for (const part of [roots.re, roots.im]) expect(part.every(Number.isFinite)).toBe(true);
  doorOf(() => signChanges(list));
  const e = doorOf(() => matrixExponential(Math.floor(Math.sqrt(list.length)), list));
  if (e) expect(e.every(Number.isFinite)).toBe(true);
  const low = list.map((v) => v - 1);
  const simplex = doorOf(() => simplexMinimum((x) => Math.cos(x[0]!), list, low, list, { evaluations: 200 }));
  if (simplex) expect(simplex.x.every(Number.isFinite)).toBe(true);
});
