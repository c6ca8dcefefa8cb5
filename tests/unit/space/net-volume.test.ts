import {
  compileNetVolume,
  compileSizeForNetVolume,
  innerSize,
  netVolume,
  outerSize,
  sizeForNetVolume,
} from '@airspring/core/space';
import { expect, test } from 'vitest';

const box = { outer: { width: '336 mm', height: '436 mm', depth: '386 mm' }, thickness: '18 mm' } as const;
const code = (...codes: string[]) =>
  expect.objectContaining({ faults: codes.map((one) => expect.objectContaining({ code: one })) });

test('inner and outer size, one thickness or one a face', () => {
  const inner = innerSize(box);
  expect([inner.width, inner.height, inner.depth].map((x) => Math.round(x * 1e6))).toEqual([300000, 400000, 350000]);
  const thickness = {
    left: '10 mm',
    right: '12 mm',
    bottom: '18 mm',
    top: '18 mm',
    front: '24 mm',
    back: '6 mm',
  } as const;
  const outer = outerSize({ inner: { width: '100 mm', height: '100 mm', depth: '100 mm' }, thickness });
  expect([outer.width, outer.height, outer.depth].map((x) => Math.round(x * 1e6))).toEqual([122000, 136000, 130000]);
});

test('42 litres less what stands in it', () => {
  const result = netVolume({
    ...box,
    contents: {
      driver: { displacedVolume: '2 L' },
      vent: { outerDiameter: '66 mm', lengthInside: '300 mm' },
      bracing: { volume: '0.5 L', fraction: 0.01 },
    },
  });
  if (!result.ok) throw new Error('there is room');
  // vent: π/4 · 0.66² · 3 dm³
  expect(result.netVolume * 1000).toBeCloseTo(42 - 2 - Math.PI * 0.33 ** 2 * 3 - 0.5 - 0.42, 10);
  expect(result.driverEstimated).toBe(false);
  expect(result.displacedByBracing * 1000).toBeCloseTo(0.92, 10);
});

test('an estimated driver is said to be one', () => {
  const driver = { cutoutDiameter: '200 mm', depthInside: '100 mm', count: 2 } as const;
  const result = netVolume({ ...box, contents: { driver } });
  if (!result.ok) throw new Error('there is room');
  // A cone from radius 100 to 50 over 100: π/3 · (100² + 100 · 50 + 50²) · 100 mm³, twice.
  expect(result.displacedByDriver).toBeCloseTo(2 * (Math.PI / 3) * 0.0175 * 0.1, 12);
  expect(result.driverEstimated).toBe(true);
});

test('a volume eaten up is a result', () => {
  expect(netVolume({ ...box, contents: { driver: { displacedVolume: '50 L' } } })).toEqual({
    ok: false,
    because: [
      {
        code: 'volume-eaten-up',
        text: expect.stringContaining('inner volume is 42 L, but the parts in it take 50 L'),
      },
    ],
  });
});

test('refuses', () => {
  expect(() => innerSize({ ...box, thickness: '200 mm' })).toThrowError(code('inconsistent', 'inconsistent'));
  expect(() => netVolume({ ...box, contents: { driver: {} } })).toThrowError(code('empty'));
  expect(() =>
    netVolume({
      ...box,
      contents: { driver: { displacedVolume: '2 L', depthInside: '90 mm' }, bracing: { fraction: 1 } },
    }),
  ).toThrowError(code('conflict', 'out-of-range'));
  expect(() => sizeForNetVolume({ ...box, netVolume: '0 L', shape: 'depth' })).toThrowError(code('not-positive'));
  expect(() => sizeForNetVolume({ ...box, thickness: '170 mm', netVolume: '9 L', shape: 'depth' })).toThrowError(
    code('inconsistent'),
  );
});

test('size for a volume: one edge, or all in proportion', () => {
  const outer = { width: '336 mm', height: '436 mm', depth: '1 mm' } as const;
  expect(sizeForNetVolume({ netVolume: '42 L', outer, thickness: '18 mm', shape: 'depth' }).depth).toBeCloseTo(
    0.386,
    12,
  );
  const same = sizeForNetVolume({ ...box, netVolume: '42 L', shape: 'proportional' });
  expect([same.width, same.height, same.depth].map((x) => Math.round(x * 1e9))).toEqual([336e6, 436e6, 386e6]);
});

test('compiled doors', () => {
  const thickness = [0.018, 0.018, 0.018, 0.018, 0.018, 0.018];
  expect(compileNetVolume(thickness)(0.336, 0.436, 0.386, 0.002)).toBeCloseTo(0.04, 12);
  expect(compileNetVolume(thickness)(0.03, 0.436, 0.386, 0.002)).toBeLessThan(0);
  const out = new Float64Array(3);
  compileSizeForNetVolume([0.336, 0.436, 0.386], thickness, 'width')(0.04, 0.002, out);
  expect(out[0]).toBeCloseTo(0.336, 12);
});

test('radiators and slots take air as drivers and tubes do', () => {
  const box = {
    outer: { width: '336 mm', height: '436 mm', depth: '386 mm' },
    thickness: '18 mm',
    contents: {
      radiator: { displacedVolume: '0.8 L', count: 2 },
      // 200 × 40 mm of air along one panel: one 12 mm board on a long side, two on the short ones.
      vent: { outerWidth: '224 mm', outerHeight: '52 mm', lengthInside: '300 mm' },
    },
  } as const;
  const result = netVolume(box);
  if (!result.ok) throw new Error('must hold air');
  expect(result.displacedByRadiator).toBeCloseTo(0.0016, 12);
  expect(result.displacedByVent).toBeCloseTo(0.224 * 0.052 * 0.3, 12);
  expect(result.netVolume).toBeCloseTo(0.042 - 0.0016 - 0.224 * 0.052 * 0.3, 12);
  expect(() => netVolume({ ...box, contents: { radiator: { count: 1 } } })).toThrowError(/box\.contents\.radiator/);
});
