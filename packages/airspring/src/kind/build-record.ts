import type { Face } from '@airspring/core/space';
import type { Meaning } from './phrase.js';

export interface Hole {
  /** 'driver', 'vent': what it is for. */
  readonly what: string;
  readonly face: Face;
  readonly diameter: number;
  /** Centre on the outer surface: from the left (or front) edge, and from the lower (or front) edge, m. */
  readonly across: number;
  readonly up: number;
  /** The edges that `across` and `up` are counted from. */
  readonly from: readonly [string, string];
}

export interface DesignVent {
  readonly count: number;
  readonly diameter: number;
  readonly outerDiameter: number;
  readonly flangeDiameter: number;
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
  /** Free air kept before the inner end. */
  readonly clearance: number;
  /** What more would still fit. */
  readonly spare: number;
}

/** A limit that is no wish, in SI units: what a driver or a printer allows. */
export interface RawMargin {
  readonly path: string;
  readonly what: string;
  readonly meaning: Meaning;
  readonly value: number;
  readonly limit: number;
  readonly sense: 'at most' | 'at least';
}

/** Where the builder measures from, on a face across axis 0 width, 1 height, 2 depth; a point from the left, bottom, front. */
export function holeAt(what: string, face: Face, diameter: number, [x, y, z]: readonly number[]): Hole {
  const hole = { what, face, diameter };
  if (face === 'left' || face === 'right') {
    return { ...hole, across: z as number, up: y as number, from: ['front', 'bottom'] };
  }
  if (face === 'bottom' || face === 'top') {
    return { ...hole, across: x as number, up: z as number, from: ['left', 'front'] };
  }
  return { ...hole, across: x as number, up: y as number, from: ['left', 'bottom'] };
}
