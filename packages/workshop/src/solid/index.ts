/** How can a duct widen at its ends? */
export { ellipticFlare, exponentialFlare, type Flare, type FlareSizes, flareThrough, roundFlare } from './flare.js';
/** Which solid is a printed vent? */
export { type VentSolid, ventSolid } from './vent-solid.js';
export type { BendAfterInput, FlangeInput, ScrewsInput, VentDrawing, VentSolidInput } from './vent-drawing.js';
