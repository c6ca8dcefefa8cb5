import type { DrivenSpec } from '../enclosure/index.js';
import type { NewtonOptions } from '../numeric/index.js';
import { compileNewton } from '../numeric/newton.js';
import { normalisedShape, type TargetPolynomial } from './alignment.js';
import type { ShapedBox } from './shaped-box.js';
import { fill, type Sought, trialOf } from './unknowns.js';

/** A box whose response has the shape of a target: the numbers that were sought, and the frequency of the target, Hz. */
export interface ShapeRoot<Spec> {
  readonly spec: Spec;
  /** Logarithms of the numbers that were sought, then the parameter of the target if that was sought. */
  readonly place: Float64Array;
  readonly frequency: number;
}

/** A number that is sought stays within this factor of its first start. */
const FARTHEST = Math.log(1e4);
/** Two solutions are one if none of their numbers differs by more. */
const SAME = 1e-6;

/** Walks to boxes whose response has the shape of a target. `fixed` is its parameter; without it, that is sought as the last unknown. */
export interface WalkToShape<Spec> {
  /** Where a walk from a start ends, if the response has the shape there. */
  readonly place: (
    start: ArrayLike<number>,
    fixed: number | undefined,
    options?: NewtonOptions,
  ) => Float64Array | undefined;
  /** The box at a place where a walk ended. */
  readonly rootAt: (place: Float64Array, fixed: number | undefined) => ShapeRoot<Spec>;
}

/**
 * The equations that the response of a box has the shape of a target, coefficient by coefficient of the normalised
 * denominators. They are as many as the order less one:
 *
 * $$ \ln\frac{e_k(V, f_b, \ldots)}{t_k(p)} = 0, \quad k = 1 \ldots n-1 $$
 *
 * The numbers that are sought stand as logarithms.
 */
export function walkToShape<Spec extends DrivenSpec>(
  target: TargetPolynomial,
  box: ShapedBox,
  spec: Spec,
  sought: readonly Sought<Spec>[],
): WalkToShape<Spec> {
  const { order, shapeOf, numerator } = box;
  const [got, wanted] = [new Float64Array(order - 1), new Float64Array(order - 1)];
  const count = sought.length;
  const middles = sought.map(({ starts }) => Math.log(starts[0]!));
  const trial = trialOf(spec);
  let fixed: number | undefined;
  let scale = 0;
  const specAt = (x: ArrayLike<number>, one: Spec): Spec => fill(sought, one, (i) => Math.exp(x[i]!));
  /** Reads both shapes at a place. Returns the frequency of the box. */
  const read = (x: ArrayLike<number>, one: Spec): number => {
    const frequency = shapeOf(one, got);
    if (fixed === undefined || numerator)
      scale = normalisedShape(target(fixed ?? x[count]!, numerator?.(frequency)), order, wanted);
    return frequency;
  };
  const residual = (x: Float64Array, out: Float64Array): void => {
    read(x, specAt(x, trial));
    for (let k = 0; k < out.length; k++) out[k] = Math.log(got[k]! / wanted[k]!);
  };
  const newton = compileNewton(residual, order - 1);
  const isFar = (place: ArrayLike<number>): boolean =>
    middles.some((middle, i) => !(Math.abs(place[i]! - middle) <= FARTHEST));
  const fix = (parameter: number | undefined): void => {
    fixed = parameter;
    if (fixed !== undefined && !numerator) scale = normalisedShape(target(fixed), order, wanted);
  };
  return {
    place: (start, parameter, options) => {
      // A straight line through two places that lie close together may start anywhere, beyond the largest number as well.
      if (isFar(start)) return undefined;
      fix(parameter);
      const { ok, x } = newton(start, options);
      return ok && !isFar(x) ? x : undefined;
    },
    rootAt: (place, parameter) => {
      fix(parameter);
      const found = specAt(place, trialOf(spec));
      const frequency = read(place, found);
      return { spec: found, place, frequency: frequency / scale };
    },
  };
}

/** All starts: each start of one number with each of the others, the first of all first. */
export function* startsOf(
  sought: readonly Pick<Sought<never>, 'starts'>[],
  begun: readonly number[] = [],
): Generator<readonly number[]> {
  const next = sought[begun.length];
  if (next === undefined) yield begun;
  else for (const start of next.starts) yield* startsOf(sought, [...begun, Math.log(start)]);
}

/** Every root that is reached from a start, each once. */
export function everyRoot<Spec>(
  walk: WalkToShape<Spec>,
  starts: Iterable<ArrayLike<number>>,
  fixed: number | undefined,
  options: NewtonOptions = { mostSteps: 20 },
): readonly ShapeRoot<Spec>[] {
  const same = Math.max(SAME, 1e3 * (options.tolerance ?? 0));
  const places: Float64Array[] = [];
  for (const start of starts) {
    const place = walk.place(start, fixed, options);
    if (place === undefined) continue;
    const isKnown = places.some((known) => known.every((value, i) => Math.abs(value - place[i]!) < same));
    if (!isKnown) places.push(place);
  }
  return places.map((place) => walk.rootAt(place, fixed));
}
