import type { Mesh } from './mesh.js';

/** A point in space, m. */
export type SpacePoint = readonly [x: number, y: number, z: number];

/** The cuboid along the axes that just holds a solid. */
export interface Extent {
  readonly least: SpacePoint;
  readonly greatest: SpacePoint;
  /** Its edges along x, y and z, m. */
  readonly edges: SpacePoint;
  /** Its longest edge, m. */
  readonly longest: number;
}

/**
 * The cuboid along the axes that just holds a solid: the bed and the height that a printer needs for it.
 *
 * @validity any surface with at least one corner
 * @source own derivation: the least and the greatest coordinate along each axis
 * @example extentOf(tetrahedron).edges // [1, 1, 1] for corners at the origin and one metre along each axis
 */
export function extentOf({ corners }: Mesh): Extent {
  const least: [number, number, number] = [Infinity, Infinity, Infinity];
  const greatest: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < corners.length; i++) {
    const axis = i % 3;
    if (corners[i]! < least[axis]!) least[axis] = corners[i]!;
    if (corners[i]! > greatest[axis]!) greatest[axis] = corners[i]!;
  }
  const edges: SpacePoint = [greatest[0] - least[0], greatest[1] - least[1], greatest[2] - least[2]];
  return { least, greatest, edges, longest: Math.max(...edges) };
}
