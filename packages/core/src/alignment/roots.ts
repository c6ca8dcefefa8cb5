import type { DrivenSpec } from '../enclosure/index.js';
import { type NewtonOptions, newtonRoot } from '../numeric/index.js';
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

/** A walk to a box whose response has the shape of a target. */
export type Walk<Spec> = (start: ArrayLike<number>, options?: NewtonOptions) => ShapeRoot<Spec> | undefined;

/**
 * The equations that the response of a box has the shape of a target, coefficient by coefficient of the normalised
 * denominators. They are as many as the order less one:
 *
 * $$ \ln\frac{e_k(V, f_b, \ldots)}{t_k(p)} = 0, \quad k = 1 \ldots n-1 $$
 *
 * The numbers that are sought stand as logarithms. `fixed` is the parameter of the target; without it the parameter is sought
 * as well, as the last unknown.
 */
export function walkToShape<Spec extends DrivenSpec>(
  target: TargetPolynomial,
  box: ShapedBox,
  spec: Spec,
  sought: readonly Sought<Spec>[],
  fixed: number | undefined,
): Walk<Spec> {
  const { order, shapeOf, numerator } = box;
  const [got, wanted] = [new Float64Array(order - 1), new Float64Array(order - 1)];
  const count = sought.length;
  const middles = sought.map(({ starts }) => Math.log(starts[0] as number));
  let scale = fixed === undefined || numerator ? 0 : normalisedShape(target(fixed), order, wanted);
  const specAt = (x: ArrayLike<number>, trial: Spec): Spec => fill(sought, trial, (i) => Math.exp(x[i]!));
  const trial = trialOf(spec);
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
  const isFar = (place: ArrayLike<number>): boolean =>
    middles.some((middle, i) => !(Math.abs(place[i]! - middle) <= FARTHEST));
  return (start, options) => {
    // A straight line through two places that lie close together may start anywhere, beyond the largest number as well.
    if (isFar(start)) return undefined;
    const { ok, x } = newtonRoot(residual, start, options);
    if (!ok || isFar(x)) return undefined;
    const found = specAt(x, trialOf(spec));
    const frequency = read(x, found);
    return { spec: found, place: x, frequency: frequency / scale };
  };
}

/** All starts: each start of one number with each of the others, the first of all first. */
export const startsOf = (sought: readonly Pick<Sought<never>, 'starts'>[]): number[][] =>
  sought
    .map(({ starts }) => starts.map(Math.log))
    .reduce<number[][]>((done, list) => done.flatMap((one) => list.map((value) => [...one, value])), [[]]);

/** Every root that is reached from a start, each once. */
export function everyRoot<Spec>(
  walk: Walk<Spec>,
  starts: readonly ArrayLike<number>[],
  options: NewtonOptions = { mostSteps: 20 },
): ShapeRoot<Spec>[] {
  const same = Math.max(SAME, 1e3 * (options.tolerance ?? 0));
  const roots: ShapeRoot<Spec>[] = [];
  for (const start of starts) {
    const root = walk(start, options);
    if (root === undefined) continue;
    const isKnown = roots.some(({ place }) => place.every((value, i) => Math.abs(value - root.place[i]!) < same));
    if (!isKnown) roots.push(root);
  }
  return roots;
}
