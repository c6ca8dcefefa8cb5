import type { Layout } from './fit-input.js';
import { compilePlaces } from './vent-places.js';

/**
 * Compiles whether the bodies of a layout find room together in a box without a vent, for many boxes: inner edges in. Plain
 * SI numbers; says what `fit` says of the same box.
 *
 * @validity as `fit`
 * @source own geometry of cylinders and cuboids
 * @example compileBodiesFit(layout)(0.3, 0.4, 0.35) // true
 */
export const compileBodiesFit = (layout: Omit<Layout, 'vent'>) =>
  compilePlaces({ ...layout, vent: { count: 1, faces: [4], bend: false, walls: 0 } }).alone;
