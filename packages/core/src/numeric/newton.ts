import { factorMatrix, solveFactored } from './linear-system.js';

/** How far a walk of Newton may go. */
export interface NewtonOptions {
  /** The largest residual that counts as zero; default 1e-12. */
  readonly tolerance?: number;
  /** Default 40. */
  readonly mostSteps?: number;
  /** The largest change of one unknown in one step; default 1. */
  readonly longestStep?: number;
}

/** Where a walk ended. */
export interface NewtonRoot {
  readonly ok: boolean;
  readonly x: Float64Array;
  readonly steps: number;
}

/** Difference by which a slope is taken: the root of the rounding error, where rounding and curvature cost the same. */
const DIFFERENCE = 2 ** -26;

/** Residuals of real equations are rarely known better: a walk that stands still with more of them has found no root. */
const ROUNDING = 1e-9;

/**
 * A root of as many equations as unknowns, from a start, by Newton's method with difference quotients. A step that does not
 * make the largest residual smaller is halved, up to eleven times.
 *
 * $$ J\,\Delta x = -r(x), \quad J_{ij} = \frac{\partial r_i}{\partial x_j} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $r$ | `residual` | any | fills the residuals at x; `NaN` where x has no meaning |
 * | $x$ | `start`, `x` | any | the unknowns, of a size near 1 |
 *
 * @validity equations that are smooth near the root, and a root at which J is regular
 * @neglects roots other than the one that the walk reaches
 * @returns the last place, and whether every residual there is within the tolerance; or within 1e-9, where no shorter step makes the
 *   largest one smaller
 * @source dlmf §3.8(vii)
 * @example newtonRoot(([x, y], r) => { r[0] = x * y - 2; r[1] = x - y; }, [1, 2]).x // 1.414, 1.414
 */
export function newtonRoot(
  residual: (x: Float64Array, out: Float64Array) => void,
  start: ArrayLike<number>,
  options: NewtonOptions = {},
): NewtonRoot {
  return compileNewton(residual, start.length)(start, options);
}

/** Prepares {@link newtonRoot} for many starts: a walk allocates its result alone. */
export function compileNewton(
  residual: (x: Float64Array, out: Float64Array) => void,
  n: number,
): (start: ArrayLike<number>, options?: NewtonOptions) => NewtonRoot {
  const [r, moved, step, beyond] = [0, 1, 2, 3].map(() => new Float64Array(n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const jacobian = new Float64Array(n * n);
  const exchanges = new Int32Array(n);
  const sizeAt = (place: Float64Array, out: Float64Array): number => {
    residual(place, out);
    let size = 0;
    for (const value of out) size = value > -Infinity ? Math.max(size, Math.abs(value)) : Infinity;
    return size;
  };
  return (start, { tolerance = 1e-12, mostSteps = 40, longestStep = 1 } = {}) => {
    const x = new Float64Array(n);
    x.set(start);
    let size = sizeAt(x, r);
    for (let steps = 0; ; steps++) {
      if (size <= tolerance) return { ok: true, x, steps };
      if (steps === mostSteps || size === Infinity) return { ok: false, x, steps };
      for (let j = 0; j < n; j++) {
        const kept = x[j]!;
        x[j] = kept + DIFFERENCE;
        residual(x, moved);
        x[j] = kept;
        for (let i = 0; i < n; i++) jacobian[i * n + j] = (moved[i]! - r[i]!) / DIFFERENCE;
      }
      if (factorMatrix(n, jacobian, exchanges) === 0) return { ok: false, x, steps };
      step.set(r);
      solveFactored(n, jacobian, exchanges, step, 1);
      let part = 1;
      for (const value of step) part = Math.min(part, longestStep / Math.abs(value));
      let next = Infinity;
      for (let halvings = 0; halvings < 12; halvings++, part /= 2) {
        for (let i = 0; i < n; i++) beyond[i] = x[i]! - part * step[i]!;
        next = sizeAt(beyond, moved);
        if (next < size) break;
      }
      if (!(next < size)) return { ok: size <= ROUNDING, x, steps };
      x.set(beyond);
      r.set(moved);
      size = next;
    }
  };
}
