import { widths } from '../example/figure-markup.js';

/** A drawing for the measure of the text and one for a telephone; the style sheet shows one of them. */
export const bothWidths = (draw: (width: number) => string): string =>
  Object.entries(widths)
    .map(([name, width]) => `<div class="${name} workshop">${draw(width)}</div>`)
    .join('');
