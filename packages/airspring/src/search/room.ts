import type { Point, Variant } from '../kind/box-kind.js';
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
  readonly known: Uint8Array;
}

/** The rooms of all cells and steps of volume; those that no search has asked for are left out. */
export type Rooms = (Room | undefined)[];

/**
 * Looks up how much room the shapes of a survey leave. Most boxes need more than any shape of their volume leaves, and one
 * comparison says so. `edgesFor` writes the inner edges of a shape into `inner`.
 */
export function compileRoom(
  rooms: Rooms,
  { room, roomAtMost }: Variant,
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

  function bounded(step: number, point: Point): Room {
    const atMost = new Float32Array(shapes.length);
    let most = -1;
    let beyond = 0;
    shapes.forEach((shape, s) => {
      if (shape.free && shape.held === 0) beyond = beyondAt(shape, step);
      // Where no edge exceeds its bound, the shape that holds it equals the one that does not.
      const same = shape.free && shape.held > 0 && (shape.held & beyond) === 0;
      const stands = !same && edgesFor(shape, VOLUMES[step]!);
      atMost[s] = stands ? (roomAtMost?.(inner[0]!, inner[1]!, inner[2]!, point) ?? Infinity) : -1;
      most = Math.max(most, atMost[s]!);
    });
    return { most, atMost, known: new Uint8Array(shapes.length) };
  }

  const stepOf = (volume: number): number => Math.floor(Math.log(volume / FROM) / STEP);

  /** The room of a cell in boxes of an inner volume; `undefined` where the volume is too small for any box. */
  function at(cell: number, volume: number, point: Point): Room | undefined {
    const step = stepOf(volume);
    if (step < 0 || step >= STEPS) return undefined;
    const place = cell * STEPS + step;
    rooms[place] ??= bounded(step, point);
    return rooms[place];
  }

  /** Works out the room of one shape, if no search has done so. */
  function leaves(of: Room, s: number, volume: number, point: Point): number {
    if (of.known[s] === 0) {
      const stands = edgesFor(shapes[s] as Shape, VOLUMES[stepOf(volume)]!);
      of.atMost[s] = stands ? room(inner[0]!, inner[1]!, inner[2]!, point) : -1;
      of.known[s] = 1;
    }
    return of.atMost[s]!;
  }

  /** Lowers the bound to what is known by now. */
  function settle(of: Room): void {
    let most = -1;
    for (let s = 0; s < of.atMost.length; s++) if (of.atMost[s]! > most) most = of.atMost[s]!;
    of.most = most;
  }

  return { at, leaves, settle };
}
