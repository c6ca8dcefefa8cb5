import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { butterworthShape, filterLevel, highPass } from '@airspring/core/filter';
import { travelLimit } from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { referenceLevel, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { gentlestOf } from '../../../packages/airspring/src/record/gentlest.js';

const sheet = completeDriver({
  fs: '30 Hz',
  Qts: 0.35,
  Qes: 0.39,
  Vas: '60 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Xmax: '6 mm',
});
if (!sheet.ok) throw new Error('the sheet is complete');
const drivers = group(sheet.driver);
const box = ventedBox({ drivers, netVolume: '35 L', fb: '34 Hz', QL: 7, sourceResistance: '0.1 Ω' });
const lowest = 32;
const levelAt = (f: number) => respond(box, frequencyGrid([f])).levelHalfSpace[0]!;
const own = referenceLevel(box) - levelAt(lowest);
const gentlest = (fall?: number) =>
  gentlestOf(box, travelLimit(drivers), {
    driveVoltageRms: si('voltageRms', 20),
    lowest,
    band: [2, 200],
    ...(fall !== undefined && { fall }),
  })!;

test('a high-pass that breaks the wanted fall of a box at its limit is told with the tone up to which it does', () => {
  // A tenth of a decibel is left.
  const fall = own + 0.1;
  const { order, corner, costAtLowest, fallenUpTo } = gentlest(fall);
  expect(costAtLowest).toBeGreaterThan(0.2);
  expect(fallenUpTo).toBeGreaterThan(lowest);
  const filter = highPass(butterworthShape(order), si('frequency', corner));
  const there = levelAt(fallenUpTo!) + filterLevel(filter, frequencyGrid([fallenUpTo!]))[0]!;
  expect(there).toBeCloseTo(referenceLevel(box) - fall, 3);
});

test('nothing is told where the fall is kept, or is judged elsewhere', () => {
  const { costAtLowest } = gentlest();
  expect(gentlest(own + costAtLowest + 0.05).fallenUpTo).toBeUndefined();
  expect(gentlest().fallenUpTo).toBeUndefined();
});
