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

/** Shapes that stand next to each other in a list, and are alike. */
export interface Alike {
  /** The places of those that may have edges of their own. */
  readonly places: readonly number[];
  /** Inner edges of each of them, three by three, below which it does not go. */
  readonly smallest: readonly number[];
  /** Inner edges that none of them exceeds. */
  readonly greatest: readonly [width: number, height: number, depth: number];
}

/**
 * The shapes that are of use at an inner volume: those of one proportion together, or all of them where each edge has its bound.
 * Edges only grow with the volume, so that a shape which stands at the same bounds at both ends of a step of volume stands at them
 * within it, and only the first such shape is of use. `steps` keeps them for another search of the same shapes.
 */
export function compileDistinct(
  shapes: readonly Shape[],
  least: readonly [number, number, number],
  steps = new Map<number, readonly Alike[]>(),
): (volume: number) => readonly Alike[] {
  const inner = new Float64Array(3);
  const boundsAt = (shape: Shape, volume: number): number | undefined =>
    edgesOf(shape, least, volume, inner) ? boundsMet(shape, least, inner, undefined) : undefined;
  /** Whether all edges at their bounds hold less than a volume. */
  const isTooSmall = ({ most }: Shape, volume: number): boolean =>
    most.reduce((product, edge, axis) => product * Math.max(edge, least[axis]!), 1 + 1e-6) < volume;
  function distinctIn(step: number): readonly Alike[] {
    let tried = 0;
    let before: Shape | undefined;
    let places: number[] = [];
    let smallest: number[] = [];
    let greatest: [number, number, number] = [0, 0, 0];
    const groups: Alike[] = [];
    const [from, to] = [Math.exp(step * STEP), Math.exp((step + 1) * STEP)];
    shapes.forEach((shape, s) => {
      const bit = boundsAt(shape, from);
      if (bit === undefined && isTooSmall(shape, from)) return;
      // A shape that does not stand yet may begin with its least edges.
      const [width, height, depth] = bit === undefined ? least : inner;
      const above = boundsAt(shape, to);
      if (bit !== undefined && bit !== 0 && bit === above) {
        if ((tried & bit) !== 0) return;
        tried |= bit;
      }
      if (before === undefined || (shape.free && shape.proportion !== before.proportion)) {
        places = [];
        smallest = [];
        greatest = [0, 0, 0];
        groups.push({ places, smallest, greatest });
        before = shape;
      }
      places.push(s);
      smallest.push(width!, height!, depth!);
      for (let axis = 0; axis < 3; axis++) {
        const most = above === undefined ? Math.max(shape.most[axis]!, least[axis]!) : inner[axis]!;
        greatest[axis] = Math.max(greatest[axis]!, most);
      }
    });
    return groups;
  }
  return (volume) => {
    const step = Math.floor(Math.log(volume) / STEP);
    let groups = steps.get(step);
    if (groups === undefined) {
      groups = distinctIn(step);
      steps.set(step, groups);
    }
    return groups;
  };
}
