import { si } from '@airspring/core/quantity';
import {
  compilePath,
  compilePressureZone,
  compileRoomGain,
  gainLevel,
  pressureZoneCorner,
  roomModes,
} from '@airspring/core/room';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

const told = (work: () => unknown) => faultsOf(work).map(({ code, path }) => `${code} ${path}`);

test('a closed room rises by 12 dB per octave towards low frequencies, and by 6 below the corner of its leak', () => {
  const [low, high] = gainLevel(compilePressureZone({ volume: '3 m³' }), [10, 20]);
  expect(low! - high!).toBeCloseTo(40 * Math.log10(2), 9);
  const leaky = gainLevel(compilePressureZone({ volume: '3 m³', leakCorner: '100 Hz' }), [0.1, 0.2]);
  expect(leaky[0]! - leaky[1]!).toBeCloseTo(20 * Math.log10(2), 4);
});

test('the trend of a room is the even pressure far below its corner, the free field far above, both at it', () => {
  const room = { volume: '3 m³', distance: '1 m', leakCorner: '2 Hz' } as const;
  const corner = pressureZoneCorner({ volume: '3 m³', distance: '1 m' });
  const [trend, zone, free] = [compileRoomGain(room), compilePressureZone({ volume: '3 m³', leakCorner: '2 Hz' })]
    .map((kernel) => gainLevel(kernel, [corner / 100, corner, corner * 100]))
    .concat([gainLevel(compilePath({ distance: '1 m' }), [corner / 100, corner, corner * 100])]) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  expect(trend[0]).toBeCloseTo(zone[0]!, 2);
  expect(trend[2]).toBeCloseTo(free[2]!, 6);
  expect(10 ** (trend[1]! / 10)).toBeCloseTo(10 ** (zone[1]! / 10) + 10 ** (free[1]! / 10), 9);
});

test('modes are told by the walls between which they stand', () => {
  const modes = roomModes({ length: '5 m', width: '4 m', height: '2.5 m', upTo: '100 Hz' });
  const kindOf = (order: readonly number[]) => modes.find((mode) => String(mode.order) === String(order))?.kind;
  expect(kindOf([2, 0, 0])).toBe('axial');
  expect(kindOf([1, 1, 0])).toBe('tangential');
  expect(kindOf([1, 1, 1])).toBe('oblique');
  expect(modes.map(({ frequency }) => frequency)).toEqual(
    modes.map(({ frequency }) => frequency).sort((a, b) => a - b),
  );
});

test('what cannot be is refused at its place', () => {
  const room = { length: '5 m', width: '4 m', height: '2.5 m' } as const;
  expect(told(() => roomModes({ ...room, upTo: '200 kHz' }))).toEqual(['out-of-range upTo']);
  expect(told(() => roomModes({ ...room, height: '0 m', upTo: '20 Hz' }))).toEqual(['not-positive height']);
  expect(roomModes({ ...room, upTo: '20 Hz' })).toEqual([]);
  expect(told(() => compilePressureZone({ volume: '0 L', leakCorner: si('frequency', Number.NaN) }))).toEqual([
    'not-positive volume',
    'not-finite leakCorner',
  ]);
  expect(told(() => compileRoomGain({ volume: '3 m³' } as never))).toEqual(['empty distance']);
});
