import { type Mesh, sliceOf } from '@airspring/workshop/mesh';
import { html, type Markup } from '../html.js';

/** A point of a drawing, m: along the axis of a solid, and across it. */
export type At = readonly [along: number, across: number];
export type Section = readonly (readonly At[])[];

/** The section of a solid through its axis: cut by a plane that misses its corners by a hair. */
export const sectionOf = (mesh: Mesh, from = 0): Section =>
  sliceOf(mesh, { origin: [1e-7, 0, 0], x: [0, 0, 1], y: [0, 1, 0] }).map((figure) =>
    figure.map(([along, across]) => [along + from, across] as const),
  );

/** Metres to pixels. */
export interface Scale {
  readonly x: (along: number) => number;
  readonly y: (across: number) => number;
}

export const px = (value: number): string => value.toFixed(1);

/** Its closed path, holes left open by the rule of the style sheet. */
export const pathOf = (section: Section, { x, y }: Scale): string =>
  section.map((figure) => `M${figure.map(([a, b]) => `${px(x(a))} ${px(y(b))}`).join('L')}Z`).join('');

/** A size between two places along the axis, with its words under it. */
export const sizeAlong = ([from, to]: readonly [number, number], y: number, words: string): Markup =>
  html`<path class="dimension" d="M${px(from)} ${px(y - 4)}v8m0 -4L${px(to)} ${px(y)}m0 -4v8"/><text x="${px((from + to) / 2)}" y="${px(y + 19)}" text-anchor="middle">${words}</text>`;

/** A size across the axis, with its words on the left of it or on the right, clear of the axis itself. */
export const sizeAcross = (
  [from, to]: readonly [number, number],
  x: number,
  words: string,
  side: 'left' | 'right' = 'left',
): Markup =>
  html`<path class="dimension" d="M${px(x - 4)} ${px(from)}h8m-4 0L${px(x)} ${px(to)}m-4 0h8"/><text x="${px(x + (side === 'left' ? -9 : 9))}" y="${px(from + (to - from) * (side === 'left' ? 0.5 : 0.3) + 5)}" text-anchor="${side === 'left' ? 'end' : 'start'}">${words}</text>`;
