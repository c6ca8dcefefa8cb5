import { si } from '@airspring/core/quantity';
import { faces, fit, type Interior, type Solid } from '@airspring/core/space';
import {
  type BoxShape,
  boxShape,
  cuboidAround,
  cylinder,
  innerVolumeOf,
  interiorOf,
  outerVolumeOf,
  panelsOf,
  type Section,
  underSeat,
  wedge,
  wheelArch,
} from '@airspring/workshop/shape';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const T = 0.018;
const m = (metres: number) => si('length', metres);
const made = (section: Section, along: 'width' | 'height' | 'depth', length: number): BoxShape => {
  const shape = boxShape({ along, outer: { ...section, length: m(length) }, thickness: m(T) });
  if (!shape.ok) throw new Error(shape.because[0]?.text);
  return shape;
};
/** Whether a point of the section is inside, or at most the margin outside: by exact curves, not by corners. */
type Exact = (across: number, up: number, margin: number) => boolean;
const boxes: readonly {
  readonly shape: BoxShape;
  readonly exact: Exact;
  readonly axes: readonly [number, number, number];
}[] = [
  {
    shape: made(wedge({ across: '400 mm', up: '340 mm', top: '150 mm' }), 'width', 0.6),
    axes: [2, 1, 0],
    // The back falls by 250 mm over 340 mm.
    exact: (z, y, e) =>
      Math.min(z - T, y - T, 0.34 - T - y, ((0.4 - z) * 0.34 - y * 0.25) / Math.hypot(0.34, 0.25) - T) > -e,
  },
  {
    shape: made(cylinder({ diameter: '360 mm' }), 'height', 0.5),
    axes: [0, 2, 1],
    exact: (x, z, e) => 0.18 - T - Math.hypot(x - 0.18, z - 0.18) > -e,
  },
  {
    shape: made(wheelArch({ across: '420 mm', up: '460 mm', arch: '240 mm' }), 'width', 0.5),
    axes: [2, 1, 0],
    exact: (z, y, e) => Math.min(z - T, 0.42 - T - z, y - T, 0.46 - T - y, Math.hypot(0.42 - z, y) - 0.24 - T) > -e,
  },
  {
    shape: made(underSeat({ across: '500 mm', up: '420 mm', front: '220 mm', step: '260 mm' }), 'width', 0.5),
    axes: [2, 1, 0],
    exact: (z, y, e) =>
      Math.min(z - T, 0.5 - T - z, y - T, Math.max(Math.min(0.42 - T - y, z - 0.26 - T), 0.22 - T - y)) > -e,
  },
];
/** The sides stand up to 0.1 mm off the arcs. */
const OFF = 2e-4;

const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
const solids = fc.record({
  box: fc.integer({ min: 0, max: boxes.length - 1 }),
  axis: fc.integer({ min: -1, max: 2 }),
  at: fc.tuple(share, share, share),
  size: fc.tuple(share, share, share),
});

function solidOf({
  box,
  axis,
  at,
  size,
}: {
  box: number;
  axis: number;
  at: readonly number[];
  size: readonly number[];
}): Solid {
  const edges = Object.values(cuboidAround(boxes[box]!.shape)) as number[];
  const wide = size.map((one, k) => 0.005 + 0.5 * one * edges[k]!);
  const across = [0, 1, 2].filter((k) => k !== axis);
  if (axis >= 0) wide[across[1]!] = wide[across[0]!]!;
  const least = wide.map((one, k) => m(at[k]! * Math.max(0, edges[k]! - one)));
  const greatest = least.map((one, k) => m(one + wide[k]!));
  const form =
    axis < 0 ? ({ form: 'cuboid' } as const) : ({ form: 'cylinder', axis: (['x', 'y', 'z'] as const)[axis]! } as const);
  return { part: 'vent', ...form, least, greatest } as unknown as Solid;
}

/** Points on the edge of a solid, as the section sees it. */
function rim({ form, axis, least, greatest }: Solid, [across, up, along]: readonly [number, number, number]) {
  const half = [0, 1, 2].map((k) => (greatest[k]! - least[k]!) / 2);
  const centre = [0, 1, 2].map((k) => (greatest[k]! + least[k]!) / 2);
  const round = form === 'cylinder' && 'xyz'[along] === axis;
  return Array.from({ length: 240 }, (_, i) => {
    const [c, s] = [Math.cos((Math.PI * i) / 120), Math.sin((Math.PI * i) / 120)];
    // A square about the origin, or a circle.
    const by = round ? 1 : 1 / Math.max(Math.abs(c), Math.abs(s));
    return [centre[across]! + by * c * half[across]!, centre[up]! + by * s * half[up]!] as const;
  });
}

test.prop([solids], { numRuns: cases(2000) })(
  'what an interior holds is inside its exact curves, and what it does not hold is not',
  (one) => {
    const { shape, exact, axes } = boxes[one.box]!;
    const solid = solidOf(one);
    const length = Object.values(cuboidAround(shape))[axes[2]]! as number;
    const along = solid.least[axes[2]]! >= T - 1e-9 && solid.greatest[axes[2]]! <= length - T + 1e-9;
    const inside = (margin: number) => along && rim(solid, axes).every(([x, y]) => exact(x, y, margin));
    if (interiorOf(shape).contains(solid)) expect(inside(OFF)).toBe(true);
    // Points of its edge alone do not see a wall that reaches between them: so far as they see, it is larger by a little.
    else expect(inside(-0.012)).toBe(false);
  },
);

test.prop([solids, fc.constantFrom(...faces)], { numRuns: cases(2000) })(
  'a solid may go as far as its way, and no farther',
  (one, towards) => {
    const interior: Interior = interiorOf(boxes[one.box]!.shape);
    const solid = solidOf(one);
    if (!interior.contains(solid)) return;
    const face = faces.indexOf(towards);
    const way = interior.way(solid, towards);
    const moved = (by: number): Solid => {
      const shift = (corner: Solid['least']) =>
        corner.map((x, k) => m(k === face >> 1 ? x + (face & 1 ? by : -by) : x)) as unknown as Solid['least'];
      return { ...solid, least: shift(solid.least), greatest: shift(solid.greatest) };
    };
    expect(way).toBeGreaterThanOrEqual(0);
    expect(interior.contains(moved(Math.max(0, way - 1e-8)))).toBe(true);
    expect(interior.contains(moved(way / 2))).toBe(true);
    expect(interior.contains(moved(way + 1e-4))).toBe(false);
  },
);

test.prop(
  [fc.integer({ min: 0, max: boxes.length - 1 }), fc.integer({ min: 60, max: 200 }), fc.integer({ min: 40, max: 90 })],
  {
    numRuns: cases(60),
  },
)('whatever core places in such a box stands within its exact curves', (box, frame, vent) => {
  const { shape, exact, axes } = boxes[box]!;
  const interior = interiorOf(shape);
  const face = interior.faces.includes('front') ? 'front' : 'top';
  const placed = fit({
    outer: cuboidAround(shape),
    thickness: m(T),
    interior,
    driver: { outerDiameter: m(frame / 1e3), cutoutDiameter: m((frame - 20) / 1e3), depth: m(0.08), faces: [face] },
    vent: { diameter: m(vent / 1e3), length: m(0.16), faces: [face] },
  });
  if (!placed.ok) return;
  for (const solid of placed.solids) {
    expect(interior.contains(solid)).toBe(true);
    for (const [x, y] of rim(solid, axes)) expect(exact(x, y, OFF)).toBe(true);
  }
});

const layers = fc.array(
  fc.record({
    wide: fc.integer({ min: 150, max: 500 }),
    high: fc.integer({ min: 150, max: 500 }),
    long: fc.integer({ min: 60, max: 300 }),
  }),
  { minLength: 1, maxLength: 4 },
);
test.prop([layers, fc.integer({ min: 6, max: 22 })], { numRuns: cases(200) })(
  'the panels of a stack and its air fill it',
  (some, t) => {
    // Each layer within the one before it, or around it.
    const nested = some.map(({ long }, i) => {
      const wide = Math.min(...some.slice(0, i + 1).map((one) => one.wide));
      const high = Math.min(...some.slice(0, i + 1).map((one) => one.high));
      return {
        outline: [
          [0, 0],
          [wide, 0],
          [wide, high],
          [0, high],
        ].map(([x, y]) => [m(x! / 1e3), m(y! / 1e3)] as const),
        length: m(long / 1e3),
      };
    });
    const shape = boxShape({ along: 'height', outer: nested, thickness: m(t / 1e3) });
    if (!shape.ok) return;
    const wood = panelsOf(shape).reduce((sum, { volume }) => sum + volume, 0);
    expect(wood + innerVolumeOf(shape)).toBeCloseTo(outerVolumeOf(shape), 12);
  },
);
