import type { Layout } from './fit-input.js';
import { compilePlaces } from './vent-places.js';

/**
 * Compiles a test for many boxes of whether the bodies of a layout fit together in a box without a vent. It takes the inner edges
 * as plain SI numbers, and agrees with `fit`.
 *
 * @validity as `fit`
 * @source own geometry of cylinders and cuboids
 * @example compileBodiesFit(layout)(0.3, 0.4, 0.35) // true
 */
export const compileBodiesFit = (layout: Omit<Layout, 'vent'>) =>
  compilePlaces({ ...layout, vent: { count: 1, faces: [4], bend: false, walls: 0 } }).alone;
