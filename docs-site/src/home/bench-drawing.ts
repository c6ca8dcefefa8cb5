import { along, outwards } from '../figures/box-geometry.js';
import { html, type Markup } from '../html.js';
import { type Bench, driver, outer, type Point, thickness, wall } from './bench.js';

const [YAW, PITCH] = [0.44, 0.3];
const WIDTH = 648;
const SCALE = 730;
/** The seat: how far it stands out at the sides and in front, and its board. */
const seat = { side: 0.17, front: 0.03, board: 0.03 } as const;
const MARGIN = { left: 8, top: 12, right: 8, bottom: 10 };

type Flat = readonly [x: number, y: number];

const [cosYaw, sinYaw, cosPitch, sinPitch] = [Math.cos(YAW), Math.sin(YAW), Math.cos(PITCH), Math.sin(PITCH)];
/** Towards the eye: before, to the right of, and above the bench. Parallel lines stay parallel. */
const eye: Point = [sinYaw * cosPitch, sinPitch, -cosYaw * cosPitch];
const onPaper = ([x, y, z]: Point): Flat => [
  SCALE * (cosYaw * x + sinYaw * z),
  -SCALE * (-sinYaw * sinPitch * x + cosPitch * y + cosYaw * sinPitch * z),
];

const px = ([x, y]: Flat): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
const path = (points: readonly Point[]): string => `M${points.map((point) => px(onPaper(point))).join('L')}`;
const area = (points: readonly Point[]): string => `${path(points)}Z`;

/** Six sides of a block, those behind first. */
function block([x0, y0, z0]: Point, [x1, y1, z1]: Point) {
  const side = (...points: Point[]) => points;
  return {
    behind: [
      side([x0, y0, z1], [x1, y0, z1], [x1, y1, z1], [x0, y1, z1]),
      side([x0, y0, z0], [x0, y0, z1], [x0, y1, z1], [x0, y1, z0]),
      side([x0, y0, z0], [x1, y0, z0], [x1, y0, z1], [x0, y0, z1]),
    ],
    before: [
      side([x0, y1, z0], [x1, y1, z0], [x1, y1, z1], [x0, y1, z1]),
      side([x1, y0, z0], [x1, y0, z1], [x1, y1, z1], [x1, y1, z0]),
      side([x0, y0, z0], [x1, y0, z0], [x1, y1, z0], [x0, y1, z0]),
    ],
  };
}

const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** A circle across a direction. */
function circle(centre: Point, direction: Point, diameter: number, points = 32): Point[] {
  const aside: Point = Math.abs(direction[1]) > 0.9 ? [1, 0, 0] : [0, 1, 0];
  const a = cross(direction, aside);
  const b = cross(direction, a);
  return Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return along(along(centre, a, (Math.cos(angle) * diameter) / 2), b, (Math.sin(angle) * diameter) / 2);
  });
}

/** The outline around some points on paper. */
function hull(points: readonly Flat[]): Flat[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const turns = (o: Flat, a: Flat, b: Flat) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  const half = (list: readonly Flat[]) => {
    const found: Flat[] = [];
    for (const point of list) {
      while (found.length > 1 && turns(found.at(-2) as Flat, found.at(-1) as Flat, point) <= 0) found.pop();
      found.push(point);
    }
    return found.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
const solid = (...circles: readonly Point[][]): string => `M${hull(circles.flat().map(onPaper)).map(px).join('L')}Z`;

/** The centre line: straight, an arc in short chords, straight. */
function centreLine({ at, length = 0, bend, diameter }: Bench): Point[] {
  const inwards: Point = [0, 0, 1];
  if (!bend) return [at, along(at, inwards, length)];
  const radius = diameter + 2 * wall;
  const turn = outwards[bend.towards];
  const start = along(at, inwards, bend.firstLeg);
  const arc = Array.from({ length: 13 }, (_, i) => {
    const angle = (i / 12) * (Math.PI / 2);
    return along(along(start, inwards, radius * Math.sin(angle)), turn, radius * (1 - Math.cos(angle)));
  });
  return [at, ...arc, along(arc.at(-1) as Point, turn, bend.secondLeg)];
}

/** A tube seen along parallel lines is everywhere as wide as it is. */
function tube(bench: Bench): Markup {
  const line = centreLine(bench);
  const [end, before] = [line.at(-1) as Point, line.at(-2) as Point];
  const [dx, dy, dz] = [end[0] - before[0], end[1] - before[1], end[2] - before[2]];
  const size = Math.hypot(dx, dy, dz) || 1;
  const direction: Point = [dx / size, dy / size, dz / size];
  const seen = direction[0] * eye[0] + direction[1] * eye[1] + direction[2] * eye[2] > 0;
  const [out, bore] = [bench.diameter + 2 * wall, bench.diameter];
  const stroke = (width: number, part: string) =>
    html`<path class="${part}" d="${path(line)}" stroke-width="${(width * SCALE).toFixed(1)}"/>`;
  return html`<g class="${bench.fits ? 'vent-fits' : 'vent-out'}"><path class="cap" d="${area(circle(end, direction, out))}"/>${stroke(out, 'skin')}${stroke(out - 2.6 / SCALE, 'inside')}
<path class="cover" d="${area(circle(end, direction, out - 2.6 / SCALE))}"/><path class="centre" d="${path(line)}"/>${seen && html`<path class="cap" d="${area(circle(end, direction, out))}"/><path class="hollow" d="${area(circle(end, direction, bore))}"/>`}
<path class="cap" d="${area(circle(bench.at, [0, 0, -1], out))}"/><path class="hollow" d="${area(circle(bench.at, [0, 0, -1], bore))}"/></g>`;
}

/** Cone and magnet behind the front, and the rim that one sees. */
function speaker({ driverAt }: Bench): Markup {
  const back: Point = [0, 0, 1];
  const ring = (depth: number, diameter: number) => circle(along(driverAt, back, depth), back, diameter);
  const { outerDiameter, cutoutDiameter, depth } = driver;
  const neck = 0.42 * cutoutDiameter;
  return html`<path class="basket" d="${solid(ring(thickness, cutoutDiameter), ring(0.6 * depth, neck))}"/><path class="magnet" d="${solid(ring(0.6 * depth, 0.56 * cutoutDiameter), ring(depth, 0.56 * cutoutDiameter))}"/>
<path class="rim" d="${area(ring(0, outerDiameter))}"/><path class="cone" d="${area(ring(0, 0.84 * cutoutDiameter))}"/><path class="cap-of-cone" d="${area(ring(0.004, 0.3 * cutoutDiameter))}"/>`;
}

/** The bench, its box as if of glass: the vent bends, and turns red where it sticks out. */
export function drawBench(bench: Bench, label: string): string {
  const { width, height, depth } = outer;
  const box = block([0, 0, 0], [width, height, depth]);
  const t = thickness;
  const inner = block([t, t, t], [width - t, height - t, depth - t]);
  const plank = block([-seat.side, height, -seat.front], [width + seat.side, height + seat.board, depth]);
  const leg = (from: number) => block([from, 0, 0.02], [from + seat.board, height, depth - 0.02]);
  const legs = [leg(-seat.side + 0.02), leg(width + seat.side - 0.02 - seat.board)];
  const faces = (list: readonly Point[][], part: string) =>
    list.map((points) => html`<path class="${part}" d="${area(points)}"/>`);
  const [left, right, top, low] = [
    onPaper([-seat.side, 0, 0])[0] - MARGIN.left,
    onPaper([width + seat.side, 0, depth])[0] + MARGIN.right,
    onPaper([-seat.side, height + seat.board, depth])[1] - MARGIN.top,
    onPaper([width + seat.side, 0, 0.02])[1] + MARGIN.bottom,
  ];
  const lowest = Math.max(
    low,
    onPaper([-seat.side, 0, 0.02])[1] + MARGIN.bottom,
    onPaper([width, 0, 0])[1] + MARGIN.bottom,
  );
  const view = [left, top, right - left, lowest - top].map((value) => value.toFixed(1)).join(' ');
  return html`<svg class="bench-drawing" role="img" aria-label="${label}" width="${WIDTH}" height="${Math.round((WIDTH * (lowest - top)) / (right - left))}" viewBox="${view}" xmlns="http://www.w3.org/2000/svg">
${faces(legs[0]!.before, 'leg')}${faces(legs[1]!.before, 'leg')}${faces(plank.before, 'plank')}${faces(box.behind, 'back')}${faces(inner.behind, 'inner')}
${bench.length !== undefined && tube(bench)}${speaker(bench)}${faces(box.before, 'glass')}</svg>`.markup;
}
