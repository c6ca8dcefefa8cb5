import { type LengthInput, oneOf, optional, positive, readFields } from '@airspring/core/quantity';
import { type LengthUnit, lengthUnits, wordsIn } from '../words/told.js';
import type { Drawing } from './drawing.js';
import { drawCallouts, drawDimension, drawGrain, drawHead, drawLabel } from './svg-marks.js';
import { escaped, n, type Paper } from './svg-paper.js';
import { drawShape } from './svg-shapes.js';

export interface SvgOptions {
  /** How wide and high the drawing may be on paper. Default: 180 by 240 mm, within the margins of A4. */
  readonly width?: LengthInput | undefined;
  readonly height?: LengthInput | undefined;
  /** The unit of the lengths that it tells; default mm. */
  readonly unit?: LengthUnit | undefined;
}

const shape = {
  width: optional(positive('length')),
  height: optional(positive('length')),
  unit: optional(oneOf(...lengthUnits)),
};

/** Scales that rulers have. */
const scales = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;

const MARGIN = 3;

/** Everything at one scale, its words within a width; the size that it needs, mm. */
function drawnAt(
  drawing: Drawing,
  divisor: number,
  room: number,
  unit: LengthUnit,
): {
  readonly body: string;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
} {
  const scale = 1e3 / divisor;
  const parts: string[] = [];
  const bounds = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  const paper: Paper = {
    scale,
    unit,
    x: (metres) => metres * scale,
    y: (metres) => -metres * scale,
    taken: [],
    put: (markup, ...corners) => {
      parts.push(markup);
      for (const [x, y] of corners) {
        bounds.left = Math.min(bounds.left, x);
        bounds.right = Math.max(bounds.right, x);
        bounds.top = Math.min(bounds.top, y);
        bounds.bottom = Math.max(bounds.bottom, y);
      }
    },
  };
  for (const one of drawing.shapes) drawShape(paper, one);
  const { right, bottom: foot } = bounds;
  for (const one of drawing.dimensions) drawDimension(paper, one, drawing.labels);
  if (drawing.grain) drawGrain(paper, drawing.grain, right, foot);
  drawCallouts(paper, drawing.callouts, right);
  // Words stand clear of the lines of callouts.
  for (const one of drawing.labels) drawLabel(paper, one);
  drawHead(paper, drawing, divisor, [bounds.left, bounds.top, room - 2 * MARGIN]);
  return {
    body: parts.join('\n'),
    left: bounds.left - MARGIN,
    top: bounds.top - MARGIN,
    width: bounds.right - bounds.left + 2 * MARGIN,
    height: bounds.bottom - bounds.top + 2 * MARGIN,
  };
}

/**
 * A drawing as SVG, to scale: printed at its own size, a length on paper times the scale is the length on the board. It takes the
 * colour of the text around it, and on a dark page the paper from the page.
 *
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @example toSvg(pieceDrawing(piece), { width: '180 mm' })
 */
export function toSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const { width = 0.18, height = 0.24, unit = 'mm' } = readFields('svg', options, shape);
  const [most, highest] = [width * 1e3, height * 1e3];
  let drawn = drawnAt(drawing, scales[0], most, unit);
  for (const next of scales.slice(1)) {
    const smaller = drawnAt(drawing, next, most, unit);
    // Words do not shrink: where they alone are too wide or too high, a smaller scale gains nothing.
    const gains =
      (drawn.width > most && smaller.width < drawn.width - 1) ||
      (drawn.height > highest && smaller.height < drawn.height - 1);
    if (!gains) break;
    drawn = smaller;
  }
  const { body, left, top, width: wide, height: high } = drawn;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(wide)}mm" height="${n(high)}mm" viewBox="${n(left)} ${n(top)} ${n(wide)} ${n(high)}" role="img" font-family="system-ui, sans-serif" fill="none" stroke="currentColor" stroke-linejoin="round" stroke-linecap="round">
<title>${escaped(wordsIn(unit, drawing.title))}</title>
<desc>${escaped(wordsIn(unit, drawing.description))}</desc>
${body}
</svg>
`;
}
