import { format, si } from '@airspring/core/quantity';
import { html, type Markup } from '../html.js';

export const px = (value: number): string => value.toFixed(1);
export const mm = (length: number): string => format('length', si('length', length), 'mm');

export type Flat = readonly (readonly [number, number])[];
export const path = (points: Flat): string => `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}Z`;

/** A size between two points along an edge, with its words beside it. */
export function dimension(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  words: string,
): Markup {
  const upright = ax === bx;
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
  const [tx, ty] = upright ? [x - 8, y + 5] : [x, y + 20];
  const tick = upright ? 'h8m-4 0' : 'v8m0 -4';
  return html`<path class="dimension" d="M${px(ax - (upright ? 4 : 0))} ${px(ay - (upright ? 0 : 4))}${tick}L${px(bx)} ${px(by)}m${upright ? '-4 0h8' : '0 -4v8'}"/><text x="${px(tx)}" y="${px(ty)}" text-anchor="${upright ? 'end' : 'middle'}">${words}</text>`;
}
