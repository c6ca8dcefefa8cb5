import { si } from '@airspring/core/quantity';
import {
  collisions,
  cuboidInterior,
  type Face,
  type FitInput,
  faces,
  fit,
  type Interior,
  longestVent,
  type RoundBodyInput,
  type Solid,
} from '@airspring/core/space';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

// Interiors that no package knows: a box whose front leans back, and a round column. What stands in them is looked at point by
// point, and what is refused in them is looked for at random.
type Vec = readonly [number, number, number];
type Point = (p: Vec, margin: number) => boolean;
interface Shape {
  readonly interior: Interior;
  /** Whether a point is inside, or at most the margin outside: written from the shape, not from `contains`. */
  readonly holds: Point;
}
const T = 0.018;
const metres = (x: number) => si('length', x);

type Size = { readonly width: number; readonly height: number; readonly depth: number };

/** The front wall inside is z = T + slope (y − T). */
function leaning({ width, height, depth }: Size, slope: number): Shape {
  const outer = { width: metres(width), height: metres(height), depth: metres(depth) };
  const cuboid = cuboidInterior({ outer, thickness: metres(T) });
  /** How far the nearest point of a solid is behind the front wall, along z. */
  const behind = ({ form, axis, least, greatest }: Solid) => {
    if (form === 'cuboid' || axis !== 'x') return least[2] - T - slope * (greatest[1] - T);
    const [y, z] = [(least[1] + greatest[1]) / 2, (least[2] + greatest[2]) / 2];
    return z - T - slope * (y - T) - ((greatest[1] - least[1]) / 2) * Math.hypot(1, slope);
  };
  return {
    interior: {
      faces: slope === 0 ? faces : faces.filter((face) => face !== 'front'),
      contains: (solid) => cuboid.contains(solid) && behind(solid) > -1e-9,
      way: (solid, towards) => {
        const way = cuboid.way(solid, towards);
        if (towards === 'front') return metres(Math.min(way, behind(solid)));
        return metres(towards === 'top' && slope > 0 ? Math.min(way, behind(solid) / slope) : way);
      },
    },
    holds: ([x, y, z], margin) =>
      Math.min(x - T, width - T - x, y - T, height - T - y, depth - T - z, z - T - slope * (y - T)) > -margin,
  };
}

/** A round column that stands upright. */
function column({ width, height, depth }: Size): Shape {
  const outer = { width: metres(width), height: metres(height), depth: metres(depth) };
  const cuboid = cuboidInterior({ outer, thickness: metres(T) });
  const radius = Math.min(width, depth) / 2 - T;
  const contains = (solid: Solid) => {
    if (!cuboid.contains(solid)) return false;
    const { form, axis, least, greatest } = solid;
    const [x, z] = [width / 2, depth / 2];
    if (form === 'cylinder' && axis === 'y') {
      const away = Math.hypot((least[0] + greatest[0]) / 2 - x, (least[2] + greatest[2]) / 2 - z);
      return away + (greatest[0] - least[0]) / 2 < radius + 1e-9;
    }
    const far = (k: 0 | 2, middle: number) => Math.max(Math.abs(least[k] - middle), Math.abs(greatest[k] - middle));
    return Math.hypot(far(0, x), far(2, z)) < radius + 1e-9;
  };
  /** As far as the nearest wall of the cuboid, or as its farthest point across the way is from the circle. */
  const way: Interior['way'] = (solid, towards) => {
    const axis = faces.indexOf(towards) >> 1;
    const most = cuboid.way(solid, towards) as number;
    if (axis === 1) return metres(most);
    const { form, least, greatest } = solid;
    const other = axis === 0 ? 2 : 0;
    const [x, z] = [axis === 0 ? width / 2 : depth / 2, other === 0 ? width / 2 : depth / 2];
    const middle = (k: 0 | 1 | 2) => (least[k] + greatest[k]) / 2;
    const half = (k: 0 | 1 | 2) => (greatest[k] - least[k]) / 2;
    const upright = form === 'cylinder' && solid.axis === 'y';
    const [R, far] = upright ? [radius - half(0), 0] : [radius, half(other)];
    const chord = Math.sqrt(Math.max(0, (R + 1e-9) ** 2 - (Math.abs(middle(other) - z) + far) ** 2));
    const off = (faces.indexOf(towards) & 1 ? 1 : -1) * (middle(axis as 0) - x);
    return metres(Math.max(0, Math.min(most, chord - off - (upright ? 0 : half(axis as 0)))));
  };
  return {
    interior: { faces: ['bottom', 'top'], contains, way },
    holds: ([x, y, z], margin) =>
      Math.min(y - T, height - T - y, radius - Math.hypot(x - width / 2, z - depth / 2)) > -margin,
  };
}

function inside(p: Vec, { form, axis, least, greatest }: Solid, margin: number): boolean {
  if (!p.every((x, k) => x > least[k]! + margin && x < greatest[k]! - margin)) return false;
  if (form === 'cuboid') return true;
  const across = [0, 1, 2].filter((k) => 'xyz'[k] !== axis);
  const radius = (greatest[across[0]!]! - least[across[0]!]!) / 2;
  return Math.hypot(...across.map((k) => p[k]! - (least[k]! + greatest[k]!) / 2)) < radius - margin;
}

const generator = (seed: number) => () => {
  seed = (seed * 1664525 + 1013904223) >>> 0;
  return seed / 2 ** 32;
};

const length = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e3), max: Math.round(max * 1e3) }).map((mm) => mm / 1e3);
const some = fc.record({
  size: fc.record({ width: length(0.2, 0.45), height: length(0.25, 0.6), depth: length(0.25, 0.45) }),
  slope: fc.constantFrom(0.1, 0.2, 0.35, 0.5),
  cutout: length(0.08, 0.2),
  body: length(0.03, 0.16),
  two: fc.constantFrom(false, false, false, false, true),
  on: fc.constantFrom<Face>('left', 'right', 'bottom', 'top', 'back'),
  face: fc.constantFrom<Face>('left', 'right', 'bottom', 'top', 'back'),
  vent: fc.record({ diameter: length(0.03, 0.09), length: length(0.05, 0.6) }),
  seed: fc.nat(),
});
type Some = typeof some extends fc.Arbitrary<infer S> ? S : never;

const upright = (face: Face): Face => (face === 'top' || face === 'back' ? 'top' : 'bottom');
function spaceIn({ interior }: Shape, { size, cutout, body, two, on, face, vent }: Some, round = false) {
  const driver: RoundBodyInput = {
    outerDiameter: metres(cutout),
    cutoutDiameter: metres(cutout),
    depth: metres(body),
    faces: [round ? upright(on) : on],
  };
  return {
    outer: { width: metres(size.width), height: metres(size.height), depth: metres(size.depth) },
    thickness: metres(T),
    edgeMargin: metres(0),
    cutoutMargin: metres(0),
    gap: metres(0),
    driver: two ? [driver, driver] : driver,
    vent: {
      diameter: metres(vent.diameter),
      wall: metres(0),
      flangeDiameter: metres(vent.diameter),
      bendRadius: metres(vent.diameter),
      clearance: metres(vent.diameter),
      length: metres(vent.length),
      faces: [round ? upright(face) : face],
    },
    interior,
  } satisfies FitInput;
}

function lookAt({ interior, holds }: Shape, input: FitInput, seed: number): void {
  const found = fit(input);
  if (!found.ok) return;
  const random = generator(seed);
  expect(collisions(interior, found.solids)).toEqual([]);
  for (const one of found.solids) {
    for (let n = 0; n < 150; n++) {
      const p = one.least.map((low, k) => low + random() * (one.greatest[k]! - low)) as unknown as Vec;
      if (!inside(p, one, 0)) continue;
      expect(holds(p, 1e-8)).toBe(true);
      if (one.part !== 'driver') continue;
      expect(found.solids.some((two) => two !== one && inside(p, two, 1e-6))).toBe(false);
    }
  }
  for (const { depthLeft, face } of found.placement.drivers) {
    // Every driver can be as much deeper as it says.
    for (const one of found.solids.filter(({ part }) => part === 'driver')) {
      const axis = faces.indexOf(face) >> 1;
      const end = faces.indexOf(face) & 1 ? 'least' : 'greatest';
      const by = end === 'least' ? -found.slack.driverDepth : found.slack.driverDepth;
      const deeper = { ...one, [end]: one[end].map((at, k) => (k === axis ? at + by : at)) } as Solid;
      expect(interior.contains(deeper)).toBe(true);
      expect(depthLeft).toBeGreaterThanOrEqual(0);
    }
  }
}

test.prop([some], { numRuns: cases(40) })('what stands behind a leaning front is inside, point by point', (one) => {
  const shape = leaning(one.size, one.slope);
  lookAt(shape, spaceIn(shape, one), one.seed);
});

// A search in a column takes long where several bodies stand in it.
test.prop([some], { numRuns: 3 })('what stands in a round column is inside, point by point', (one) => {
  const shape = column(one.size);
  lookAt(shape, spaceIn(shape, one, true), one.seed);
});

test.prop([some], { numRuns: cases(30) })('a front that leans by nothing is the cuboid', (one) => {
  const { interior, ...space } = spaceIn(leaning(one.size, 0), one);
  const [own, cuboid] = [fit({ ...space, interior }), fit(space)];
  expect(own.ok).toBe(cuboid.ok);
  const lengths = (input: FitInput) => Object.values(longestVent(input as never)).map((x) => Math.round(x * 1e7));
  const { length: _, ...vent } = space.vent;
  const longest = [
    { ...space, vent, interior },
    { ...space, vent },
  ].map((input) => lengths(input as never));
  for (const k of [0, 1]) expect(longest[0]![k]).toBeGreaterThanOrEqual(longest[1]![k]! - 1);
  if (!one.two) expect(longest[0]).toEqual(longest[1]);
});

/** The longest of many random straight vents beside one driver, judged by the solids alone. */
function thrown(shape: Shape, input: ReturnType<typeof spaceIn>, size: Vec, random: () => number) {
  let found = 0;
  const driver = input.driver as RoundBodyInput;
  const solid = (part: Solid['part'], round: number, low: number[], high: number[]): Solid => ({
    part,
    form: 'cylinder',
    axis: 'xyz'[round] as 'x',
    least: low.map((at, k) => Math.min(at, high[k]!)) as never,
    greatest: high.map((at, k) => Math.max(at, low[k]!)) as never,
  });
  const clear = (...solids: Solid[]) => collisions(shape.interior, solids).length === 0;
  for (let n = 0; n < 400; n++) {
    const place = (face: Face, half: number) =>
      size.map((edge, k) => {
        if (k === faces.indexOf(face) >> 1) return faces.indexOf(face) & 1 ? edge - T : T;
        const share = [0, 1, random(), random()][Math.floor(4 * random())]!;
        return T + half + share * (edge - 2 * T - 2 * half);
      });
    const inward = (face: Face) => (faces.indexOf(face) & 1 ? -1 : 1);
    const on = driver.faces![0]!;
    const axis = faces.indexOf(on) >> 1;
    const half = (driver.cutoutDiameter as number) / 2;
    const at = place(on, half);
    const reach = (driver.depth as number) - T;
    const low = at.map((x, k) => (k === axis ? x : x - half));
    const high = at.map((x, k) => (k === axis ? x + inward(on) * reach : x + half));
    const body = solid('driver', axis, low, high);
    if (!clear(body)) continue;
    const face = input.vent.faces[0]!;
    const a = faces.indexOf(face) >> 1;
    const r = (input.vent.diameter as number) / 2;
    const clearance = input.vent.clearance as number;
    const start = place(face, r);
    const tube = (length: number) =>
      solid(
        'vent',
        a,
        start.map((x, k) => (k === a ? x : x - r)),
        start.map((x, k) => (k === a ? x + inward(face) * (length + clearance) : x + r)),
      );
    if (!clear(body, tube(1e-6))) continue;
    let [short, long] = [1e-6, size[a]!];
    while (long - short > 1e-5) {
      const middle = (short + long) / 2;
      if (clear(body, tube(middle))) short = middle;
      else long = middle;
    }
    found = Math.max(found, T + short);
  }
  return found;
}

test.prop([some], { numRuns: cases(30) })(
  'no straight vent thrown behind a leaning front, or in a column, is longer than the longest',
  (one) => {
    for (const shape of [leaning(one.size, one.slope), column(one.size)]) {
      const input = spaceIn(shape, { ...one, two: false }, shape.interior.faces.length === 2);
      const { length: _, ...vent } = input.vent;
      const random = thrown(shape, input, Object.values(one.size) as never, generator(one.seed));
      const longest = longestVent({ ...input, vent });
      expect(random).toBeLessThan(longest.straight + 1e-4);
    }
  },
  60_000,
);

test('what stands in them by numbers that a pencil finds', () => {
  const size = { width: 0.4, height: 0.436, depth: 0.436 };
  const driver = { outerDiameter: '100 mm', cutoutDiameter: '100 mm', depth: '58 mm', faces: ['top'] } as const;
  const margins = { edgeMargin: '0 mm', cutoutMargin: '0 mm', gap: '0 mm' } as const;
  const box = {
    outer: { width: '400 mm', height: '436 mm', depth: '436 mm' },
    thickness: '18 mm',
    ...margins,
  } as const;
  const tube = { diameter: '60 mm', wall: '0 mm', flangeDiameter: '60 mm', clearance: '60 mm' } as const;
  const { interior } = leaning(size, 0.5);
  // At its lower edge, from 0 to 60 mm high, a vent from the back has 400 − 0.5 × 60 mm; panel 18, clearance 60.
  const vent = { ...tube, faces: ['back'], bends: 'straight' } as const;
  expect(longestVent({ ...box, driver, vent, interior }).straight).toBeCloseTo(0.328, 6);
  expect(longestVent({ ...box, driver, vent }).straight).toBeCloseTo(0.358, 6);
  // Inside a column of radius 182 mm; the frame reaches over the walls.
  const round = column(size).interior;
  const wide = (cutoutDiameter: string) =>
    fit({ ...box, driver: { ...driver, outerDiameter: '370 mm', cutoutDiameter }, interior: round } as FitInput);
  expect(wide('363.9 mm').ok).toBe(true);
  expect(wide('364 mm')).toMatchObject({ ok: true, slack: { cutout: expect.closeTo(0, 6) } });
  const deep = fit({ ...box, driver, interior: round });
  expect(deep).toMatchObject({ ok: true, slack: { driverDepth: expect.closeTo(0.36, 9) } });
  // Two of 190 mm side by side need a circle of 380 mm, and the cuboid has room for them in two corners.
  const two = { ...driver, outerDiameter: '190 mm', cutoutDiameter: '190 mm', depth: '400 mm' };
  const pair = [two, { ...two, faces: ['bottom'] }] as FitInput['driver'];
  expect(fit({ ...box, outer: { ...box.outer, depth: '500 mm' }, driver: pair }).ok).toBe(true);
  expect(fit({ ...box, outer: { ...box.outer, depth: '500 mm' }, driver: pair, interior: round })).toMatchObject({
    ok: false,
    because: [{ code: 'no-room-together', text: expect.stringContaining('do not fit in the interior') }],
  });
});

test('a part on a wall that leans, a slot along it, and half an interior are refused by name', () => {
  const { interior } = leaning({ width: 0.4, height: 0.4, depth: 0.4 }, 0.3);
  const box = { outer: { width: '400 mm', height: '400 mm', depth: '400 mm' }, thickness: '18 mm' } as const;
  const driver = { outerDiameter: '100 mm', cutoutDiameter: '90 mm', depth: '58 mm' } as const;
  expect(() => fit({ ...box, driver, interior })).toThrow(/space\.driver\.faces/);
  expect(() => fit({ ...box, driver: [{ ...driver, faces: ['top'] }, driver], interior })).toThrow(
    /space\.driver\[1\]\.faces/,
  );
  const slot = { longSide: '200 mm', shortSide: '30 mm', along: 'one', length: '200 mm', faces: ['top'] } as const;
  const on = { ...driver, faces: ['top'] } as const;
  expect(() => fit({ ...box, driver: on, vent: slot as never, interior })).toThrow(/space\.vent\.along/);
  const half = { faces: ['top'], contains: () => true } as never;
  expect(() => fit({ ...box, driver: on, interior: half })).toThrow(/space\.interior.*contains and way/s);
});
