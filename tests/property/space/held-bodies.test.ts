import { si } from '@airspring/core/quantity';
import { collisions, cuboidInterior, type FitInput, fit, type RoundBodyInput } from '@airspring/core/space';
import { describe, expect, test as plain } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const mm = (min: number, max: number) => fc.integer({ min, max }).map((length) => si('length', length / 1e3));

const boxes = fc.record({
  outer: fc.record({ width: mm(220, 500), height: mm(220, 500), depth: mm(220, 500) }),
  driver: fc
    .record({
      cutout: mm(70, 150),
      depth: mm(30, 120),
      face: fc.constantFrom('left', 'top', 'front'),
      count: fc.constantFrom(1, 2),
    })
    .map(
      ({ cutout, depth, face, count }): RoundBodyInput => ({
        cutoutDiameter: cutout,
        outerDiameter: si('length', cutout + 0.02),
        depth,
        faces: [face as 'left'],
        count,
      }),
    ),
  vent: fc.record({
    diameter: mm(30, 70),
    length: mm(20, 300),
    bends: fc.constantFrom('straight' as const, 'one-bend' as const),
    faces: fc.constantFrom(['front'] as const, ['left', 'back'] as const, ['top', 'right'] as const),
  }),
});

/** The box with its drivers held where a fit put them. */
const held = (input: FitInput, { placement }: Extract<ReturnType<typeof fit>, { ok: true }>): FitInput => ({
  ...input,
  driver: { ...(input.driver as RoundBodyInput), centres: placement.drivers.flatMap(({ centres }) => centres) },
});

test.prop([boxes, mm(12, 25)])('what fits still fits with its drivers held where they stand', (box, thickness) => {
  const input: FitInput = { ...box, thickness };
  const free = fit(input);
  fc.pre(free.ok);
  const again = fit(held(input, free));
  if (!again.ok) throw new Error(again.because[0]?.text);
  const places = free.placement.drivers.flatMap(({ centres }) => centres);
  const kept = again.placement.drivers.flatMap(({ centres }) => centres);
  kept.forEach((centre, i) => centre.forEach((at, axis) => expect(at).toBeCloseTo(places[i]![axis]!, 9)));
  expect(again.slack.ventLength!).toBeGreaterThanOrEqual(free.slack.ventLength! - 1e-9);
  expect(collisions(cuboidInterior({ outer: box.outer, thickness }), again.solids)).toEqual([]);
});

test.prop([boxes, mm(12, 25), fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 })])(
  'a driver that is held elsewhere is never moved, and never in the way of the vent',
  (box, thickness, right, up) => {
    const input: FitInput = { ...box, thickness, driver: { ...box.driver, count: 1 } };
    const free = fit(input);
    fc.pre(free.ok);
    const [centre] = free.placement.drivers[0]!.centres;
    const moved = centre!.map((at, axis) => si('length', at + [right, up, right][axis]! / 1e3));
    const again = fit({ ...input, driver: { ...(input.driver as RoundBodyInput), centres: [moved as never] } });
    if (!again.ok) return;
    const [at] = again.placement.drivers[0]!.centres;
    const across = { left: 0, top: 1, front: 2 }[again.placement.drivers[0]!.face as 'left']!;
    moved.forEach((want, axis) => axis !== across && expect(at![axis]).toBeCloseTo(want, 9));
    expect(collisions(cuboidInterior({ outer: box.outer, thickness }), again.solids)).toEqual([]);
    // It stays on its panel.
    const sizes = [box.outer.width, box.outer.height, box.outer.depth];
    const half = (box.driver.outerDiameter as number) / 2;
    moved.forEach((want, axis) => {
      if (axis === across) return;
      expect(want).toBeGreaterThanOrEqual(half + 0.005 - 1e-9);
      expect(want).toBeLessThanOrEqual(sizes[axis]! - half - 0.005 + 1e-9);
    });
  },
);

describe('what cannot be held is refused at its path', () => {
  const driver = { outerDiameter: '120 mm', cutoutDiameter: '100 mm', depth: '60 mm' } as const;
  const outer = { width: '300 mm', height: '400 mm', depth: '300 mm' } as const;
  const middle = ['150 mm', '200 mm', '0 mm'] as const;
  plain.each([
    [{ centres: [middle, middle] }, 'centres'],
    [{ centres: [middle], faces: ['left', 'front'] as const }, 'faces'],
    [{ centres: [middle, middle], count: 2, spread: 'opposed' as const, faces: ['left'] as const }, 'spread'],
    [{ centres: [['1 mm', '2 mm']] as never }, 'centres[0]'],
    [{ centres: [['1 mm', '2 kg', '0 mm']] as never }, 'centres[0][1]'],
    [{ centres: 'middle' as never }, 'centres'],
    [{ centres: Array.from({ length: 1e5 }, () => middle) }, 'centres'],
  ])('%#', (change, path) => {
    expect(() => fit({ outer, thickness: '15 mm', driver: { ...driver, ...change } })).toThrow(
      expect.objectContaining({
        faults: expect.arrayContaining([expect.objectContaining({ path: `space.driver.${path}` })]),
      }),
    );
  });
  plain('two that are held on one spot do not fit together', () => {
    const found = fit({ outer, thickness: '15 mm', driver: { ...driver, count: 2, centres: [middle, middle] } });
    expect(found.ok).toBe(false);
  });
});
