/** How is a piece of a box drawn? */
export { pieceDrawing } from './piece-drawing.js';
/** What does a drawing consist of? */
export type { At, Callout, Corner, Dimension, Drawing, Label, Purpose, Shape } from './drawing.js';
/** How is a drawing shown on a page, or printed to scale? */
export { type SvgOptions, toSvg } from './svg.js';
