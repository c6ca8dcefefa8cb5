/** How is the surface of a solid given, and how much does it enclose? */
export { type Mesh, type Part, surfaceOf, volumeOf } from './mesh.js';
/** How large is a solid? */
export { type Extent, extentOf, type SpacePoint } from './extent.js';
/** Is a surface that of a solid? */
export { meshFaults } from './mesh-faults.js';
/** Which files does a printer's program read? */
export { stl } from './stl.js';
export { threeMf } from './three-mf.js';
/** What does a solid look like? */
export { preview, type View } from './preview.js';
/** Does a surface run through itself? */
export { type Crossing, crossings } from './crossings.js';
/** In which figures does a plane cut a solid? */
export { type Plane, sliceOf } from './slice.js';
