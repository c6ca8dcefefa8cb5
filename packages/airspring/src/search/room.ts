import type { Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';
import type { Alike } from './distinct-shapes.js';
import type { Shape } from './shapes.js';

/** Room is looked up by inner volume in steps of 3 %, rounded down. */
const RATIO = 1.03;
const STEPS = 320;
const STEP = Math.log(RATIO);
const FROM = 1e-3;
const VOLUMES = Float64Array.from({ length: STEPS + 1 }, (_, step) => FROM * RATIO ** step);

/** How much room each shape of one inner volume leaves in one geometric cell: an upper bound until it is asked for. */
export interface Room {
  /** At least the room of every shape. */
  most: number;
  readonly atMost: Float32Array;
  /** Which of them have been asked for; left out until one is. */
  known?: Uint8Array;
}

/** What searches have found out about room in the boxes of a variant. */
export interface Rooms {
  /** By cell and step of volume; those that no search has asked for are left out. */
  readonly cells: (Room | undefined)[][];
  /** Inner edges of all shapes, by span and step of volume; the first is 0 where a shape does not stand. */
  readonly edges: Map<number, (Float64Array | undefined)[]>;
  /** The shapes that are of use, by step of volume. */
  readonly alike: Map<number, readonly Alike[]>;
}

export const noRooms = (): Rooms => ({ cells: [], edges: new Map(), alike: new Map() });

/**
 * Looks up how much room the shapes of a survey leave. Most boxes need more than any shape of their volume leaves, and one
 * comparison says so. `edgesFor` writes the inner edges of a shape into `inner`.
 */
export function compileRoom(
  { cells, edges }: Rooms,
  { room, roomAtMost, span }: Variant,
  shapes: readonly Shape[],
  edgesFor: (shape: Shape, volume: number) => boolean,
  inner: Float64Array,
) {
  /** Bits of the edges that a shape without bounds has beyond them in any box of a step. */
  const beyondAt = (shape: Shape, step: number): number => {
    if (!edgesFor(shape, VOLUMES[step + 1]!)) return 0;
    let bits = 0;
    for (let axis = 0; axis < 3; axis++) if (inner[axis]! > shape.full[axis]!) bits |= 1 << axis;
    return bits;
  };

  function edgesAt(step: number): Float64Array {
    const all = new Float64Array(3 * shapes.length);
    let beyond = 0;
    for (let s = 0; s < shapes.length; s++) {
      const shape = shapes[s] as Shape;
      if (shape.free && shape.held === 0) beyond = beyondAt(shape, step);
      // Where no edge exceeds its bound, the shape that holds it equals the one that does not.
      const same = shape.free && shape.held > 0 && (shape.held & beyond) === 0;
      if (!same && edgesFor(shape, VOLUMES[step]!)) all.set(inner, 3 * s);
    }
    return all;
  }

  function knownEdges(step: number, point: Point): Float64Array {
    const across = span === undefined ? 0 : point[point.length - 1]!;
    let steps = edges.get(across);
    if (steps === undefined) {
      steps = new Array(STEPS);
      edges.set(across, steps);
    }
    steps[step] ??= edgesAt(step);
    return steps[step];
  }

  function bounded(step: number, point: Point): Room {
    const atMost = new Float32Array(shapes.length);
    const sizes = knownEdges(step, point);
    let most = -1;
    for (let s = 0; s < atMost.length; s++) {
      const width = sizes[3 * s]!;
      const bound = width > 0 ? (roomAtMost?.(width, sizes[3 * s + 1]!, sizes[3 * s + 2]!, point) ?? Infinity) : -1;
      atMost[s] = bound;
      if (bound > most) most = bound;
    }
    return { most, atMost };
  }

  const stepOf = (volume: number): number => Math.floor(Math.log(volume / FROM) / STEP);

  /** The room of a cell in boxes of an inner volume; `undefined` where the volume is too small for any box. */
  function at(cell: number, volume: number, point: Point): Room | undefined {
    const step = stepOf(volume);
    if (step < 0 || step >= STEPS) return undefined;
    cells[cell] ??= new Array(STEPS);
    const steps = cells[cell];
    steps[step] ??= bounded(step, point);
    return steps[step];
  }

  /** Works out the room of one shape, if no search has done so. */
  function leaves(of: Room, s: number, volume: number, point: Point): number {
    of.known ??= new Uint8Array(shapes.length);
    if (of.known[s] === 0) {
      const sizes = knownEdges(stepOf(volume), point);
      const width = sizes[3 * s]!;
      of.atMost[s] = width > 0 ? room(width, sizes[3 * s + 1]!, sizes[3 * s + 2]!, point) : -1;
      of.known[s] = 1;
      // The bound is lowered to what is known by now.
      of.most = of.atMost.reduce((most, one) => Math.max(most, one), -1);
    }
    return of.atMost[s]!;
  }

  return { at, leaves };
}
