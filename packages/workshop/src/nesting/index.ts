/** How are parts laid on sheets so that a panel saw can cut them? */
export { type NestedPart, type NestedSheet, type Nesting, nest, type SawCut } from './nest.js';
export type { NestInput, PartInput, SheetInput } from './nest-input.js';
/** Which parts does a cut list ask for, board by board? */
export { type PartsOfBoard, partsOf } from './parts-of.js';
