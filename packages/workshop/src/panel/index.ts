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
/** At which frequencies does a panel ring? */
export { type BraceOnPanelInput, type PanelEdges, type PlateInput, plateResonances } from './plate-resonances.js';
export type { EdgeHold } from './beam-shapes.js';
/** Where does the first resonance of a glued panel lie, alone and in its box? */
export { type GluedPanelInput, type PanelResonance, panelResonance } from './panel-resonance.js';
export { type BoxPanelResonance, boxResonances } from './box-resonances.js';
/** Where does a brace raise it most? */
export { type BestBrace, type BestBraceInput, bestBrace } from './best-brace.js';
