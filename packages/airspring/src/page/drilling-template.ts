import type { Phrasing } from '../words/phrasing.js';
import { escaped, mm } from './markup.js';

/** What fits on a sheet of A4 or letter paper at full size, m. */
const WIDEST = 0.18;
const TALLEST = 0.2;
const ARM = 0.03;

/** A hole, whether its place is known or not. */
type Cut = { readonly what: string } & (
  | { readonly form: 'circle'; readonly diameter: number }
  | { readonly form: 'rectangle'; readonly sides: readonly [number, number] }
);

const key = (hole: Cut): string =>
  hole.form === 'circle' ? `${hole.what} ${hole.diameter}` : `${hole.what} ${hole.sides.join(' ')}`;

/** One hole at full size: its outline where the paper holds it, else its centre alone. */
function template(hole: Cut, say: Phrasing): string {
  const [wide, tall] = hole.form === 'circle' ? [hole.diameter, hole.diameter] : hole.sides;
  const whole = wide <= WIDEST && tall <= TALLEST;
  const [w, h] = whole ? [wide + 0.01, tall + 0.01] : [2.4 * ARM, 2.4 * ARM];
  const [x, y] = [w / 2, h / 2];
  const cross = `<path class="axis" d="M${mm(x - ARM)} ${mm(y)}H${mm(x + ARM)}M${mm(x)} ${mm(y - ARM)}V${mm(y + ARM)}"/>`;
  const shape = !whole
    ? ''
    : hole.form === 'circle'
      ? `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(wide / 2)}"/>`
      : `<path d="M${mm(x - wide / 2)} ${mm(y - tall / 2)}h${mm(wide)}v${mm(tall)}h${mm(-wide)}Z"/>`;
  const size = hole.form === 'circle' ? `⌀ ${say.length(hole.diameter)}` : say.sizes(hole.sides);
  const note = whole
    ? ''
    : ' The paper is too small for this hole: take the centre from here, and draw the edge with a compass.';
  const label = `Template of a hole, full size: ${hole.what}, ${size}`;
  return `<figure class="template"><svg role="img" aria-label="${escaped(label)}" width="${mm(w)}mm" height="${mm(h)}mm" viewBox="0 0 ${mm(w)} ${mm(h)}" style="stroke-width:0.3;font-size:3.5px" xmlns="http://www.w3.org/2000/svg">${shape}${cross}</svg><figcaption>${escaped(`${hole.what}, ${size}, full size.${note}`)}</figcaption></figure>`;
}

/** Templates of every hole of a design at full size, equal holes only once, with a ruler to check the printer. */
export function drillingTemplate(holes: readonly Cut[], say: Phrasing): string {
  const each = [...new Map(holes.map((hole) => [key(hole), hole])).values()];
  const ruler = `<svg role="img" aria-label="A line of 100 mm" width="102mm" height="6mm" viewBox="0 0 102 6" style="stroke-width:0.3" xmlns="http://www.w3.org/2000/svg"><path d="M1 1V5M1 3H101M101 1V5"/></svg>`;
  return `<section class="templates"><h3>Drilling template</h3><p>Print at full size (100 %, without fitting to the page). The line must measure 100 mm on paper. If it does not, do not use the templates.</p>${ruler}${each.map((hole) => template(hole, say)).join('')}</section>`;
}
