import type { PlanePoint } from '../outline/index.js';

/**
 * The outer line of a wall of even thickness around a duct: where the duct widens it follows at the distance of the wall, and
 * around a sharp mouth it is round. Points are [along, offset]; both lines run from one end of the duct to the other.
 */
export function wallAround(duct: readonly PlanePoint[], wall: number, chord: number): readonly PlanePoint[] {
  const directions = duct.slice(1).map((point, i) => direction(duct[i]!, point));
  const found: PlanePoint[] = [];
  const put = ([along, offset]: PlanePoint, [x, y]: PlanePoint, by: number) =>
    found.push([along - by * y, offset + by * x]);
  const last = duct.length - 1;
  for (const [i, point] of duct.entries()) {
    const [before, after] = [directions[i - 1] ?? directions[0]!, directions[i] ?? directions[last - 1]!];
    // Half the turn of the wall at a corner: the outer line is at the distance of the wall from both its sides.
    const half = Math.sqrt((1 + before[0] * after[0] + before[1] * after[1]) / 2);
    const mean = direction([0, 0], [before[0] + after[0], before[1] + after[1]]);
    if (i === 0) roundMouth(point, after, 1);
    put(point, mean, wall / Math.max(half, LEAST_HALF));
    if (i === last) roundMouth(point, before, -1);
  }

  /** Points around the edge of a mouth, from the end of the duct to the side of the wall. */
  function roundMouth(edge: PlanePoint, along: PlanePoint, end: 1 | -1): void {
    const slope = -end * Math.atan2(along[1], along[0]);
    if (slope <= 0) return;
    const steps = Math.max(1, Math.ceil(slope / (2 * Math.acos(1 - Math.min(1, chord / wall)))));
    const angles = Array.from({ length: steps }, (_, i) => (slope * i) / steps);
    for (const angle of end > 0 ? angles : angles.reverse())
      found.push([edge[0] + end * wall * Math.sin(angle), edge[1] + wall * Math.cos(angle)]);
  }

  const [from, to] = [duct[0]![0], duct[last]![0]];
  const kept = found.filter(
    (point) =>
      point[0] >= from &&
      point[0] <= to &&
      duct.every((corner, i) => i === 0 || distance(point, duct[i - 1]!, corner) >= wall * (1 - 1e-4)),
  );
  return closedAt(
    kept.sort((one, other) => one[0] - other[0]),
    from,
    to,
  );
}

/** The sharpest corner at which the outer line is still a corner: the wall is thinner at a sharper one. */
const LEAST_HALF = 0.5;

/** Continues the line straight to both ends, and leaves out points that nearly coincide. */
function closedAt(line: readonly PlanePoint[], from: number, to: number): readonly PlanePoint[] {
  const whole: PlanePoint[] = [[from, line[0]![1]]];
  for (const point of [...line, [to, line.at(-1)![1]] as const]) {
    const [along, offset] = whole.at(-1)!;
    if (Math.hypot(point[0] - along, point[1] - offset) > APART) whole.push(point);
  }
  whole[whole.length - 1] = [to, whole.at(-1)![1]];
  return whole;
}

/** Points that are nearer are one, m. */
const APART = 2e-7;

const direction = ([x, y]: PlanePoint, [toX, toY]: PlanePoint): PlanePoint => {
  const long = Math.hypot(toX - x, toY - y) || 1;
  return [(toX - x) / long, (toY - y) / long];
};

function distance([x, y]: PlanePoint, [fromX, fromY]: PlanePoint, [toX, toY]: PlanePoint): number {
  const [alongX, alongY] = [toX - fromX, toY - fromY];
  const square = alongX * alongX + alongY * alongY;
  const part = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - fromX) * alongX + (y - fromY) * alongY) / square));
  return Math.hypot(x - fromX - part * alongX, y - fromY - part * alongY);
}
