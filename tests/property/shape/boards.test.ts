/** Boards sawn as the cut list says, laid where they stand: they fill the shell of the box, and none lies in another or in the air. */
import { si } from '@airspring/core/quantity';
import {
  boxShape,
  cylinder,
  innerVolumeOf,
  outerVolumeOf,
  panelsOf,
  quarterRound,
  type Section,
  type ShapePanel,
  underSeat,
  wheelArch,
} from '@airspring/workshop/shape';
import { expect, test as one } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

type Point = readonly [number, number];
const m = (metres: number) => si('length', metres);
const panelsIn = (section: Section, thickness: number) => {
  const shape = boxShape({ along: 'depth', outer: { ...section, length: '500 mm' }, thickness: m(thickness) });
  return shape.ok ? { shape, panels: panelsOf(shape) } : undefined;
};
const sub = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by];
const dot = ([ax, ay]: Point, [bx, by]: Point): number => ax * bx + ay * by;
const cross = ([ax, ay]: Point, [bx, by]: Point): number => ax * by - ay * bx;

/** By the rays that cross the sides. */
function isWithin(figure: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  figure.forEach(([ax, ay], i) => {
    const [bx, by] = figure[(i + 1) % figure.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}

/** The nearest point of a side to a point: how far away it is. */
function awayFrom(figure: readonly Point[], at: Point): number {
  return Math.min(
    ...figure.map((from, i) => {
      const step = sub(figure[(i + 1) % figure.length]!, from);
      const share = Math.min(1, Math.max(0, dot(sub(at, from), step) / dot(step, step)));
      return Math.hypot(...sub(at, [from[0] + share * step[0], from[1] + share * step[1]]));
    }),
  );
}

/** A flat board in the section, from its blank and the angles of its cuts alone: whether it holds a point, with a margin. */
function holds({ at, face, outline, inner, blank, thickness, angles }: ShapePanel, point: Point, margin: number) {
  const [from, to] = at.corners as [Point, Point];
  const step = sub(to, from);
  const wide = Math.hypot(...step);
  const along: Point = [step[0] / wide, step[1] / wide];
  const u = dot(sub(point, from), along);
  const v = cross(along, sub(point, from));
  // Sides and slants are drawn along the section, left and right along the depth: up is the section there.
  const k = face === 'left' || face === 'right' ? 1 : 0;
  const turned = face !== undefined && from[k] > to[k];
  const [near, far] = k === 1 ? [angles[0]!, angles[2]!] : [angles[3]!, angles[1]!];
  const [start, end] = turned ? [far, near] : [near, far];
  const least = Math.min(...[...outline, ...inner].map((corner) => corner[k]!));
  const blankFrom = turned ? wide - least - blank[k]! : least;
  return (
    v > margin &&
    v < thickness - margin &&
    u - v / Math.tan(start) > margin &&
    wide - u - v / Math.tan(end) > margin &&
    u > blankFrom &&
    u < blankFrom + blank[k]!
  );
}

/** Figures about a middle, with corners that point inwards as well. */
const figure = fc
  .array(fc.record({ step: fc.integer({ min: 5, max: 12 }), radius: fc.integer({ min: 22, max: 60 }) }), {
    minLength: 4,
    maxLength: 8,
  })
  .map((corners) => {
    const whole = corners.reduce((sum, { step }) => sum + step, 0);
    let turned = 0;
    return corners.map(({ step, radius }): Point => {
      turned += (2 * Math.PI * step) / whole;
      // In whole millimetres, off the axes.
      return [700 + Math.round(10 * radius * Math.cos(turned)), 700 + Math.round(10 * radius * Math.sin(turned))].map(
        (mm) => mm / 1e3,
      ) as unknown as Point;
    });
  });
const seat = underSeat({ across: '600 mm', up: '420 mm', front: '200 mm', step: '380 mm' });

test.prop([figure, fc.integer({ min: 9, max: 25 }), fc.double({ min: 0, max: 1, noNaN: true })], {
  numRuns: cases(60),
  examples: [[seat.outline.map(([x, y]) => [x, y] as unknown as Point), 15, 0.31]],
})('every point of the shell lies in one board, as sawn from its blank', (corners, mm, first) => {
  const made = panelsIn({ outline: corners.map(([x, y]) => [m(x), m(y)]) }, mm / 1e3);
  if (made === undefined) return;
  const { shape, panels } = made;
  const boards = panels.slice(0, -2);
  const { outline, within } = shape.outer[0]!;
  const [wide, high] = [0, 1].map((k) => Math.max(...outline.map((corner) => corner[k]!)));
  // A share of the golden ratio spreads the points evenly over the figure whatever the first draw is.
  for (let n = 0; n < 1500; n++) {
    const at: Point = [((first + n * 0.6180339887) % 1) * wide!, ((n + 0.5) / 1500) * high!];
    if (!isWithin(outline, at)) continue;
    const sure = boards.filter((board) => holds(board, at, 1e-7)).length;
    const perhaps = boards.filter((board) => holds(board, at, -1e-7)).length;
    expect(sure).toBeLessThanOrEqual(1);
    if (awayFrom(outline, at) < mm / 1e3 - 1e-6) expect(perhaps).toBeGreaterThanOrEqual(1);
    if (isWithin(within, at) && awayFrom(within, at) > 1e-6) expect(sure).toBe(0);
    if (!isWithin(within, at) && awayFrom(within, at) > 1e-6) expect(perhaps).toBeGreaterThanOrEqual(1);
  }
  const wood = panels.reduce((sum, { volume }) => sum + volume, 0);
  expect(wood).toBeCloseTo(outerVolumeOf(shape) - innerVolumeOf(shape), 12);
});

test.prop([figure, fc.integer({ min: 9, max: 25 })], { numRuns: cases(100) })(
  'a blank is as wide as half the angles at its ends ask for, and its wood is that between its surfaces',
  (corners, mm) => {
    const t = mm / 1e3;
    const made = panelsIn({ outline: corners.map(([x, y]) => [m(x), m(y)]) }, t);
    if (made === undefined) return;
    const boards = made.panels.slice(0, -2);
    const outer = made.shape.outer[0]!.outline;
    boards.forEach(({ outline, inner, blank, volume, at, face }, i) => {
      const [from, to] = at.corners as [Point, Point];
      const count = outer.length;
      const [before, after] = [outer[(i + count - 1) % count]!, outer[(i + 2) % count]!];
      /** The angle inside the box at a corner: above π where it points inwards. */
      const angle = (a: Point, b: Point, c: Point) => {
        const [back, on] = [sub(a, b), sub(c, b)];
        return (Math.atan2(cross(on, back), dot(on, back)) + 2 * Math.PI) % (2 * Math.PI);
      };
      const [start, end] = [angle(before, from, to), angle(from, to, after)].map((one) => t / Math.tan(one / 2));
      const wide = Math.hypot(...sub(to, from));
      const k = face === 'left' || face === 'right' ? 1 : 0;
      expect(blank[k]).toBeCloseTo(Math.max(wide, wide - end!) - Math.min(0, start!), 9);
      expect(blank[1 - k]).toBeCloseTo(0.5 - 2 * t, 9);
      // A prismatoid: both surfaces and the one halfway.
      const area = (surface: readonly Point[]) =>
        Math.abs(surface.reduce((sum, at, j) => sum + cross(at, surface[(j + 1) % surface.length]!), 0)) / 2;
      const halfway = outline.map(([x, y], j): Point => [(x + inner[j]![0]) / 2, (y + inner[j]![1]) / 2]);
      expect(volume).toBeCloseTo((t / 6) * (area(outline) + 4 * area(halfway) + area(inner)), 12);
    });
  },
);

one('under a seat both boards of the step are wider than their surfaces, by the thickness', () => {
  const { panels } = panelsIn(seat, 0.015)!;
  const widths = Object.fromEntries(panels.map(({ name, blank }) => [name, Math.round(1e4 * blank[0]) / 10]));
  expect(widths['step 1']).toBe(235);
  expect(widths['step 2']).toBe(395);
  expect(panels.find(({ name }) => name === 'step 1')!.meets).toEqual(['front', 'step 2', 'back', 'top']);
});

one('the surfaces of a bent panel are arcs, the hollow one is named, and the blank holds both', () => {
  const T = 0.015;
  const bent = (section: Section) => panelsIn(section, T)!.panels.find((panel) => panel.bent)!;
  const wide = (surface: readonly Point[]) => surface[1]![0] - surface[0]![0];
  const round = bent(cylinder({ diameter: '400 mm' }));
  expect(round.bent).toMatchObject({ hollow: 'inner' });
  expect(wide(round.outline)).toBeCloseTo(Math.PI * 0.4, 3);
  expect(wide(round.inner)).toBeCloseTo(Math.PI * 0.37, 3);
  expect(round.blank[0]).toBeCloseTo(wide(round.outline), 9);
  const front = bent(quarterRound({ radius: '400 mm' }));
  expect(front.bent).toMatchObject({ hollow: 'inner' });
  expect(front.bent!.turn).toBeCloseTo(Math.PI / 2, 3);
  expect(front.blank[0]).toBeCloseTo((Math.PI / 2) * 0.4, 3);
  // Over an arch the inner surface is the full one: it ends 15 mm above the bottom, and the outer one reaches past it by the mitres.
  const arch = bent(wheelArch({ across: '450 mm', up: '500 mm', arch: '300 mm' }));
  const within = (0.3 + T) * (Math.PI / 2 - 2 * Math.asin(T / (0.3 + T)));
  expect(arch.bent).toMatchObject({ hollow: 'outer' });
  expect(arch.bent!.turn).toBeCloseTo(Math.PI / 2, 9);
  expect(wide(arch.outline)).toBeCloseTo((Math.PI / 2) * 0.3, 3);
  expect(wide(arch.inner)).toBeCloseTo(within, 3);
  expect(Math.abs(arch.blank[0] - (within + 2 * T))).toBeLessThan(1e-3);
  expect(arch.blank[0]).toBeGreaterThan(wide(arch.outline));
});
