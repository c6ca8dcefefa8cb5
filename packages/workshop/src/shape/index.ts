/** How is a box given that is no cuboid, and what is left of it within its panels? */
export {
  type Along,
  type BoxShape,
  type BoxShapeInput,
  boxShape,
  type Layer,
  type OuterLayer,
} from './box-shape.js';
/** How is the section of a box given, and the thickness of its panels? */
export type { Bend, LayerInput, PanelThicknessInput, Section } from './section.js';
/** Which sections do boxes have that fit a corner, a seat or a wheel arch? */
export { corner, cylinder, quarterRound, underSeat, wedge, wheelArch } from './makers.js';
/** How much does a box of any shape take up, and how much is inside? */
export { cuboidAround, innerVolumeOf, outerVolumeOf } from './volumes.js';
/** How long, high or slanted must a box be for a wanted volume of air? */
export { type OpenSize, type OpenSizeInput, openSize } from './open-size.js';
/** Which inside does such a box offer to drivers and vents? */
export { interiorOf } from './interior.js';
/** Which panels is it made of, and at which angles are they cut? */
export { panelsOf, type ShapePanel } from './panels.js';
export type { Hollow } from './strip.js';
/** At which frequencies does the air in a box resonate? */
export { type BoxModes, boxModes } from './modes.js';
/** Which edges keep the modes of a box apart? */
export { type SpreadEdges, spreadEdges } from './spread-edges.js';
/** Which shapes may the space of a brief have? */
export { standardShapes } from './space-shapes.js';
