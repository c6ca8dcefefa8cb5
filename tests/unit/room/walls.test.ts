import type { CornerInput, Reflection, WallInput } from '@airspring/core/room';
import { absorbing, boundaryPower, compileCorner, gainLevel, solidAngleGain, solidAngles } from '@airspring/core/room';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

const told = (work: () => unknown) => faultsOf(work).map(({ code, path }) => `${code} ${path}`);

test('a wall that a source touches adds what the solid angle says', () => {
  const touching: WallInput = { distance: '0 m' };
  for (const [count, angle] of [solidAngles.fullSpace, solidAngles.halfSpace, solidAngles.quarterSpace].entries()) {
    const walls = Array.from({ length: count }, () => touching);
    expect(boundaryPower(walls, [40])[0]).toBeCloseTo(solidAngleGain(angle).powerOfFlow, 10);
  }
});

test('on the floor at 1 m is the half space of a response, but for the delay', () => {
  expect(
    gainLevel(compileCorner({ walls: [{ distance: '0 m' }], listener: ['0 m', '1 m', '0 m'] }), [40])[0],
  ).toBeCloseTo(0, 12);
});

test('a wall behind a source cancels it where the way there and back is half a wave', () => {
  const frequency = 343.98 / 4; // Hz: the wall is 1 m behind, and the listener far away
  const corner = compileCorner({ walls: [{ distance: '1 m' }], listener: ['900 m', '0 m', '0 m'] });
  const [dip, free] = [gainLevel(corner, [frequency])[0]!, -20 * Math.log10(2 * 899)];
  expect(dip).toBeLessThan(free - 40);
});

test('equal distances to three walls give a dip of 11.4 dB, which unequal ones fill', () => {
  const frequencies = Array.from({ length: 400 }, (_, i) => 20 + i / 2);
  const least = (...distances: readonly WallInput['distance'][]) =>
    Math.min(
      ...boundaryPower(
        distances.map((distance) => ({ distance })),
        frequencies,
      ),
    );
  expect(least('60 cm', '60 cm', '60 cm')).toBeCloseTo(-11.4, 1);
  expect(least('30 cm', '60 cm', '1.2 m')).toBeGreaterThan(-3);
});

test('a wall that absorbs all is no wall', () => {
  const listener: CornerInput['listener'] = ['2 m', '1 m', '0.5 m'];
  const open = compileCorner({ walls: [{ distance: '1 m', reflection: absorbing(1) }], listener });
  const away = Math.hypot(1, 1, 0.5);
  expect(gainLevel(open, [30, 90])[1]).toBeCloseTo(-20 * Math.log10(2 * away), 12);
});

test('what cannot be is refused at its place', () => {
  const wall: WallInput = { distance: '1 m' };
  const listener: CornerInput['listener'] = ['2 m', '1 m', '0 m'];
  const reflection = (factor: number): Reflection => Object.assign(() => factor, { sources: ['own'] });
  expect(told(() => boundaryPower([wall, wall, wall, wall], [40]))).toEqual(['out-of-range walls']);
  expect(told(() => boundaryPower([{ distance: '-1 m' }, { distance: '2 kg' } as never], [40]))).toEqual([
    'not-positive walls[0].distance',
    'unit walls[1].distance',
  ]);
  expect(told(() => boundaryPower([wall, { ...wall, reflection: 0.9 as never }], [40]))).toEqual([
    'inconsistent walls[1].reflection',
  ]);
  expect(told(() => boundaryPower([{ ...wall, reflection: reflection(Number.NaN) }], [40]))).toEqual([
    'not-finite walls[0].reflection',
  ]);
  expect(told(() => compileCorner({ walls: [{ ...wall, reflection: reflection(1.5) }], listener }))).toEqual([
    'out-of-range walls[0].reflection',
  ]);
  expect(told(() => compileCorner({ walls: [wall], listener: ['1 m', '0 m', '0 m'] }))).toEqual([
    'inconsistent listener',
  ]);
  expect(told(() => compileCorner({ walls: [wall], listener: ['-1 m', '0 m', '0 m'] }))).toEqual([
    'not-positive listener[0]',
  ]);
  expect(told(() => compileCorner({ walls: [wall], listener: ['1 m'] as never }))).toEqual(['empty listener']);
  expect(told(() => compileCorner({ wall, listener } as never))).toEqual(['unknown-field wall', 'empty walls']);
  expect(told(() => solidAngleGain(0))).toEqual(['out-of-range solidAngle']);
  expect(told(() => absorbing(1.2))).toEqual(['out-of-range coefficient']);
  expect(told(() => absorbing('0.5' as never))).toEqual(['not-finite coefficient']);
});
