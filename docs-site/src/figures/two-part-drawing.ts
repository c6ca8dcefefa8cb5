import { format, si } from '@airspring/core/quantity';
import type { TwoPartVent } from '@airspring/workshop/solid';
import { html } from '../html.js';
import { pathOf, px, sectionOf, sizeAcross, sizeAlong } from './solid-sections.js';

/** Room around the drawing for words, px. */
const [LEFT, RIGHT, TOP, BELOW] = [66, 78, 8, 34];
const TALLEST = 220;
/** How much of the panel is drawn beyond the flange, m. */
const BEYOND = 0.012;

const mm = (length: number): string => format('length', si('length', length), 'mm');

const word = (x: number, y: number, text: string) => html`<text class="view" x="${px(x)}" y="${px(y)}">${text}</text>`;

/** A flange in its panel with its tube in place, cut along the axis. */
export function drawTwoParts(
  { flange, tube, hole, flangeDiameter, proud, seat }: TwoPartVent,
  panel: number,
  label: string,
  width: number,
): string {
  const outermost = flangeDiameter / 2 + BEYOND;
  const { length } = tube.drawing;
  const scale = Math.min(TALLEST / (2 * outermost), (width - LEFT - RIGHT) / length);
  const middle = TOP + outermost * scale;
  const at = { x: (along: number) => LEFT + along * scale, y: (across: number) => middle - across * scale };
  const slab = (sign: 1 | -1) =>
    `M${px(at.x(proud))} ${px(at.y((sign * hole) / 2))}H${px(at.x(proud + panel))}V${px(at.y(sign * outermost))}H${px(at.x(proud))}Z`;
  const floor = middle + outermost * scale + 12;
  const height = floor + BELOW;
  const across = flangeDiameter / 2;
  return html`<svg class="drawing solid" viewBox="0 0 ${width} ${px(height)}" width="${width}" height="${px(height)}" role="img" aria-label="${label}"><path class="axis" d="M${LEFT - 6} ${px(middle)}H${px(at.x(length) + 6)}"/><path class="panel" d="${slab(1)}${slab(-1)}"/><path class="wood second" d="${pathOf(sectionOf(flange), at)}"/><path class="wood" d="${pathOf(sectionOf(tube.mesh), at)}"/>${sizeAcross([at.y(across), at.y(-across)], LEFT - 12, mm(2 * across))}${sizeAlong([at.x(0), at.x(length)], floor, mm(length))}${sizeAcross([at.y(seat / 2), at.y(-seat / 2)], at.x(length) + 16, mm(seat), 'right')}${word(at.x(proud + panel) + 8, at.y(outermost) + 10, 'panel')}${word(at.x(proud + panel) + 8, at.y(-hole / 2) + 9, 'flange')}${word(at.x(length * 0.6), at.y(seat / 2) + 2, 'tube')}</svg>`
    .markup;
}
