import type { LawResult } from '@airspring/core/laws';
import type { CoilCurve } from './curve.js';
import { filled, first, places, slopeFault, tried } from './trial.js';

/**
 * The laws of every curve of a coil, ours and a stranger's: it is 1 at rest, above zero everywhere, and its slope is that of its
 * value. The same question has the same answer.
 *
 * @validity displacements up to 1.3 times the reach
 * @neglects whether the curve describes a real coil
 * @returns one result for each law
 * @source own (definitions)
 * @example coilCurveLaws(forceFactorCurve({ reach: '10 mm', coefficients: [0, -0.3] })).every(({ holds }) => holds)
 */
export function coilCurveLaws(curve: CoilCurve): readonly LawResult[] {
  const xs = places(curve.reach);
  const step = 1e-5 * xs.at(-1)!;
  const extent = `${xs.length} displacements`;
  return [
    tried('has a reach above zero', `${curve.reach} m`, () => (curve.reach > 0 ? undefined : `${curve.reach} m`)),
    tried('is 1 at rest', 'once', () => {
      const [value] = filled(curve.at, 0);
      return Math.abs(value - 1) <= 1e-9 ? undefined : `it is ${value}`;
    }),
    tried('is above zero', extent, () =>
      first(xs, (x) => {
        const [value, slope] = filled(curve.at, x);
        return value > 0 && Number.isFinite(value) && Number.isFinite(slope) ? undefined : `it is ${value} at ${x} m`;
      }),
    ),
    tried('its slope is that of its value', extent, () =>
      first(xs, (x) => slopeFault((at) => filled(curve.at, at)[0], filled(curve.at, x)[1], x, step)),
    ),
    tried('gives the same answer twice', extent, () =>
      first(xs, (x) => {
        const [value] = filled(curve.at, x);
        return filled(curve.at, x)[0] === value ? undefined : `at ${x} m`;
      }),
    ),
  ];
}
