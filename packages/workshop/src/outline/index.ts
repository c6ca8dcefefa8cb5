/** How is a plane figure given, and how large is it? */
export { areaOf, type Outline, type PlanePoint } from './outline.js';
/** How is a figure read as people write it, and what is wrong with one that crosses itself? */
export { type OutlineInput, outlineField, type PointInput } from './read-outline.js';
/** How long is the way around a figure, where does it balance, and which rectangle holds it? */
export { boundsOf, centroidOf, perimeterOf } from './measures.js';
/** How far is a point inside a figure from its edge? */
export { clearanceAt } from './contains.js';
/** How is an arc given as straight sides of the same area? */
export { type Arc, arcCorners, DEVIATION } from './arc.js';
/** What do panels along the sides of a figure leave within? */
export { type Inset, insetOf } from './inset.js';
