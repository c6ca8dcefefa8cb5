import type { Face } from '@airspring/core/space';

/** A hole in a panel of the box or in a board inside it, measured as a builder measures, m. */
export type WorkHole = {
  /** What it is for: 'driver', 'vent', 'radiator'. */
  readonly what: string;
  /** The panel that it is in, or the panel that its board looks to. */
  readonly face: Face;
  /** The board inside the box that it is in; left out for a panel. */
  readonly board?: {
    readonly name: string;
    readonly size: readonly [across: number, up: number];
    /** Where its edges begin, from the outer edges and the outer surface of the face; left out where that is not known. */
    readonly from?: readonly [across: number, up: number, inwards: number];
  };
  /** Diameter of the frame or the flange that lies around it on the outside. */
  readonly frame?: number;
  /** Its centre, from the edges that `from` names. */
  readonly across: number;
  readonly up: number;
  readonly from: readonly [string, string];
} & (
  | { readonly form: 'circle'; readonly diameter: number }
  | { readonly form: 'rectangle'; readonly sides: readonly [across: number, up: number] }
);
