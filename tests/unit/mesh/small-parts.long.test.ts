/** Printed small parts: closed solids, also as printers read them, and sizes that are refused. */
import { crossings, meshFaults } from '@airspring/workshop/mesh';
import { driverGasket, massDiscs, terminalCup } from '@airspring/workshop/solid';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

const parts = {
  gasket: () => driverGasket({ inner: '186 mm', outer: '210 mm', bolts: { count: 6, circle: '198 mm', hole: '5 mm' } }),
  'gasket without bolts': () => driverGasket({ inner: '30 mm', outer: '44 mm' }),
  disc: () => massDiscs({ mass: '80 g', diameter: '90 mm', hole: '6.4 mm' }),
  'disc without a hole': () => massDiscs({ mass: '5 g', diameter: '40 mm' }),
  cup: () => terminalCup(),
  'flat cup': () => terminalCup({ depth: '4 mm', diameter: '80 mm', posts: { hole: '6 mm', apart: '30 mm' } }),
};

test.each(Object.entries(parts))('%s is one closed solid, and stands on the bed', (_, make) => {
  const { mesh } = make();
  expect(meshFaults(mesh)).toEqual([]);
  expect(crossings(mesh)).toEqual([]);
  expect(mesh.corners.filter((_, i) => i % 3 === 2).reduce((a, b) => Math.min(a, b))).toBe(0);
});

test('a cup is airtight but for its posts and screws: it has as many holes', () => {
  const { mesh } = terminalCup();
  // Euler: corners − edges + faces = 2 − 2 × holes.
  const [corners, faces] = [mesh.corners.length / 3, mesh.triangles.length / 3];
  expect(1 - (corners - faces / 2) / 2).toBe(2 + 4);
});

test('bolts that leave just enough of the frame are made; nearer ones are refused in millimetres', () => {
  const ring = { inner: '186 mm', outer: '210 mm' } as const;
  const gasket = (circle: `${number} mm`) => driverGasket({ ...ring, bolts: { count: 6, circle, hole: '5 mm' } });
  // A hole of 5 mm with 1.5 mm beside it: 4 mm to 8 mm of the 12 mm of the frame.
  for (const circle of ['194 mm', '202 mm'] as const) expect(meshFaults(gasket(circle).mesh)).toEqual([]);
  for (const [circle, got] of [
    ['193.9 mm', '3.95 mm'],
    ['202.1 mm', '8.05 mm'],
  ] as const) {
    expect(faultsOf(() => gasket(circle))).toMatchObject([
      {
        path: 'gasket.bolts',
        got,
        expected: 'middles of holes 4 mm to 8 mm beyond the cutout, which leaves 1.5 mm beside each hole',
      },
    ]);
  }
});

test('what has no room is refused with its path', () => {
  const refused = (make: () => unknown) => {
    try {
      make();
    } catch (error) {
      return (error as { faults: { path: string }[] }).faults.map(({ path }) => path);
    }
    return [];
  };
  const bolts = (count: number, circle: `${number} mm`) => ({ count, circle, hole: '5 mm' }) as const;
  const ring = { inner: '186 mm', outer: '210 mm' } as const;
  expect(refused(() => driverGasket({ inner: '210 mm', outer: '186 mm' }))).toEqual(['gasket.outer']);
  expect(refused(() => driverGasket({ ...ring, bolts: bolts(6, '190 mm') }))).toEqual(['gasket.bolts']);
  expect(refused(() => driverGasket({ inner: '8 mm', outer: '34 mm', bolts: bolts(20, '20 mm') }))).toEqual([
    'gasket.bolts.count',
  ]);
  expect(refused(() => massDiscs({ mass: '80 g', diameter: '6 mm', hole: '6.4 mm' }))).toEqual(['weight.hole']);
  expect(refused(() => massDiscs({ mass: '2 kg', diameter: '60 mm' }))).toEqual(['weight.diameter']);
  expect(refused(() => terminalCup({ diameter: '20 mm' }))).toEqual(['cup.diameter']);
  expect(refused(() => terminalCup({ posts: { hole: '16 mm', apart: '17 mm' } }))).toEqual(['cup.posts.apart']);
  expect(refused(() => terminalCup({ depth: '2 mm' }))).toEqual(['cup.depth']);
  expect(refused(() => terminalCup({ flange: { reach: '4 mm' } }))).toEqual(['cup.flange.screws']);
});
