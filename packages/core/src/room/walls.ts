import { type Fault, refuse } from '../fault/index.js';
import { type LengthInput, notNegative, optional, readFieldsInto } from '../quantity/index.js';
import { type Reflection, reflectionField, rigid } from './reflection.js';

/** A flat wall near a source. */
export interface WallInput {
  /** From the source to the wall; 0 for a source that touches it. */
  readonly distance: LengthInput;
  /** Default: a rigid wall. */
  readonly reflection?: Reflection | undefined;
}

/** A wall in SI units. */
export interface Wall {
  readonly distance: number;
  readonly reflection: Reflection;
}

const wallShape = { distance: notNegative('length'), reflection: optional(reflectionField) };

/** Frequencies at which a reflection factor is tried where the sweep is not known yet, Hz. */
const TRIED = [10, 50, 250];

/** The first frequency at which a reflection factor is no number from −1 to 1. */
function unlessReflects(path: string, reflection: Reflection, frequencies: ArrayLike<number>): Fault[] {
  for (let i = 0; i < frequencies.length; i++) {
    const got = reflection(frequencies[i]!);
    if (Math.abs(got) <= 1) continue;
    const code = Number.isFinite(got) ? 'out-of-range' : 'not-finite';
    const expected = `a reflection factor of −1 to 1 at ${frequencies[i]} Hz`;
    return [{ code, path, got, expected, remedy: 'Correct the function.' }];
  }
  return [];
}

/** Up to three walls at right angles to each other. */
export function readWalls(walls: readonly WallInput[], frequencies: ArrayLike<number> = TRIED): readonly Wall[] {
  const faults: Fault[] = [];
  if (!Array.isArray(walls) || walls.length > 3) {
    const code = Array.isArray(walls) ? 'out-of-range' : 'empty';
    const remedy = 'Give the walls that are nearest: a floor, a wall behind, a wall beside.';
    refuse([{ code, path: 'walls', got: walls, expected: 'a list of at most three walls', remedy }]);
  }
  const read = walls.map((wall, i) => readFieldsInto(faults, `walls[${i}]`, wall, wallShape));
  refuse(faults);
  read.forEach((wall, i) => {
    faults.push(...unlessReflects(`walls[${i}].reflection`, wall!.reflection ?? rigid, frequencies));
  });
  refuse(faults);
  return read.map((wall) => ({ distance: wall!.distance, reflection: wall!.reflection ?? rigid }));
}

/** The images of a source in walls at right angles: one for each set of walls, the source itself first, written in binary. */
export const imagesOf = (walls: readonly Wall[]): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** walls.length }, (_, image) => [...walls.keys()].filter((wall) => (image >> wall) & 1));

/** Fills `factors` with the strength of each image: the product of the reflection factors of its walls. */
export function imageStrengths(walls: readonly Wall[], frequency: number, factors: Float64Array): void {
  factors[0] = 1;
  for (let wall = 0; wall < walls.length; wall++) {
    const { reflection } = walls[wall]!;
    const reflected = reflection(frequency);
    if (!(Math.abs(reflected) <= 1)) refuse(unlessReflects(`walls[${wall}].reflection`, reflection, [frequency]));
    const before = 1 << wall;
    for (let image = 0; image < before; image++) factors[before + image] = factors[image]! * reflected;
  }
}
