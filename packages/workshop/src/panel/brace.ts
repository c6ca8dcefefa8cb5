import {
  count,
  type Length,
  type LengthInput,
  notNegative,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';

/** The board of a brace, in the plane that it divides: m, from the lower left corner of the space between the panels. */
export interface BraceBoard {
  readonly least: readonly [across: number, up: number];
  readonly greatest: readonly [across: number, up: number];
  /** Openings, each by two corners, counted from the same corner as the board. */
  readonly windows: readonly {
    readonly least: readonly [across: number, up: number];
    readonly greatest: readonly [across: number, up: number];
    readonly cornerRadius: number;
  }[];
}

/** A form of brace: which board it makes of the space between the panels. Your own form is a function like ours. */
export type BraceForm = (space: readonly [across: number, up: number]) => BraceBoard | undefined;

const windowShape = {
  border: positive('length'),
  columns: optional(count(20)),
  rows: optional(count(20)),
  cornerRadius: optional(notNegative('length')),
};

/**
 * Window brace: a board that touches all four panels around it, with one opening or several beside each other.
 *
 * @validity borders that leave an opening in each cell; where they do not, the box is told not to fit
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry of a rectangle
 * @example windowBrace({ border: '50 mm' })([0.3, 0.4]) // one opening of 200 × 300 mm
 */
export function windowBrace(input: {
  readonly border: LengthInput;
  /** Openings beside each other, with a bar as wide as the border between them. Default: 1. */
  readonly columns?: number | undefined;
  readonly rows?: number | undefined;
  /** Default: a quarter of the border. */
  readonly cornerRadius?: LengthInput | undefined;
}): BraceForm {
  const {
    border,
    columns = 1,
    rows = 1,
    cornerRadius = si('length', border / 4),
  } = readFields('brace', input, windowShape);
  return ([across, up]) => {
    const [width, height] = [(across - border) / columns - border, (up - border) / rows - border];
    if (!(Math.min(width, height) > 2 * cornerRadius)) return undefined;
    const windows = Array.from({ length: columns * rows }, (_, i) => {
      const left = border + (i % columns) * (width + border);
      const bottom = border + Math.floor(i / columns) * (height + border);
      return { least: [left, bottom] as const, greatest: [left + width, bottom + height] as const, cornerRadius };
    });
    return { least: [0, 0], greatest: [across, up], windows };
  };
}

const shelfShape = { reach: positive('length') };

/**
 * Shelf: a board as wide as the space, that reaches from its upper side (the back panel, or the top one of an upright shelf) part of
 * the way to the lower.
 *
 * @validity reaches shorter than the space
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry of a rectangle
 * @example shelf({ reach: '120 mm' })([0.3, 0.4]) // a board of 300 × 120 mm along the back
 */
export function shelf(input: { readonly reach: LengthInput }): BraceForm {
  const { reach } = readFields('brace', input, shelfShape);
  return ([across, up]) => (reach < up ? { least: [0, up - reach], greatest: [across, up], windows: [] } : undefined);
}

/** A brace as it stands. */
export interface Brace {
  /** The axis that it divides: a brace across the height lies like a shelf. */
  readonly across: 'width' | 'height' | 'depth';
  /** Where its middle is, from the left, bottom or front outer edge of the box. */
  readonly at: Length;
  readonly thickness: Length;
  readonly form: BraceForm;
}
