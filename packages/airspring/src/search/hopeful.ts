import type { Grid } from './grid.js';

/** Surveys of fewer sounds are not worth a look before. */
const MANY = 20_000;
/** How many values of each axis are passed over in a look before a survey, and how far around a hopeful sound it is surveyed. */
const APART = 2;

/** Every second place, and the last one. */
const placesOf = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => i).filter((i) => i % APART === 0 || i === count - 1);

/**
 * Marks the sounds of a fine grid that are worth looking at: those beside one of every second volume and value of each axis that
 * `mayHope`, which is asked for the places of a volume and of the acoustic values. `undefined` where all of them are looked at.
 */
export function hopefulSounds(
  { volumes, acoustic, counts }: Grid,
  mayHope: (volume: number, sound: number) => boolean,
): Uint8Array | undefined {
  if (counts === undefined || volumes.length * acoustic.length < MANY) return undefined;
  const sizes = [volumes.length, ...counts];
  const strides = sizes.map((_, axis) => sizes.slice(axis + 1).reduce((product, size) => product * size, 1));
  const marks = new Uint8Array(volumes.length * acoustic.length);
  function mark(at: readonly number[], axis: number, from: number): void {
    if (axis === sizes.length) marks[from] = 1;
    else
      for (let i = Math.max(0, at[axis]! - 1); i <= Math.min(sizes[axis]! - 1, at[axis]! + 1); i++)
        mark(at, axis + 1, from + i * strides[axis]!);
  }
  function look(at: readonly number[]): void {
    const axis = at.length;
    if (axis < sizes.length) for (const i of placesOf(sizes[axis]!)) look([...at, i]);
    else {
      const place = at.reduce((sum, i, k) => sum + i * strides[k]!, 0);
      if (mayHope(at[0]!, place - at[0]! * strides[0]!)) mark(at, 0, 0);
    }
  }
  look([]);
  return marks;
}
