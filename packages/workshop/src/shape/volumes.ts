import { si, type Volume } from '@airspring/core/quantity';
import type { Size } from '@airspring/core/space';
import { areaOf, boundsOf } from '../outline/index.js';
import { axesOf, type BoxShape, type Layer } from './box-shape.js';

const volume = (layers: readonly Layer[]): Volume =>
  si(
    'volume',
    layers.reduce((sum, { outline, from, to }) => sum + areaOf(outline) * (to - from), 0),
  );

/**
 * The volume that a box takes up, panels included.
 *
 * $$V = \sum_i A_i\,\ell_i$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $A_i$ | m² | area of a section |
 * | $\ell_i$ | m | length of its layer |
 *
 * @validity exact for flat panels; an arc of straight sides has the area of its sector
 * @returns m³
 * @source own geometry of prisms
 * @example outerVolumeOf(shape) // 0.0561 m³ for a section of 935 cm² and 600 mm
 */
export const outerVolumeOf = ({ outer }: BoxShape): Volume => volume(outer);

/**
 * The volume within the panels of a box, with nothing in it. Core's `netVolumeWithin` takes off what is.
 *
 * $$V_i = \sum_i A_{w,i}\,\ell_{w,i}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $A_{w,i}$ | m² | area of a section within its panels |
 * | $\ell_{w,i}$ | m | length of its layer within the panels that close it |
 *
 * @validity as {@link outerVolumeOf}
 * @returns m³
 * @source own geometry of prisms
 * @example innerVolumeOf(shape) // m³
 */
export const innerVolumeOf = ({ inner }: BoxShape): Volume => volume(inner);

/**
 * The edges of the cuboid around a box.
 *
 * @validity any shape of this floor
 * @returns width, height, depth in m
 * @source own geometry of prisms
 * @example cuboidAround(shape).width // 0.6
 */
export function cuboidAround({ along, outer }: BoxShape): Size {
  const edges: [number, number, number] = [0, 0, 0];
  const [across, up, axis] = axesOf[along];
  for (const { outline, to } of outer) {
    const [, [right, high]] = boundsOf(outline);
    edges[across] = Math.max(edges[across]!, right);
    edges[up] = Math.max(edges[up]!, high);
    edges[axis] = to;
  }
  const [width, height, depth] = edges.map((edge) => si('length', edge));
  return { width: width!, height: height!, depth: depth! };
}
