import { html, type Markup, table, trusted } from '../html.js';

/** A picture at a width in pixels, its text never scaled. */
export type Drawing = (width: number) => string;

/** A figure: what it shows in one computed sentence, the picture, and the numbers in it. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  /** Computed; said to who does not see the picture. */
  readonly label: string;
  readonly draw: Drawing;
  /** Said under the picture, and not in its label. */
  readonly note?: string;
  readonly data?: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

/** Widths for the measure of the text and for a telephone; the style sheet shows one of the two. */
const widths = { wide: 648, narrow: 350 } as const;

export const figureMarkup = ({ id, title, label, draw, note, data }: Figure): Markup => html`
<div class="figure" id="${id}"><figure>
<div class="wide">${trusted(draw(widths.wide))}</div>
<div class="narrow">${trusted(draw(widths.narrow))}</div>
<figcaption><strong>${title}.</strong> ${label}${note && html` ${note}`}</figcaption>
</figure>
${data && html`<details><summary>The numbers of this figure</summary>${table(title, data.heads, data.rows)}</details>`}
</div>`;
