import type { Length } from '@airspring/core/quantity';
import type { BoxShape } from '@airspring/workshop/shape';
import { html } from '../html.js';
import { dimension, type Flat, mm, path, px } from './dimensioned.js';

/** Width of the drawing, and the least margins around it for words, px. */
const WIDTH = 480;
const TALLEST = 170;
const [LEFT, BELOW, GAP] = [64, 44, 40];

/** A wedge as joiners draw it: its section from the left, cut so that the panels are seen, and its front beside it. */
export function drawWedge({ outer, inner, ends }: BoxShape, top: Length, label: string): string {
  const [{ outline, to: length }, air] = [outer[0]!, inner[0]!];
  const across = Math.max(...outline.map(([x]) => x));
  const up = Math.max(...outline.map(([, y]) => y));
  const scale = Math.min(TALLEST / up, (WIDTH - LEFT - GAP - 8) / (across + length));
  const high = up * scale + 46;
  const section = (points: Flat): Flat => points.map(([x, y]) => [LEFT + x * scale, high - y * scale]);
  const begin = LEFT + across * scale + GAP;
  const front = (x: number, y: number): readonly [number, number] => [begin + x * scale, high - y * scale];
  const rectangle = (x: number, y: number, wide: number, tall: number): Flat => [
    front(x, y),
    front(x + wide, y),
    front(x + wide, y + tall),
    front(x, y + tall),
  ];
  const height = high + BELOW;
  const floor = high + 10;
  const joints = outer[0]!.corners.map((place, i) => {
    const [[ox, oy], [ix, iy]] = [section([outline[i]!])[0]!, section([air.outline[place]!])[0]!];
    return html`<path class="joint" d="M${px(ox)} ${px(oy)}L${px(ix)} ${px(iy)}"/>`;
  });
  const right = begin + length * scale;
  return html`<svg class="drawing wedge" viewBox="0 0 ${WIDTH} ${px(height)}" width="${WIDTH}" height="${px(height)}" role="img" aria-label="${label}"><path class="wood" fill-rule="evenodd" d="${path(section(outline))}${path(section(air.outline))}"/>${joints}<path class="edge" d="${path(rectangle(0, 0, length, up))}"/><path class="behind" d="${path(rectangle(ends, ends, length - 2 * ends, up - 2 * ends))}"/>${dimension([LEFT, floor], [LEFT + across * scale, floor], mm(across))}${dimension([LEFT - 10, high], [LEFT - 10, high - up * scale], mm(up))}<text x="${px(LEFT + (top * scale) / 2)}" y="${px(high - up * scale - 8)}" text-anchor="middle">${mm(top)}</text>${dimension([begin, floor], [right, floor], mm(length))}<text class="view" x="${px(LEFT)}" y="12">section</text><text class="view" x="${px(begin)}" y="12">front</text></svg>`
    .markup;
}
