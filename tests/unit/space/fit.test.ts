import { compileLongestVent, type FitInput, fit, longestVent } from '@airspring/core/space';
import { expect, test } from 'vitest';

const space = {
  outer: { width: '300 mm', height: '400 mm', depth: '350 mm' },
  thickness: '18 mm',
  cutoutMargin: '0 mm',
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
    cutoutMargin: '0 mm',
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
      text: expect.stringMatching(/^The vent is 412 mm long\. At most 318 mm fits straight\. Allow one bend or /),
    },
  ]);
  expect(fit({ ...space, vent: { ...vent, bends: 'one-bend' } }).ok).toBe(true);
});

test('says what a driver needs', () => {
  expect(reasons({ ...space, driver: { ...space.driver, depth: '400 mm' } })).toEqual([
    {
      code: 'driver-too-deep',
      text: expect.stringContaining('needs 382 mm behind the front panel, but there is only 314 mm'),
    },
  ]);
  expect(reasons({ ...space, driver: { ...space.driver, outerDiameter: '295 mm' } })).toEqual([
    {
      code: 'driver-too-wide',
      text: expect.stringContaining('needs 305 mm of the width of the front panel, which has only 300 mm'),
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
      text: expect.stringContaining('172 mm fits straight and 427.4 mm fits with one bend'),
    },
  ]);
});

test('a closed box has its driver in the middle', () => {
  const result = fit(space);
  expect(result).toMatchObject({ ok: true, placement: { drivers: [{ face: 'front' }] } });
  if (result.ok)
    expect(result.placement.drivers[0]!.centres[0]!.map((x) => Math.round(x * 1e6))).toEqual([150000, 200000, 0]);
});

test('four drivers stand two by two when that is what goes in', () => {
  const result = fit({
    ...space,
    driver: { outerDiameter: '130 mm', cutoutDiameter: '115 mm', depth: '60 mm', count: 4 },
  });
  if (!result.ok) throw new Error('must fit');
  expect(result.placement.drivers[0]!.centres).toHaveLength(4);
  expect(new Set(result.placement.drivers[0]!.centres.map(([x]) => Math.round(x * 1e4))).size).toBe(2);
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
    cutoutMargin: 0,
    bodies: [
      { part: 'driver', outerDiameter: 0.2, cutoutDiameter: 0.18, depth: 0.09, count: 1, faces: [4], opposed: false },
    ],
    vent: { count: 1, faces: [4], bend: true, walls: 0 },
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
      const deep = {
        outer: { width: mm(400), height: mm(400), depth: mm(d + t) },
        thickness: mm(t),
        cutoutMargin: mm(0),
      };
      const wide = {
        outer: { width: mm(d + 14), height: mm(600), depth: mm(300) },
        thickness: mm(t),
        cutoutMargin: mm(0),
      };
      const inside = {
        outer: { width: mm(d + 2 * t), height: mm(600), depth: mm(300) },
        thickness: mm(t),
        cutoutMargin: mm(0),
      };
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

test('a cutout keeps its margin to the neighbouring panels, and what is left is told', () => {
  // 264 mm inside, less 2 × 2 mm: a cutout of 260 goes in, one of 261 does not; its frame lies on the panel edges.
  const driver = (cutout: number) =>
    ({ outerDiameter: '290 mm', cutoutDiameter: `${cutout} mm`, depth: '90 mm' }) as const;
  const { cutoutMargin: _, ...box } = space;
  const result = fit({ ...box, driver: driver(260) });
  if (!result.ok) throw new Error('must fit');
  expect(result.slack.cutout).toBeCloseTo(0.002, 12);
  expect(reasons({ ...box, driver: driver(261) })).toEqual([
    { code: 'driver-too-wide', text: expect.stringContaining('needs 301 mm of the width of the front panel') },
  ]);
  const vented = fit({ ...box, driver: space.driver, vent: { diameter: '60 mm', length: '200 mm' } });
  if (!vented.ok) throw new Error('must fit');
  // The corner that the driver takes is 2 mm from two panels: never flush.
  expect(vented.slack.cutout).toBeCloseTo(0.002, 12);
});

test('opposed drivers stand back to back on one axis, and need room for both', () => {
  const pair = { ...space.driver, depth: '140 mm', count: 2, faces: ['left', 'right'], spread: 'opposed' } as const;
  const result = fit({ ...space, driver: pair });
  if (!result.ok) throw new Error('must fit');
  const [left, right] = result.placement.drivers;
  expect([left!.face, right!.face]).toEqual(['left', 'right']);
  expect(left!.centres[0]!.slice(1)).toEqual(right!.centres[0]!.slice(1));
  // 264 mm inside, less twice 140 − 18.
  expect(result.slack.driverDepth).toBeCloseTo(0.02, 12);
  expect(reasons({ ...space, driver: { ...pair, depth: '151 mm' } })).toEqual([
    { code: 'driver-too-deep', text: expect.stringContaining('need 266 mm between the left and right panels') },
  ]);
  expect(() => fit({ ...space, driver: { ...pair, count: 3 } })).toThrowError(/space\.driver\.count/);
  expect(() => fit({ ...space, driver: [{ ...pair, faces: ['left', 'top'] }] })).toThrowError(
    /space\.driver\[0\]\.faces/,
  );
});

test('drivers on front and back, with passive radiators on both sides, or why not', () => {
  const driver = { ...space.driver, count: 2, faces: ['front', 'back'], spread: 'each-face' } as const;
  const radiator = {
    outerDiameter: '180 mm',
    cutoutDiameter: '160 mm',
    depth: '40 mm',
    travel: '15 mm',
    count: 2,
    faces: ['left', 'right'],
    spread: 'opposed',
  } as const;
  const tall = { ...space, outer: { width: '300 mm', height: '500 mm', depth: '350 mm' } } as const;
  const result = fit({ ...tall, driver, radiator });
  if (!result.ok) throw new Error('must fit');
  expect(result.placement.drivers.map(({ face }) => face)).toEqual(['front', 'back']);
  expect(result.placement.radiators.map(({ face }) => face)).toEqual(['left', 'right']);
  expect(result.holes.map(({ part }) => part)).toEqual(['driver', 'driver', 'radiator', 'radiator']);
  // The travel counts: the radiators reach 40 + 15 − 18 mm in.
  const radiators = result.solids.filter(({ part }) => part === 'radiator');
  expect(radiators[0]!.greatest[0]! - radiators[0]!.least[0]!).toBeCloseTo(0.037, 12);
  // Low, with deep drivers: 180 mm of drivers and 160 mm of radiators are more than the 314 mm inside.
  const low = { ...space, outer: { ...tall.outer, height: '350 mm' } } as const;
  const deep = { driver: { ...driver, depth: '170 mm' }, radiator: { ...radiator, depth: '80 mm' } } as const;
  expect(reasons({ ...low, ...deep }).map(({ code }) => code)).toEqual(['no-room-together']);
  expect(fit({ ...tall, ...deep }).ok).toBe(true);
});

test('a slot on the floor of the box runs to its back and up it', () => {
  // Inner 264 × 364 × 314; slot 200 × 40 of 12 mm boards, the driver above it.
  const vent = { width: '200 mm', height: '40 mm', wall: '12 mm', along: 'one' } as const;
  const driver = { outerDiameter: '200 mm', cutoutDiameter: '180 mm', depth: '90 mm' } as const;
  const { straight, bent } = longestVent({ ...space, driver, vent });
  expect(straight).toBeCloseTo(0.018 + 0.314 - 0.04, 12);
  // First leg 314 − 40, a quarter circle of 20, up from 40 to 364 − 40.
  expect(bent).toBeCloseTo(0.018 + 0.274 + (Math.PI / 2) * 0.02 + 0.284, 12);
  const result = fit({ ...space, driver, vent: { ...vent, length: '500 mm' } });
  if (!result.ok) throw new Error('must fit');
  const hole = result.holes.find(({ part }) => part === 'vent')!;
  if (hole.form !== 'rectangle') throw new Error('must be a rectangle');
  expect([...hole.edges].sort()).toEqual([0, 0.04, 0.2]);
  expect(result.placement.vent!.bend).toBeDefined();
});
