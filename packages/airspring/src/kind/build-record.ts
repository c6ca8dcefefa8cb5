import type { Face } from '@airspring/core/space';
import type { FlareForm } from './flare-form.js';
import type { Meaning } from './phrase.js';

export type Hole = {
  /** What it is for: 'driver', 'vent', 'radiator'. */
  readonly what: string;
  readonly face: Face;
  /** The board inside the box that the hole is in, and that faces the same way; or a panel that covers a part of its face. Default: the panel of the face. */
  readonly board?: {
    readonly name: string;
    readonly size: readonly [across: number, up: number];
    /** Where its edges begin, from the outer edges and the outer surface of the face, m. */
    readonly from: readonly [across: number, up: number, inwards: number];
  };
  /** Centre on the outer surface, or on the side of the board that faces so: from the left (or front) edge, and from the lower (or front) edge, m. */
  readonly across: number;
  readonly up: number;
  /** The edges that `across` and `up` are counted from. */
  readonly from: readonly [string, string];
} & (
  | { readonly form: 'circle'; readonly diameter: number }
  /** Its sides in the directions of `across` and `up`, m. */
  | { readonly form: 'rectangle'; readonly sides: readonly [across: number, up: number] }
);

/** What the board is called that a hole is in. */
export const boardOf = ({ board, face }: Hole): string => board?.name ?? face;

/** Equal boards to cut. */
export interface Panel {
  readonly name: string;
  readonly count: number;
  /** Of the least rectangle of board that it is sawn from, m. */
  readonly length: number;
  readonly width: number;
  /** Of its outer and its inner surface, in the same directions, where one of them is smaller than that rectangle, m. */
  readonly surfaces?: {
    readonly outer: readonly [length: number, width: number];
    readonly inner: readonly [length: number, width: number];
  };
  /** Left out where they are cut from the same board as the box, m. */
  readonly thickness?: number;
  /** The corners of its outer surface, where that is no rectangle, m. */
  readonly outline?: readonly (readonly [number, number])[];
  /** The corners of a hole in it that leads on to the next layer of a stack, from the same edges, m. */
  readonly opening?: readonly (readonly [number, number])[];
  /**
   * Where not all cuts are square: for each side of its outer surface the angle between that surface and the cut, rad. The sides of a
   * rectangle follow each other from the lower one on, counter-clockwise.
   */
  readonly angles?: readonly number[];
  /** Beside the angles: for each of these sides, the panel that it meets; '' where that is not one alone. */
  readonly meets?: readonly string[];
  /** It is bent, and turns by this angle from one edge to the other, rad; which of its surfaces is hollow. */
  readonly bent?: { readonly turn: number; readonly hollow: 'inner' | 'outer' | 'both' };
}

export interface DesignVent {
  readonly count: number;
  readonly diameter: number;
  readonly outerDiameter: number;
  readonly flangeDiameter: number;
  /**
   * How much each end widens, on each side: the radius of its rounding, part of the length, or of the form that is given beside it.
   * Left out where both ends are sharp.
   */
  readonly flare?: {
    readonly inner: number;
    readonly outer: number;
    readonly innerForm?: FlareForm;
    readonly outerForm?: FlareForm;
  };
  /** Along the centre line, from the outer surface of the panel to the inner end. */
  readonly length: number;
  readonly fb: number;
  readonly face: Face;
  readonly bend?: {
    readonly radius: number;
    /** Straight part from the outer surface, arc, straight part after it. */
    readonly firstLeg: number;
    readonly arc: number;
    readonly secondLeg: number;
    readonly towards: Face;
  };
  /** Lengths of the printed pieces of one vent, along the centre line. */
  readonly pieces: readonly number[];
  /** The usual printer that these are for, where the brief states none. */
  readonly printer?: { readonly height: number; readonly width: number };
  /** Free air kept in front of the inner end. */
  readonly clearance: number;
  /** The additional length for which there is room. */
  readonly spare: number;
  /** Of a box with vents in two chambers: whose vent it is, and the air of that chamber, m³. */
  readonly chamber?: 'front' | 'rear';
  readonly netVolume?: number;
}

/** A board where it stands, by its cuboid from the left, bottom and front outer edges, m. */
export interface PlacedBoard {
  readonly name: string;
  readonly least: readonly number[];
  readonly greatest: readonly number[];
}

/** A chamber beside a partition. */
export interface ChamberOfBox {
  /** 'front chamber'. */
  readonly name: string;
  /** The axis that the partition divides, and from where to where the chamber reaches, from the left, bottom or front outer edge, m. */
  readonly across: 'width' | 'height' | 'depth';
  readonly from: number;
  readonly to: number;
  readonly netVolume: number;
  /** Whether vents tune it; it is closed otherwise. */
  readonly vented: boolean;
  /** Air that is kept free for braces in it, m³, and the section and the field of the brief that say so. */
  readonly bracing: number;
  readonly bracingIn: readonly [section: string, field: string];
}

/** What is added to the cones of passive radiators. */
export interface DesignWeights {
  /** How many radiators there are. */
  readonly count: number;
  /** Added to each, kg. */
  readonly mass: number;
  /** Diameter of a circle of the area of its cone, m. */
  readonly coneDiameter: number;
}

/** A limit that is not a wish, in SI units: what a driver or a printer allows. */
export interface RawMargin {
  readonly path: string;
  readonly what: string;
  readonly meaning: Meaning;
  readonly value: number;
  readonly limit: number;
  readonly sense: 'at most' | 'at least';
}

/** The axes of each face, 0 width, 1 height, 2 depth: across and up. */
export const axesOf = (face: Face): readonly [number, number] =>
  face === 'left' || face === 'right' ? [2, 1] : face === 'bottom' || face === 'top' ? [0, 2] : [0, 1];

/** The edges that a builder measures from, by axis. */
const FROM = ['left', 'bottom', 'front'] as const;

/** A hole as a builder measures it. `centre` and the edges of a rectangle are given for width, height and depth. */
export function holeAt(what: string, face: Face, cut: number | readonly number[], centre: readonly number[]): Hole {
  const [first, second] = axesOf(face);
  const on = <T>(list: readonly T[]) => [list[first] as T, list[second] as T] as const;
  const [across, up] = on(centre);
  const hole = { what, face, across, up, from: on(FROM) };
  return typeof cut === 'number'
    ? { ...hole, form: 'circle', diameter: cut }
    : { ...hole, form: 'rectangle', sides: on(cut) };
}
