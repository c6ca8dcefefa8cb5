import type { LawResult } from '@airspring/core/laws';
import { exactSpring, type Spring } from './curve.js';
import { filled, first, POINTS, places, slopeFault, tried } from './trial.js';

/**
 * The laws of every spring, ours and a stranger's: no energy at rest, none below zero; the force is the slope of the energy, and its
 * slope that of the force; the mean force over a move, times the move, is what the energy changes by.
 *
 * @validity displacements up to 1.3 times the reach
 * @neglects whether the spring describes a real suspension
 * @returns one result for each law
 * @source own (definitions)
 * @example springLaws(stiffnessCurve({ reach: '10 mm', coefficients: [0, 1] })).every(({ holds }) => holds)
 */
export function springLaws(spring: Spring): readonly LawResult[] {
  const xs = places(spring.reach);
  const far = xs.at(-1)!;
  const extent = `${xs.length} displacements`;
  const { between } = exactSpring(spring);
  const most = Math.max(...xs.map((x) => spring.energy(x)), 1e-12 * far ** 2);
  const force = (x: number) => filled(spring.at, x)[0];
  return [
    tried('has a reach above zero', `${spring.reach} m`, () => (spring.reach > 0 ? undefined : `${spring.reach} m`)),
    tried('stores nothing at rest', 'once', () =>
      spring.energy(0) === 0 ? undefined : `it is ${spring.energy(0)} m²`,
    ),
    tried('stores no energy below zero', extent, () =>
      first(xs, (x) => (spring.energy(x) >= 0 ? undefined : `it is ${spring.energy(x)} m² at ${x} m`)),
    ),
    tried('pulls back', extent, () =>
      first(xs, (x) => (force(x) * x >= 0 ? undefined : `the force at ${x} m is ${force(x)} m`)),
    ),
    tried('its force is the slope of its energy', extent, () =>
      first(xs, (x) => slopeFault((at) => spring.energy(at), force(x), x, 1e-5 * far)),
    ),
    tried('its slope is that of its force', extent, () =>
      first(xs, (x) => slopeFault(force, filled(spring.at, x)[1], x, 1e-5 * far)),
    ),
    tried('over each move it takes in what its energy rises by', `${xs.length} moves`, () =>
      first(xs.slice(1), (x) => {
        const from = xs[(POINTS * 7 + Math.round(x / far) * 3) % POINTS]!;
        const [mean] = filled((to, out) => between(from, to, out), x);
        const rise = spring.energy(x) - spring.energy(from);
        return Math.abs(mean * (x - from) - rise) <= 1e-9 * most ? undefined : `from ${from} m to ${x} m`;
      }),
    ),
    tried('the slope of the mean force is that of the mean force', `${xs.length} moves`, () =>
      first(xs, (x) => {
        const from = -0.37 * x;
        const mean = (to: number) => filled((end, out) => between(from, end, out), to)[0];
        return slopeFault(mean, filled((to, out) => between(from, to, out), x)[1], x, 1e-5 * far);
      }),
    ),
  ];
}
