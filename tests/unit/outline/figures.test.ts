import type { Fault } from '@airspring/core/fault';
import { arcCorners, areaOf, insetOf, type Outline, outlineField } from '@airspring/workshop/outline';
import { expect, test } from 'vitest';

const read = (value: unknown) => {
  const faults: Fault[] = [];
  const outline = outlineField.read(faults, value, 'figure');
  return { outline, told: faults.map(({ path, code }) => `${path} ${code}`), faults };
};
const square: Outline = [
  [0, 0],
  [0.3, 0],
  [0.3, 0.3],
  [0, 0.3],
];

test('corners are turned counter-clockwise', () => {
  const { outline } = read([
    ['0 mm', '0 mm'],
    ['0 mm', '300 mm'],
    ['300 mm', '300 mm'],
    ['300 mm', '0 mm'],
  ]);
  expect(areaOf(outline!)).toBeCloseTo(0.09, 12);
});

test('a figure that crosses itself is refused at a corner, and both sides are named', () => {
  const { told, faults } = read([
    ['0 mm', '0 mm'],
    ['300 mm', '200 mm'],
    ['300 mm', '0 mm'],
    ['0 mm', '200 mm'],
  ]);
  expect(told).toEqual(['figure[2] inconsistent']);
  expect(faults[0]!.expected).toContain('the side from corner 0 to corner 1 meets the side from corner 2 to corner 3');
});

test.each([
  [
    'a corner on another side',
    [
      [0, 0],
      [400, 0],
      [400, 300],
      [200, 0],
    ],
    ['figure[2] inconsistent'],
  ],
  [
    'a side that turns back',
    [
      [0, 0],
      [400, 0],
      [200, 0],
      [200, 300],
    ],
    ['figure[1] inconsistent'],
  ],
  [
    'a corner that is given twice',
    [
      [0, 0],
      [400, 0],
      [400, 0],
      [0, 300],
    ],
    ['figure[2] inconsistent'],
  ],
  [
    'the first corner again',
    [
      [0, 0],
      [400, 0],
      [0, 300],
      [0, 0],
    ],
    ['figure[0] inconsistent'],
  ],
])('%s is refused', (_, corners, expected) => {
  expect(read(corners.map((corner) => corner.map((at) => `${at} mm`))).told).toEqual(expected);
});

test('what is no list of corners is refused at its path', () => {
  expect(read('a circle').told).toEqual(['figure empty']);
  expect(read([]).told).toEqual(['figure empty']);
  expect(
    read([
      ['0 mm', '1 mm'],
      ['1 mm', '1 mm'],
    ]).told,
  ).toEqual(['figure out-of-range']);
  expect(read([['0 mm', '0 mm'], ['x', '1 mm'], 7, ['1 mm', Number.NaN]]).told).toEqual([
    'figure[1][0] unit',
    'figure[2] inconsistent',
    'figure[3][1] not-finite',
  ]);
});

test('panels that leave nothing are impossible, and so are those that divide a figure', () => {
  expect(insetOf(square, [0.15, 0.15, 0.15, 0.15])).toMatchObject({ ok: false, because: [{ code: 'panels-meet' }] });
  const waist: Outline = [
    [0, 0],
    [0.4, 0],
    [0.22, 0.15],
    [0.4, 0.3],
    [0, 0.3],
    [0.18, 0.15],
  ];
  expect(insetOf(waist, Array(6).fill(0.012) as number[]).ok).toBe(true);
  expect(insetOf(waist, Array(6).fill(0.014) as number[])).toMatchObject({ ok: false });
});

test('a side that is shorter than its neighbours need is lost, and the corner stays sharp', () => {
  const cut = (by: number): Outline => [
    [0, 0],
    [0.3, 0],
    [0.3, 0.3 - by],
    [0.3 - by, 0.3],
    [0, 0.3],
  ];
  const inset = (by: number) => insetOf(cut(by), Array(5).fill(0.018) as number[]);
  expect(inset(0.02)).toMatchObject({ ok: true, lost: [], corners: [0, 1, 2, 3, 4] });
  expect(inset(0.01)).toMatchObject({ ok: true, lost: [2], corners: [0, 1, 2, 2, 3] });
});

test('parallel sides in one line need one thickness', () => {
  const five: Outline = [
    [0, 0],
    [0.1, 0],
    [0.3, 0],
    [0.3, 0.3],
    [0, 0.3],
  ];
  expect(insetOf(five, Array(5).fill(0.018) as number[])).toMatchObject({ ok: true });
  expect(insetOf(five, [0.018, 0.02, 0.018, 0.018, 0.018])).toMatchObject({
    ok: false,
    because: [{ code: 'panels-do-not-meet' }],
  });
});

test.each([
  [0.15, 2 * Math.PI, 1e-4],
  [0.02, 1, 1e-3],
  [2, 0.5, 1e-5],
])('no point of an arc is farther from the circle than allowed: radius %f m', (radius, to, deviation) => {
  const corners = arcCorners({ centre: [0, 0], radius, from: 0, to }, deviation);
  const middles = corners.slice(1).map(([x, y], i) => [(x + corners[i]![0]) / 2, (y + corners[i]![1]) / 2] as const);
  for (const [x, y] of [...corners, ...middles])
    expect(Math.abs(Math.hypot(x, y) - radius)).toBeLessThanOrEqual(deviation);
});
