/** Which pieces of board make a box? */
export { type PanelBox, panelBox } from './panel-box.js';
export type { BraceInput, PanelBoxInput } from './panel-box-input.js';
export type { Piece, PieceEdge, Side } from './piece.js';
/** How do two panels meet? */
export { butt, type EdgeCut, type Joint, type JointSide, mitre, rabbet } from './joint.js';
export { type BoxEdge, boxEdges } from './box-edges.js';
/** What is cut into a panel? */
export {
  type BoltCircle,
  type Cutout,
  type CutoutInput,
  cutoutOf,
  type Form,
  type FormInput,
} from './cutout.js';
/** Which forms can a brace have? */
export { type BraceBoard, type BraceForm, shelf, windowBrace } from './brace.js';
/** What is a board made of, and how stiff and heavy is it? */
export { type Board, type BoardInput, birchPlywood, board, mdf, particleBoard } from './board.js';
/** What has to be cut? */
export { type CutListRow, cutList, cutListCsv } from './cut-list.js';
