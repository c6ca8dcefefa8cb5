import { type Fault, InputError } from '../fault/index.js';
import {
  type Field,
  type Length,
  type LengthInput,
  nested,
  positive,
  readFields,
  si,
  type Volume,
} from '../quantity/index.js';

/** Axes: width x from the left, height y from the bottom, depth z from the front. */
export const axisNames = ['width', 'height', 'depth'] as const;

/** Faces, in the order of every list by face. Face f is perpendicular to axis f >> 1, at its far end when f is odd. */
export const faces = ['left', 'right', 'bottom', 'top', 'front', 'back'] as const;
export type Face = (typeof faces)[number];

/** Edges of a cuboid in the order of the axes, m. */
export type Edges = readonly [width: number, height: number, depth: number];

/** Edges of a cuboid. */
export interface Size {
  readonly width: Length;
  readonly height: Length;
  readonly depth: Length;
}
export interface SizeInput {
  readonly width: LengthInput;
  readonly height: LengthInput;
  readonly depth: LengthInput;
}

/** One thickness for all panels, or one for each face. */
export type ThicknessInput = LengthInput | Readonly<Record<Face, LengthInput>>;

export const sizeShape = { width: positive('length'), height: positive('length'), depth: positive('length') };

const length = positive('length');
const byFace = nested({ left: length, right: length, bottom: length, top: length, front: length, back: length });

/** Reads a thickness into a list by face. */
export const thicknessField: Field<readonly Length[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'object') {
      const each = byFace.read(faults, value, path);
      return each && faces.map((face) => each[face]);
    }
    const all = length.read(faults, value, path);
    return all === undefined ? undefined : faces.map(() => all);
  },
};

export const sizeList = ({ width, height, depth }: Size): [Length, Length, Length] => [width, height, depth];

export const sizeRecord = ([width, height, depth]: Edges): Size => ({
  width: si('length', width),
  height: si('length', height),
  depth: si('length', depth),
});

/** The thickness of both panels across an axis. */
const wallsOn = (thickness: readonly number[], axis: number): number => thickness[2 * axis]! + thickness[2 * axis + 1]!;

/** The same for each of the three axes. */
export const wallsByAxis = (thickness: readonly number[]): [number, number, number] => [
  wallsOn(thickness, 0),
  wallsOn(thickness, 1),
  wallsOn(thickness, 2),
];

/** Inner edges, or faults where the panels leave no space. */
export function innerEdges(outer: Size, thickness: readonly number[], path: string): [number, number, number] {
  const edges = sizeList(outer);
  const faults: Fault[] = [];
  const inner = edges.map((edge, axis) => {
    const walls = wallsOn(thickness, axis);
    if (edge <= walls) {
      const expected = `more than the two panels together, ${walls} m`;
      const remedy = 'Use thinner panels or a larger box.';
      faults.push({ code: 'inconsistent', path: `${path}.${axisNames[axis]}`, got: edge, expected, remedy });
    }
    return edge - walls;
  });
  if (faults.length > 0) throw new InputError(faults);
  return inner as [number, number, number];
}

/** Volume of a cuboid. */
export const cuboidVolume = (edges: Edges): Volume => si('volume', edges[0] * edges[1] * edges[2]);

const innerShape = { outer: nested(sizeShape), thickness: thicknessField };
const outerShape = { inner: nested(sizeShape), thickness: thicknessField };

/**
 * Inner size of a box from its outer size and its panels.
 *
 * $$ W_i = W_o - t_{left} - t_{right} $$
 *
 * Height and depth follow in the same way.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $W_o$ | `outer` | m | outer edge |
 * | $t$ | `thickness` | m | panel thickness, one for all or one by face |
 *
 * @validity exact for flat panels
 * @neglects grooves, glue, rounded edges, lining
 * @returns width, height, depth in m
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent` when the panels leave nothing
 * @source own geometry of a cuboid
 * @example innerSize({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm' }).width // 0.264
 */
export function innerSize(input: { readonly outer: SizeInput; readonly thickness: ThicknessInput }): Size {
  const { outer, thickness } = readFields('box', input, innerShape);
  return sizeRecord(innerEdges(outer, thickness, 'box.outer'));
}

/**
 * Outer size of a box from its inner size and its panels: the inverse of {@link innerSize}.
 *
 * $$ W_o = W_i + t_{left} + t_{right} $$
 *
 * Height and depth follow in the same way.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $W_i$ | `inner` | m | inner edge |
 * | $t$ | `thickness` | m | panel thickness, one for all or one by face |
 *
 * @validity exact for flat panels
 * @neglects grooves, glue, rounded edges, lining
 * @returns width, height, depth in m
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry of a cuboid
 * @example outerSize({ inner: { width: '264 mm', height: '364 mm', depth: '314 mm' }, thickness: '18 mm' }).width // 0.3
 */
export function outerSize(input: { readonly inner: SizeInput; readonly thickness: ThicknessInput }): Size {
  const { inner, thickness } = readFields('box', input, outerShape);
  const [x, y, z] = wallsByAxis(thickness);
  return sizeRecord([inner.width + x, inner.height + y, inner.depth + z]);
}
