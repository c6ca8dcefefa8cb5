import { compileLongestVent, type FitInput, fit, longestVent } from '@airspring/core/space';
import { expect, test } from 'vitest';

const space = {
  outer: { width: '300 mm', height: '400 mm', depth: '350 mm' },
  thickness: '18 mm',
  driver: { outerDiameter: '200 mm', cutoutDiameter: '180 mm', depth: '90 mm' },
} as const;
const reasons = (input: FitInput) => {
  const result = fit(input);
  return result.ok ? [] : result.because;
};

test('a straight vent runs to the back wall less its clearance', () => {
  // panel 18 + inside 314 − clearance 60
  expect(longestVent({ ...space, vent: { diameter: '60 mm' } }).straight).toBeCloseTo(0.272, 12);
  expect(longestVent({ ...space, vent: { diameter: '60 mm', clearance: '14 mm' } }).straight).toBeCloseTo(0.318, 12);
});

test('a bent vent: first leg to the back wall, second along the height', () => {
  // Radius 33, bend 66. First leg 314 − 66 − 33 = 215, bend 66 π/2, second from 33 + 66 to 364 − 60, panel 18.
  const bent = 0.018 + 0.215 + (Math.PI / 2) * 0.066 + 0.205;
  expect(longestVent({ ...space, vent: { diameter: '60 mm' } }).bent).toBeCloseTo(bent, 12);
});

test('a driver opposite to the vent shortens it', () => {
  // Inner 264 × 264: centres in opposite corners are √2 (264 − 60 − 90) = 161 apart, and radii of 60 + 90 pass.
  // With a cutout of 210 they are √2 (264 − 60 − 105) = 140 apart and 165 is needed: 100 less, for the driver's depth.
  const box = {
    outer: { width: '300 mm', height: '300 mm', depth: '350 mm' },
    thickness: '18 mm',
    vent: { diameter: '120 mm', wall: '0 mm', clearance: '50 mm', bends: 'straight' },
  } as const;
  const driver = { outerDiameter: '220 mm', depth: '118 mm', faces: ['back'] } as const;
  expect(longestVent({ ...box, driver: { ...driver, cutoutDiameter: '180 mm' } }).straight).toBeCloseTo(0.282, 12);
  expect(longestVent({ ...box, driver: { ...driver, cutoutDiameter: '210 mm' } }).straight).toBeCloseTo(0.182, 12);
});

test('says in numbers why a vent is too long, and what to change', () => {
  const vent = { diameter: '60 mm', clearance: '14 mm', length: '412 mm', bends: 'straight' } as const;
  expect(reasons({ ...space, vent })).toEqual([
    {
      code: 'vent-too-long',
      text: expect.stringMatching(/^The vent is 412 mm long; at most 318 mm fits straight: allow one bend, /),
    },
  ]);
  expect(fit({ ...space, vent: { ...vent, bends: 'one-bend' } }).ok).toBe(true);
});

test('says what a driver needs', () => {
  expect(reasons({ ...space, driver: { ...space.driver, depth: '400 mm' } })).toEqual([
    {
      code: 'driver-too-deep',
      text: expect.stringContaining('needs 382 mm behind the front panel, and there are 314 mm'),
    },
  ]);
  expect(reasons({ ...space, driver: { ...space.driver, outerDiameter: '295 mm' } })).toEqual([
    {
      code: 'driver-too-wide',
      text: expect.stringContaining('needs 305 mm of the width of the front panel, and it has 300 mm'),
    },
  ]);
  // Behind the panel: two pitches of 205, one cutout of 180, two panels of 18.
  expect(reasons({ ...space, driver: { ...space.driver, count: 3 } })).toEqual([
    { code: 'driver-too-wide', text: expect.stringContaining('The block of 1 × 3 drivers needs 626 mm of the height') },
  ]);
});

test('says what a vent needs', () => {
  expect(reasons({ ...space, vent: { diameter: '280 mm', length: '100 mm' } })[0]!.text).toContain(
    'needs 322 mm of the width',
  );
  expect(reasons({ ...space, vent: { diameter: '250 mm', wall: '0 mm', length: '100 mm' } })[0]!.code).toBe(
    'no-room-for-vent',
  );
});

test('a length between straight and bent says so', () => {
  // The driver reaches far in: a bent vent must pass behind it, and the box is too narrow to turn the other way.
  const driver = { outerDiameter: '250 mm', cutoutDiameter: '230 mm', depth: '240 mm' } as const;
  const vent = { diameter: '70 mm', clearance: '160 mm' } as const;
  const { straight, bent } = longestVent({ ...space, driver, vent });
  expect(straight).toBeCloseTo(0.172, 12);
  expect(bent).toBeCloseTo(0.018 + 0.2 + (Math.PI / 2) * 0.076 + 0.09, 12);
  expect(reasons({ ...space, driver, vent: { ...vent, length: '300 mm' } })).toEqual([
    {
      code: 'vent-between-straight-and-bent',
      text: expect.stringContaining('172 mm fits straight, 427.4 mm with one bend'),
    },
  ]);
});

test('a closed box has its driver in the middle', () => {
  const result = fit(space);
  expect(result).toMatchObject({ ok: true, placement: { driver: { face: 'front' } } });
  if (result.ok)
    expect(result.placement.driver.centres[0]!.map((x) => Math.round(x * 1e6))).toEqual([150000, 200000, 0]);
});

test('four drivers stand two by two when that is what goes in', () => {
  const result = fit({
    ...space,
    driver: { outerDiameter: '130 mm', cutoutDiameter: '115 mm', depth: '60 mm', count: 4 },
  });
  if (!result.ok) throw new Error('must fit');
  expect(result.placement.driver.centres).toHaveLength(4);
  expect(new Set(result.placement.driver.centres.map(([x]) => Math.round(x * 1e4))).size).toBe(2);
  expect(result.solids).toHaveLength(4);
});

test('refuses every contradiction at once', () => {
  const input = {
    ...space,
    driver: { ...space.driver, cutoutDiameter: '210 mm' },
    vent: { diameter: '60 mm', length: '200 mm', flangeDiameter: '50 mm', bendRadius: '10 mm' },
  } as const;
  const path = (at: string) => expect.objectContaining({ code: 'inconsistent', path: at });
  expect(() => fit(input)).toThrowError(
    expect.objectContaining({
      faults: [path('space.driver.outerDiameter'), path('space.vent.flangeDiameter'), path('space.vent.bendRadius')],
    }),
  );
  expect(() => fit({ ...space, thickness: '150 mm' })).toThrowError(
    expect.objectContaining({ faults: [path('space.outer.width')] }),
  );
  expect(() => fit({ ...space, vent: { diameter: '60 mm', length: '200 mm', faces: [] } })).toThrowError(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'empty', path: 'space.vent.faces' })] }),
  );
});

test('the compiled door says the same as the easy one', () => {
  const out = new Float64Array(2);
  const kernel = compileLongestVent({
    thickness: [0.018, 0.018, 0.018, 0.018, 0.018, 0.018],
    gap: 0.005,
    edgeMargin: 0.005,
    driver: { outerDiameter: 0.2, cutoutDiameter: 0.18, depth: 0.09, count: 1, faces: [4] },
    vent: { count: 1, faces: [4], bend: true },
  });
  kernel(0.264, 0.364, 0.314, { outerDiameter: 0.066, flangeDiameter: 0.066, clearance: 0.06, bendRadius: 0.066 }, out);
  const { straight, bent } = longestVent({ ...space, vent: { diameter: '60 mm' } });
  expect(out[0]).toBeCloseTo(straight, 12);
  expect(out[1]).toBeCloseTo(bent, 12);
});

test('a driver that fits to the last bit of a sum fits: as deep as the box, as wide as its panel, as wide as its inside', () => {
  const mm = (value: number) => `${value} mm` as const;
  const every = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i);
  const refused = every(60, 300).flatMap((d) =>
    [12, 18, 19, 22].filter((t) => {
      const deep = { outer: { width: mm(400), height: mm(400), depth: mm(d + t) }, thickness: mm(t) };
      const wide = { outer: { width: mm(d + 14), height: mm(600), depth: mm(300) }, thickness: mm(t) };
      const inside = { outer: { width: mm(d + 2 * t), height: mm(600), depth: mm(300) }, thickness: mm(t) };
      const ten = { outerDiameter: mm(200), cutoutDiameter: mm(180), depth: mm(d) };
      const frame = { outerDiameter: mm(d), cutoutDiameter: mm(d - 40), depth: mm(90) };
      const all = [
        fit({ ...deep, driver: ten }),
        fit({ ...deep, driver: ten, vent: { diameter: mm(30), length: mm(30), clearance: mm(5) } }),
        fit({ ...wide, edgeMargin: mm(7), driver: frame }),
        fit({ ...inside, edgeMargin: mm(0), driver: { ...frame, outerDiameter: mm(d + 10), cutoutDiameter: mm(d) } }),
      ];
      return all.some(({ ok }) => !ok);
    }),
  );
  expect(refused).toEqual([]);
});
