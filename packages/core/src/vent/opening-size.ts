import type { Opening } from '../duct/index.js';

/** Sides of an opening that is not round, from the radius of the circle of its area and the ratio of its sides. */
export function sidesOf({ radius, aspect = 1 }: Opening): readonly [width: number, height: number] {
  const height = Math.sqrt((Math.PI * radius ** 2) / aspect);
  return [aspect * height, height];
}

/** Four times the area over the perimeter, m: the diameter of a round opening, and what stands for it in a slot. */
export function hydraulicDiameter(opening: Opening): number {
  if (opening.aspect === undefined) return 2 * opening.radius;
  const [width, height] = sidesOf(opening);
  return (2 * width * height) / (width + height);
}
