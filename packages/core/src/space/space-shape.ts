import type { Impossible } from '../fault/index.js';
import type { Edges, Face } from './cuboid.js';
import type { Interior } from './interior.js';

/** A panel of a box that is no cuboid, as it is cut. */
export interface ShapedPanel {
  readonly name: string;
  /** The face of the cuboid around the box that it lies on, and where its edges begin there, from those of the cuboid, across and up, m. */
  readonly face?: Face;
  readonly from?: readonly [number, number];
  /** Its outer surface from its own edges, m. */
  readonly outline: readonly (readonly [number, number])[];
  /** The corners of its inner surface, in the same order and from the same edges: below zero where it reaches farther than the outer one. */
  readonly inner: readonly (readonly [number, number])[];
  /** The least rectangle of board that it is sawn from, across and up, m: it holds both surfaces. */
  readonly blank: readonly [number, number];
  /** For each side of `outline`, the panel that it meets; '' where that is not one alone. */
  readonly meets: readonly string[];
  readonly thickness: number;
  /** For each side of `outline`, the angle between the outer surface and the cut, rad: π/2 is a square cut, more makes the inner surface the wider one. */
  readonly angles: readonly number[];
  /** It is bent, and turns by this angle from one edge to the other, rad; which of its surfaces is hollow. */
  readonly bent?: { readonly turn: number; readonly hollow: 'inner' | 'outer' | 'both' };
  /** A hole through which the air goes on into the next layer of a stack, from the edges of the panel, m. */
  readonly opening?: readonly (readonly [number, number])[];
  /** Volume of its material before holes for parts are cut, m³. */
  readonly volume: number;
}

/** A box by its outside: sections that stand on each other along an axis, m. */
export interface Prisms {
  /**
   * Along the width a section is drawn with depth and height, along the height with width and depth, along the depth with width and height; all
   * from the left, bottom and front outer edges, counter-clockwise.
   */
  readonly along: 'width' | 'height' | 'depth';
  readonly layers: readonly {
    readonly outline: readonly (readonly [number, number])[];
    /** Where it begins and ends on the axis. */
    readonly from: number;
    readonly to: number;
    /** Runs of its sides of which each is one bent panel: the first side, and how many follow it. */
    readonly bent?: readonly { readonly first: number; readonly count: number }[];
  }[];
}

/**
 * A shape that is no cuboid, in a space of given edges. Two outer edges of the cuboid around it are those of the space; the third is open, at
 * most that of the space. Everything else follows from the open edge.
 */
export interface SpaceShape {
  /** What it is, in a sentence: words, and lengths in metres. */
  readonly called: readonly (string | readonly [metres: number, meaning: 'length'])[];
  readonly open: 'width' | 'height' | 'depth';
  /** The faces of the cuboid on which parts may stand. */
  readonly faces: readonly Face[];
  /** The volume within its panels, for that within the panels of the cuboid, and the inverse, m³. Both rise. */
  readonly airIn: (cuboid: number) => number;
  readonly cuboidFor: (air: number) => number;
  /** The volume that it takes up, for that of the cuboid, m³. It rises. */
  readonly outerIn: (cuboid: number) => number;
  /** For the outer edges of the cuboid. */
  readonly interior: (outer: Edges) => Interior;
  readonly panels: (outer: Edges) => readonly ShapedPanel[];
  /** Its outside, of which pictures are made; `undefined`, or left out, where there are none. */
  readonly prisms?: (outer: Edges) => Prisms | undefined;
}

/** A field of a shape in a brief. */
export type ShapeField = { readonly what: string; readonly optional?: true } & (
  | { readonly takes: 'length'; readonly example: string }
  /** A figure by its corners, each of two lengths: across and up. */
  | { readonly takes: 'corners'; readonly example: readonly (readonly [string, string])[] }
  | { readonly takes: 'choice'; readonly of: readonly string[] }
  /** At least two records of the same fields. */
  | { readonly takes: 'records'; readonly of: Readonly<Record<string, ShapeField>> }
);

/** A shape that a brief may ask for. */
export interface ShapeChoice {
  /** The key that asks for it: `space: { shape: { wedge: { … } } }`. */
  readonly name: string;
  /** What it is, in words. */
  readonly what: string;
  readonly fields: Readonly<Record<string, ShapeField>>;
  /**
   * The shape of the fields, read into SI units, in a space; or why its panels leave nothing. It refuses fields that contradict each other or
   * the space by an InputError whose paths end with the name of the field, after a point: `wedge.top`.
   */
  readonly shape: (
    fields: Readonly<Record<string, unknown>>,
    space: { readonly outer: Edges; readonly panelThickness: number },
  ) => SpaceShape | Impossible;
}
