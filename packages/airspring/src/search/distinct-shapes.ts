import { edgesOf, type Shape } from './shapes.js';

/** Volumes are told apart in steps of 3 %, rounded down. */
const STEP = Math.log(1.03);

/**
 * One bit for the bounds at which the inner edges of a shape stand, 0 where two edges or more stand at none. Shapes of one volume
 * with the same bit have the same edges, and most shapes of a large box share theirs with another. An edge that is `given` stands
 * at a bound.
 */
export function boundsMet(
  { most }: Shape,
  least: readonly number[],
  inner: Float64Array,
  given: number | undefined,
): number {
  let place = 0;
  let open = 0;
  for (let axis = 0; axis < 3; axis++) {
    const size = inner[axis]!;
    const bound = axis === given || size === most[axis] ? 1 : size === least[axis] ? 2 : 0;
    if (bound === 0) open++;
    place = 3 * place + bound;
  }
  return open > 1 ? 0 : 1 << place;
}

/**
 * The places of the shapes that may have edges of their own at an inner volume. Edges only grow with the volume, so that a shape
 * which stands at the same bounds at both ends of a step stands at them within it, and only the first such shape is of use.
 */
export function compileDistinct(
  shapes: readonly Shape[],
  least: readonly [number, number, number],
): (volume: number) => readonly number[] {
  const steps = new Map<number, readonly number[]>();
  const inner = new Float64Array(3);
  const boundsAt = (shape: Shape, volume: number): number =>
    edgesOf(shape, least, volume, inner) ? boundsMet(shape, least, inner, undefined) : 0;
  function distinctIn(step: number): readonly number[] {
    let tried = 0;
    return [...shapes.keys()].filter((s) => {
      const shape = shapes[s] as Shape;
      const bit = boundsAt(shape, Math.exp(step * STEP));
      if (bit === 0 || bit !== boundsAt(shape, Math.exp((step + 1) * STEP))) return true;
      if ((tried & bit) !== 0) return false;
      tried |= bit;
      return true;
    });
  }
  return (volume) => {
    const step = Math.floor(Math.log(volume) / STEP);
    let places = steps.get(step);
    if (places === undefined) {
      places = distinctIn(step);
      steps.set(step, places);
    }
    return places;
  };
}
