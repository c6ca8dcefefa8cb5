/** How large is a box inside and outside? */
export { type Face, faces, innerSize, outerSize, type Size, type SizeInput, type ThicknessInput } from './cuboid.js';
/** What stands in the box and takes air from it? */
export { type ContentsInput, estimatedDriverVolume } from './displaced-volume.js';
/** Does everything fit, and where? */
export { type FitInput, fit } from './fit.js';
/** How are things placed that fit? */
export type { Fit, Point } from './fitted.js';
/** What must fit? */
export type { DriverBodyInput, Layout, SpaceInput, VentBody, VentBodyInput } from './fit-input.js';
/** How long may a vent be at most? */
export { compileLongestVent, type LongestVentInput, longestVent } from './longest-vent.js';
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
