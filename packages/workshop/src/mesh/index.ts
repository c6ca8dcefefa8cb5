/** How is the surface of a solid given, and how much does it enclose? */
export { type Mesh, volumeOf } from './mesh.js';
