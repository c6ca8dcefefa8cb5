import { type BoxShape, cuboidAround } from '@airspring/workshop/shape';
import { html } from '../html.js';
import { dimension, type Flat, mm, path, px } from './dimensioned.js';

/** Width of the drawing, and the margins around it for words, px. */
const WIDTH = 480;
const TALLEST = 150;
const [LEFT, BELOW, ABOVE] = [64, 44, 12];

/** A box of two sections along its width, from the front: its outer edges, and dashed the air within. */
export function drawStepped({ along, outer, inner, ...rest }: BoxShape, label: string): string {
  const { width, height } = cuboidAround({ along, outer, inner, ...rest });
  const scale = Math.min(TALLEST / height, (WIDTH - LEFT - 8) / width);
  const floor = ABOVE + height * scale;
  const at = ([x, y]: Flat[number]): Flat[number] => [LEFT + x * scale, floor - y * scale];
  const topOf = (outline: Flat): number => Math.max(...outline.map(([, y]) => y));
  const lowOf = (outline: Flat): number => Math.min(...outline.map(([, y]) => y));
  /** Around layers that stand side by side on one line, counter-clockwise. */
  const around = (layers: BoxShape['inner']): string => {
    const [first, last] = [layers[0]!, layers.at(-1)!];
    const bottom = lowOf(first.outline);
    const roof = layers.flatMap(
      ({ from, to, outline }): Flat => [
        [from, topOf(outline)],
        [to, topOf(outline)],
      ],
    );
    return path([[last.to, bottom] as const, ...[...roof].reverse(), [first.from, bottom] as const].map(at));
  };
  const [low] = outer;
  const step = low!.to;
  return html`<svg class="drawing wedge" viewBox="0 0 ${WIDTH} ${px(floor + BELOW)}" width="${WIDTH}" height="${px(floor + BELOW)}" role="img" aria-label="${label}"><path class="edge" d="${around(outer)}"/><path class="behind" d="${around(inner)}"/>${dimension(at([0, -10 / scale]), at([width, -10 / scale]), mm(width))}${dimension([LEFT - 10, at([0, 0])[1]], [LEFT - 10, at([0, topOf(low!.outline)])[1]], mm(topOf(low!.outline)))}<text x="${px(at([step, 0])[0] - 5)}" y="${px(at([0, topOf(low!.outline)])[1] - 8)}" text-anchor="end">${mm(step)}</text></svg>`
    .markup;
}
