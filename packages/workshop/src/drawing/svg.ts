import { type LengthInput, optional, positive, readFields } from '@airspring/core/quantity';
import type { At, Callout, Corner, Dimension, Drawing, Label, Purpose, Shape } from './drawing.js';
import { millimetres } from './drawing.js';

export interface SvgOptions {
  /** How wide and high the drawing may be on paper. Default: 180 by 240 mm, within the margins of A4. */
  readonly width?: LengthInput | undefined;
  readonly height?: LengthInput | undefined;
}

const shape = { width: optional(positive('length')), height: optional(positive('length')) };

/** Scales that rulers have. */
const scales = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;

/** Heights of letters, mm. */
const letters = { title: 4.4, large: 3.6, normal: 3, small: 2.6 } as const;
/** Mean width of a letter over its height. */
const LETTER = 0.53;

/** How lines are drawn, by what they are for. */
const strokes: Readonly<Record<Purpose, string>> = {
  cut: 'stroke-width="0.45"',
  pocket: 'stroke-width="0.3"',
  inside: 'stroke-width="0.25" stroke-dasharray="2.4 1.2"',
  drill: 'stroke-width="0.3"',
  centre: 'stroke-width="0.15" stroke-dasharray="4 1 0.8 1"',
  note: 'stroke-width="0.2"',
};

const n = (value: number): string => String(Number(value.toFixed(2)));

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (one) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[one] as string);

/** Paper: mm to the right and down. What is put on it widens its bounds. */
interface Paper {
  readonly scale: number;
  readonly x: (metres: number) => number;
  readonly y: (metres: number) => number;
  readonly put: (markup: string, ...corners: readonly (readonly [number, number])[]) => void;
}

const textSize = (text: string, size: number): number => text.length * size * LETTER;

/** A text whose middle, start or end is at a place; upright texts are read from the right. */
function put(
  paper: Paper,
  text: string,
  [x, y]: readonly [number, number],
  size: keyof typeof letters,
  anchor: 'start' | 'middle' | 'end',
  upright = false,
  clear = false,
): void {
  const height = letters[size];
  const long = textSize(text, height);
  const from = anchor === 'start' ? 0 : anchor === 'middle' ? -long / 2 : -long;
  const turn = upright ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : '';
  const halo = clear ? ' paint-order="stroke" stroke="var(--paper, Canvas)" stroke-width="0.9"' : ' stroke="none"';
  const bold = size === 'title' ? ' font-weight="600"' : '';
  const corners: (readonly [number, number])[] = upright
    ? [
        [x - height / 2, y - from],
        [x + height / 2, y - from - long],
      ]
    : [
        [x + from, y - height / 2],
        [x + from + long, y + height / 2],
      ];
  paper.put(
    `<text fill="currentColor" x="${n(x)}" y="${n(y + height * 0.35)}" font-size="${height}" text-anchor="${anchor}"${turn}${bold}${halo}>${escaped(text)}</text>`,
    ...corners,
  );
}

/** The path of a shape. Bends are arcs of circles. */
function pathOf(corners: readonly Corner[], closed: boolean, paper: Paper): string {
  const at = ([x, y]: At) => `${n(paper.x(x))} ${n(paper.y(y))}`;
  const last = closed ? corners.length : corners.length - 1;
  let d = `M${at(corners[0]!.at)}`;
  for (let i = 0; i < last; i++) {
    const { at: from, bulge = 0 } = corners[i]!;
    const to = corners[(i + 1) % corners.length]!.at;
    if (bulge === 0) {
      if (!closed || i < last - 1) d += `L${at(to)}`;
      continue;
    }
    const chord = Math.hypot(to[0] - from[0], to[1] - from[1]) * paper.scale;
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    d += `A${n(radius)} ${n(radius)} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${at(to)}`;
  }
  return closed ? `${d}Z` : d;
}

function drawShape(paper: Paper, one: Shape): void {
  const fill =
    one.filled === 'solid'
      ? ' fill="var(--paper, Canvas)"'
      : one.filled === 'tint'
        ? ' fill="currentColor" fill-opacity="0.09"'
        : '';
  const style = `${strokes[one.purpose]}${fill}`;
  if (one.form === 'circle') {
    const [x, y, r] = [paper.x(one.centre[0]), paper.y(one.centre[1]), one.radius * paper.scale];
    paper.put(`<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" ${style}/>`, [x - r, y - r], [x + r, y + r]);
    return;
  }
  const d = pathOf(one.corners, one.closed, paper);
  paper.put(`<path d="${d}" ${style}/>`, ...one.corners.map(({ at }) => [paper.x(at[0]), paper.y(at[1])] as const));
}

/** How far from its edge a row of lengths stands, mm. */
const FIRST = 6;
const ROW = 16;

function drawDimension(paper: Paper, { kind, along, ends, beside, side, row }: Dimension): void {
  const out = FIRST + row * ROW;
  const isX = along === 'x';
  const sign = side === 'below' || side === 'right' ? 1 : -1;
  const at = (isX ? paper.y(beside) : paper.x(beside)) + sign * out;
  const edge = isX ? paper.y(beside) : paper.x(beside);
  const places = ends.map((end) => (isX ? paper.x(end) : paper.y(end)));
  const point = (place: number, across: number): readonly [number, number] => (isX ? [place, across] : [across, place]);
  const stroke = (from: readonly [number, number], to: readonly [number, number], width = 0.15) =>
    paper.put(`<path d="M${n(from[0])} ${n(from[1])}L${n(to[0])} ${n(to[1])}" stroke-width="${width}"/>`, from, to);
  for (const place of places) {
    stroke(point(place, edge + sign * 1), point(place, at + sign * 1.2), 0.1);
    const tick = 0.9;
    stroke(
      isX ? [place - tick, at + tick] : [at - tick, place + tick],
      isX ? [place + tick, at - tick] : [at + tick, place - tick],
      0.3,
    );
  }
  const [first, last] = [places[0]!, places.at(-1)!];
  stroke(point(first, at), point(last, at));
  if (kind === 'overall') {
    const middle = (first + last) / 2;
    const text = millimetres(ends[1]! - ends[0]!);
    put(paper, text, isX ? [middle, at - 2.2] : [at - 2.2, middle], 'normal', 'middle', !isX);
    return;
  }
  // Counted from the first edge; near neighbours are moved apart so that no number covers another.
  const size = letters.normal;
  const spots = apart(places, size * 1.15);
  spots.forEach((spot, i) => {
    const text = millimetres(ends[i]! - ends[0]!);
    const from = at + sign * 2;
    if (isX) put(paper, text, [spot, from], 'normal', sign > 0 ? 'end' : 'start', true);
    else put(paper, text, [from, spot], 'normal', sign > 0 ? 'start' : 'end');
  });
}

/** Places that keep a distance, as near to the wanted ones as they can, in the same order. */
function apart(wanted: readonly number[], least: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = [...wanted];
  for (let pass = 0; pass < 60; pass++) {
    for (let k = 1; k < order.length; k++) {
      const [a, b] = [order[k - 1]!, order[k]!];
      const close = least - (placed[b]! - placed[a]!);
      if (close <= 1e-6) continue;
      placed[a] = placed[a]! - close / 2;
      placed[b] = placed[b]! + close / 2;
    }
  }
  return placed;
}

function drawLabel(paper: Paper, { at, text, size, within, above, clear, ringed }: Label): void {
  const [x, y] = [paper.x(at[0]), paper.y(at[1])];
  if (ringed) {
    const radius = letters[size] * 0.85;
    paper.put(`<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}" stroke-width="0.2" fill="var(--paper, Canvas)"/>`);
  }
  const inset = letters[size] * 0.95;
  const upright = within === 'left' || within === 'right';
  const dx = within === 'left' ? inset : within === 'right' ? -inset : 0;
  const dy = within === 'top' ? inset : within === 'bottom' || above ? -inset : 0;
  put(paper, text, [x + dx, y + dy], size, 'middle', upright, clear);
}

function drawCallouts(paper: Paper, callouts: readonly Callout[], right: number): void {
  const wanted = callouts.map(({ at }) => paper.y(at[1]));
  const placed = apart(wanted, letters.normal * 1.6);
  callouts.forEach(({ at, text }, i) => {
    const [x, y] = [paper.x(at[0]), paper.y(at[1])];
    const to = [right + 5, placed[i]!] as const;
    paper.put(
      `<path d="M${n(x)} ${n(y)}L${n(to[0])} ${n(to[1])}h2" stroke-width="0.15"/><circle cx="${n(x)}" cy="${n(y)}" r="0.5" fill="currentColor" stroke="none"/>`,
      to,
    );
    put(paper, text, [to[0] + 3, to[1]], 'normal', 'start');
  });
}

/** An arrow beside the lower right corner. */
function drawGrain(paper: Paper, along: 'x' | 'y', right: number, foot: number): void {
  const [x, y] = along === 'x' ? [right + 12, foot - 2] : [right + 8, foot - 8];
  const half = 7;
  const turn = along === 'y' ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : '';
  paper.put(
    `<path d="M${n(x - half)} ${n(y)}h${2 * half}m-2 -1l2 1l-2 1M${n(x - half + 2)} ${n(y - 1)}l-2 1l2 1" stroke-width="0.25"${turn}/>`,
  );
  put(paper, 'grain', along === 'y' ? [x - 2.2, y] : [x, y - 2.2], 'small', 'middle', along === 'y', true);
}

/** Everything at one scale; the size that it needs, mm. */
function drawnAt(
  drawing: Drawing,
  divisor: number,
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
    x: (metres) => metres * scale,
    y: (metres) => -metres * scale,
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
  for (const one of drawing.dimensions) drawDimension(paper, one);
  if (drawing.grain) drawGrain(paper, drawing.grain, right, foot);
  for (const one of drawing.labels) drawLabel(paper, one);
  drawCallouts(paper, drawing.callouts, right);
  const title = bounds.top - 11;
  const left = bounds.left;
  put(paper, drawing.title, [left, title], 'title', 'start');
  put(paper, `${drawing.subtitle}; scale 1 : ${divisor}`, [left, title + 5.2], 'normal', 'start');
  const margin = 3;
  return {
    body: parts.join('\n'),
    left: bounds.left - margin,
    top: bounds.top - margin,
    width: bounds.right - bounds.left + 2 * margin,
    height: bounds.bottom - bounds.top + 2 * margin,
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
  const { width = 0.18, height = 0.24 } = readFields('svg', options, shape);
  let divisor: number = scales[0];
  let drawn = drawnAt(drawing, divisor);
  for (const next of scales.slice(1)) {
    if (drawn.width <= width * 1e3 && drawn.height <= height * 1e3) break;
    divisor = next;
    drawn = drawnAt(drawing, divisor);
  }
  const { body, left, top, width: wide, height: high } = drawn;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(wide)}mm" height="${n(high)}mm" viewBox="${n(left)} ${n(top)} ${n(wide)} ${n(high)}" role="img" font-family="system-ui, sans-serif" fill="none" stroke="currentColor" stroke-linejoin="round" stroke-linecap="round">
<title>${escaped(drawing.title)}</title>
<desc>${escaped(drawing.description)}</desc>
${body}
</svg>
`;
}
