import type { Words } from '../words/told.js';

/** A point of a drawing, m: to the right and up. */
export type At = readonly [x: number, y: number];

/**
 * What a line is for. `cut` goes through the board, `pocket` is a step on the side that is seen, `inside` one on the other side,
 * `drill` a hole of a bit. Nothing is cut along `centre`, the lines of middles, and `note`, what else is shown.
 */
export type Purpose = 'cut' | 'pocket' | 'inside' | 'drill' | 'centre' | 'note';

/** A corner of a path. `bulge` bends the side after it: the tangent of a quarter of its angle, above zero to the left. */
export interface Corner {
  readonly at: At;
  readonly bulge?: number;
}

export type Shape = { readonly purpose: Purpose; readonly filled?: 'solid' | 'tint' } & (
  | { readonly form: 'circle'; readonly centre: At; readonly radius: number }
  | { readonly form: 'path'; readonly corners: readonly Corner[]; readonly closed: boolean }
);

/** Lengths along a side: all counted from the first, or one between two. */
export interface Dimension {
  readonly kind: 'running' | 'overall';
  readonly along: 'x' | 'y';
  /** Where the lengths end, the first of them the edge that they are counted from. */
  readonly ends: readonly number[];
  /** The edge beside which they stand, and how far out: first or second row. */
  readonly beside: number;
  readonly side: 'below' | 'above' | 'left' | 'right';
  readonly row: number;
}

export interface Label {
  readonly at: At;
  readonly text: Words;
  readonly size: 'large' | 'normal' | 'small';
  /** Which edge it stands along, outside of it; otherwise `at` is its middle. */
  readonly beside?: 'left' | 'right' | 'bottom' | 'top';
  /** It stands above `at`. */
  readonly above?: true;
  /** Whether nothing of the drawing shows through it. */
  readonly clear?: true;
  /** Whether it stands in a circle, as the number of a step. */
  readonly ringed?: true;
  /** The rectangle around `at` that it must stay within: it breaks into lines, is turned, and shrinks. */
  readonly room?: At;
  /** What is written where the text has no room. */
  readonly shorter?: Words;
  /** Whether it is left out where it does not fit into its room. */
  readonly optional?: true;
  /** It moves from `at` towards this place until nothing that was written covers it. */
  readonly towards?: At;
}

/** A text beside the drawing, with a line to what it is about. */
export interface Callout {
  readonly at: At;
  readonly text: Words;
}

/** A drawing in metres, to be written as SVG or DXF. */
export interface Drawing {
  readonly title: Words;
  readonly subtitle: Words;
  /** What it shows, in one sentence, for those who do not see it. */
  readonly description: Words;
  readonly shapes: readonly Shape[];
  readonly dimensions: readonly Dimension[];
  readonly labels: readonly Label[];
  /** Beside the right edge. */
  readonly callouts: readonly Callout[];
  /** Which way the grain runs, shown by an arrow below the lower right corner. */
  readonly grain?: 'x' | 'y';
}

/** A closed path through points. */
const polygon = (purpose: Purpose, points: readonly At[], filled?: 'solid' | 'tint'): Shape => ({
  purpose,
  form: 'path',
  closed: true,
  corners: points.map((at) => ({ at })),
  ...(filled && { filled }),
});

export const rectangle = (
  purpose: Purpose,
  [x, y]: At,
  width: number,
  height: number,
  filled?: 'solid' | 'tint',
): Shape =>
  polygon(
    purpose,
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    filled,
  );

export const line = (purpose: Purpose, from: At, to: At): Shape => ({
  purpose,
  form: 'path',
  closed: false,
  corners: [{ at: from }, { at: to }],
});

/** The bulge of a quarter circle. */
const QUARTER = Math.tan(Math.PI / 8);

/** A rectangle with round corners, given by its middle. */
export function roundedRectangle(purpose: Purpose, [x, y]: At, width: number, height: number, radius: number): Shape {
  if (radius <= 0) return rectangle(purpose, [x - width / 2, y - height / 2], width, height);
  const [a, b] = [width / 2, height / 2];
  const corners: Corner[] = [
    { at: [x - a + radius, y - b] },
    { at: [x + a - radius, y - b], bulge: QUARTER },
    { at: [x + a, y - b + radius] },
    { at: [x + a, y + b - radius], bulge: QUARTER },
    { at: [x + a - radius, y + b] },
    { at: [x - a + radius, y + b], bulge: QUARTER },
    { at: [x - a, y + b - radius] },
    { at: [x - a, y - b + radius], bulge: QUARTER },
  ];
  return { purpose, form: 'path', closed: true, corners };
}

/** A shape moved, and before that turned by a quarter to the left about the origin. */
export function moved(shape: Shape, [dx, dy]: At, quarter = false): Shape {
  const to = ([x, y]: At): At => (quarter ? [dx - y, dy + x] : [dx + x, dy + y]);
  return shape.form === 'circle'
    ? { ...shape, centre: to(shape.centre) }
    : { ...shape, corners: shape.corners.map(({ at, ...rest }) => ({ ...rest, at: to(at) })) };
}

/** The first letter of a title as a capital. */
export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
