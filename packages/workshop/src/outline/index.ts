/** How is a plane figure given, and how large is it? */
export { areaOf, type Outline, type PlanePoint } from './outline.js';
