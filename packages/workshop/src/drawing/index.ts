/** How is a piece of a box drawn, with what is cut into it? */
export { pieceDrawing } from './piece-drawing.js';
/** What does the drawing of a piece mark that stands behind it? */
export type { Meeting, Pointing } from './behind-piece.js';
/** How is a sheet drawn, with the parts that are cut from it? */
export { sheetDrawing } from './sheet-drawing.js';
/** How is a whole box drawn, from three sides or pulled apart? */
export { boxDrawing } from './box-drawing.js';
/** How is a printed vent drawn in its panel, cut along its middle? */
export { type Section, type SectionPart, sectionDrawing } from './section-drawing.js';
/** How is a flat part drawn, or a hole in a panel, with its sizes? */
export { type Plate, plateDrawing } from './plate-drawing.js';
/** How is a board drawn that is no rectangle? */
export { type CutBoard, outlineDrawing } from './outline-drawing.js';
export type { OutlinedBoard } from './outline-edges.js';
/** What does a drawing consist of? */
export type { At, Callout, Corner, Dimension, Drawing, Label, Purpose, Shape } from './drawing.js';
/** How do the words of a drawing hold lengths, and in which units are they read? */
export type { LengthUnit, Words } from '../words/told.js';
/** How is a drawing shown on a page, or printed to scale? */
export { type SvgOptions, toSvg } from './svg.js';
/** How is a drawing handed to a machine that cuts it? */
export { toDxf } from './dxf.js';
