/** How large is a box inside and outside? */
export { type Face, faces, innerSize, outerSize, type Size, type SizeInput, type ThicknessInput } from './cuboid.js';
/** What stands in the box and takes air from it? */
export { type ContentsInput, estimatedDriverVolume } from './displaced-volume.js';
/** Does everything fit, and where? */
export { type FitInput, fit } from './fit.js';
/** How are things placed that fit? */
export type { Fit, Seated } from './fitted.js';
/** What is cut out of the panels? */
export type { Hole, Point } from './hole.js';
/** What must fit? */
export type { Layout, SpaceInput } from './fit-input.js';
/** What is a driver or a passive radiator, as the box feels it? */
export { type RoundBody, type RoundBodyInput, roundBodies } from './round-body.js';
/** Do drivers and passive radiators fit in a box that has no vent? */
export { compileBodiesFit } from './bodies-fit.js';
/** What is a vent, as the box feels it? */
export type { RoundVentBodyInput, SlotBody, SlotVentBodyInput, VentBody, VentBodyInput } from './vent-body.js';
/** What is asked of a room, and does what was placed in it stand free? */
export { collisions, cuboidInterior, type Interior } from './interior.js';
/** How long may a vent be at most? */
export { compileLongestSlot, compileLongestVent, type LongestVentInput, longestVent } from './longest-vent.js';
/** How much air is in a box, and how large must it be for that? */
export {
  compileNetVolume,
  compileSizeForNetVolume,
  type NetVolume,
  type NetVolumeInput,
  netVolume,
  type ShapeRule,
  type SizeForNetVolumeInput,
  sizeForNetVolume,
} from './net-volume.js';
/** What stands where, as solids? */
export type { Solid } from './solids.js';
