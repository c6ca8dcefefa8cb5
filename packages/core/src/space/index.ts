/** How large is a box inside and outside? */
export { type Face, faces, innerSize, outerSize, type Size, type SizeInput, type ThicknessInput } from './cuboid.js';
/** How are the size of a box and the thickness of its panels read as fields of a record? */
export { sizeShape, thicknessField } from './cuboid.js';
/** What is in a box and takes up air? */
export { type ContentsInput, estimatedDriverVolume } from './displaced-volume.js';
/** Does everything fit in a box, and where? */
export { type FitInput, fit } from './fit.js';
/** How much wider is a recess than the frame in it? */
export { framePlay } from './frame-play.js';
/** How are things placed that fit? */
export type { Fit, Seated } from './fitted.js';
/** Which holes are cut in the panels? */
export type { Hole, Point } from './hole.js';
/** What has to fit in a box? */
export type { Layout, ShapedSpaceInput, SpaceInput } from './fit-input.js';
/** Which sizes does a driver or a passive radiator have in a box? */
export { type RoundBody, type RoundBodyInput, roundBodies } from './round-body.js';
/** Do drivers and passive radiators fit in a box that has no vent? */
export { compileBodiesFit } from './bodies-fit.js';
/** Which sizes does a vent have in a box? */
export type { RoundVentBodyInput, SlotBody, SlotVentBodyInput, VentBody, VentBodyInput } from './vent-body.js';
/** What must an interior of your own provide, and do the parts placed in it overlap? */
export { collisions, cuboidInterior, type Interior } from './interior.js';
/** How is a space given that is no cuboid, and which shapes may a brief ask for? */
export type { Prisms, ShapeChoice, ShapedPanel, ShapeField, SpaceShape } from './space-shape.js';
/** What is the longest vent that fits in a box? */
export { compileLongestSlot, compileLongestVent, type LongestVentInput, longestVent } from './longest-vent.js';
/** How much air is in a box? */
export {
  compileNetVolume,
  innerVolumeFor,
  type NetVolume,
  type NetVolumeInput,
  type NetVolumeWithinInput,
  netVolume,
  netVolumeWithin,
} from './net-volume.js';
/** How large must a box be for a wanted volume of air? */
export {
  compileSizeForNetVolume,
  type ShapeRule,
  type SizeForNetVolumeInput,
  sizeForNetVolume,
} from './size-for-net-volume.js';
/** Where are the parts, as solids? */
export type { Solid } from './solids.js';
