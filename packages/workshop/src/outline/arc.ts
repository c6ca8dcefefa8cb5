import type { PlanePoint } from './outline.js';

/** An arc about a centre, from one direction to another; counter-clockwise where the second angle is the greater one. */
export interface Arc {
  readonly centre: PlanePoint;
  /** m. */
  readonly radius: number;
  /** Directions of its ends as seen from the centre, rad. */
  readonly from: number;
  readonly to: number;
}

/** A tenth of a millimetre, finer than a saw follows a line, m. */
export const DEVIATION = 1e-4;
/** A side turns by no more than this, rad. */
const MOST_TURN = Math.PI / 12;

/**
 * The corners of an arc as short equal sides, both ends included. Each corner lies a little outside the circle, and the middle of each
 * side a little inside, so that the sector has exactly the area of that of the circle.
 *
 * $$r' = r\sqrt{\frac{\theta}{\sin\theta}}, \qquad \theta = \frac{|\varphi_2-\varphi_1|}{n} \le \sqrt{\frac{11.9\,\delta}{r}}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $r$ | m | radius of the arc |
 * | $r'$ | m | distance of its corners from the centre |
 * | $\varphi_1$, $\varphi_2$ | rad | directions of its ends |
 * | $n$ | 1 | number of sides |
 * | $\delta$ | m | no point of a side is farther from the circle than this |
 *
 * @validity a turn of at most 15° a side, however coarse the deviation
 * @source own geometry: equal areas of a sector and its triangles
 * @example arcCorners({ centre: [0, 0], radius: 0.15, from: 0, to: 2 * Math.PI }).length // 72
 */
export function arcCorners({ centre: [x, y], radius, from, to }: Arc, deviation = DEVIATION): PlanePoint[] {
  const angle = Math.abs(to - from);
  const most = Math.min(MOST_TURN, Math.sqrt((11.9 * deviation) / radius));
  const sides = Math.max(1, Math.ceil(angle / most - 1e-9));
  const step = angle / sides;
  const out = radius * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: sides + 1 }, (_, i): PlanePoint => {
    const direction = from + ((to - from) * i) / sides;
    return [x + out * Math.cos(direction), y + out * Math.sin(direction)];
  });
}
