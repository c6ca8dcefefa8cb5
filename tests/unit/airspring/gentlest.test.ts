import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { butterworthShape, filterLevel, highPass } from '@airspring/core/filter';
import { travelLimit } from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { referenceLevel, respond } from '@airspring/core/response';
import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import { wantedAt } from '../../../packages/airspring/src/job/heard.js';
import { gentlestOf } from '../../../packages/airspring/src/record/gentlest.js';
import { bestOf, demo } from '../../arbitrary/brief.js';

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
const gentlest = (fall?: number, place = wantedAt(undefined)) =>
  gentlestOf(box, travelLimit(drivers), {
    driveVoltageRms: si('voltageRms', 20),
    lowest,
    band: [2, 200],
    ...(fall !== undefined && { keeps: { place, level: referenceLevel(box) + place.inStep - fall } }),
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

test('at a listener, what the room adds carries the response behind the filter as well', () => {
  // A room that lifts what is below 60 Hz, by 3 dB at the lowest tone of the band.
  const lift = (f: number) => Math.max(0, (3 * Math.log2(60 / f)) / Math.log2(60 / lowest));
  const there = { inStep: -4, gain: (grid: ArrayLike<number>) => Float64Array.from(grid, (f) => lift(f) - 4) };
  const fall = own - lift(lowest) + 0.1;
  const { order, corner, fallenUpTo } = gentlest(fall, there)!;
  expect(fallenUpTo).toBeGreaterThan(lowest);
  const filter = highPass(butterworthShape(order), si('frequency', corner));
  const level = levelAt(fallenUpTo!) + lift(fallenUpTo!) + filterLevel(filter, frequencyGrid([fallenUpTo!]))[0]!;
  expect(level).toBeCloseTo(referenceLevel(box) - fall, 3);
  expect(gentlest(own + 0.1, there)!.fallenUpTo).toBeUndefined();
});

test('a box that is judged at a listener tells where the filter breaks the fall there', { timeout: 60_000 }, () => {
  // It reaches no deeper than is wanted there, so that any filter breaks the fall.
  const wanted = { ...demo.wanted, lowest: '26 Hz', level: '80 dB', fall: '6 dB', at: 'listener' } as const;
  const { heard, response, protection } = bestOf({
    ...demo,
    box: { kinds: ['vented'] },
    wanted,
    room: { distance: '2 m', walls: ['0 mm'] },
  } as Brief);
  expect(heard?.wantedAt).toBe('listener');
  expect(response.cutoff).toBeCloseTo(26, 1);
  const { costAtLowest, fallenUpTo } = protection.atFullVoltage.highPass!;
  expect(costAtLowest).toBeGreaterThan(0.2);
  expect(fallenUpTo).toBeGreaterThan(26.1);
  expect(fallenUpTo).toBeLessThan(28);
});

test('nothing is told where the fall is kept, or is not asked for', () => {
  const { costAtLowest } = gentlest();
  expect(gentlest(own + costAtLowest + 0.05).fallenUpTo).toBeUndefined();
  expect(gentlest().fallenUpTo).toBeUndefined();
});
