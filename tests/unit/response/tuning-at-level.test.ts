import { quadraticLoss } from '@airspring/core/duct';
import {
  closedBox,
  fourthOrderBandPass,
  lineVentedBox,
  parallelBandPass,
  type System,
  ventedBox,
} from '@airspring/core/enclosure';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns, type TuningAtLevel, tuningAtLevel } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test as property } from '../../arbitrary/property.js';
import { allFinite, answered } from '../../property/answered.js';
import { driver as drivers } from '../laws/boxes.js';

const span = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);
const box = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 7, ventArea: '44 cm²' });
const loss = quadraticLoss({ outward: 1.5 as never });
const at = (volts: number, system: System = box): TuningAtLevel => {
  const told = tuningAtLevel(system, { driveVoltageRms: si('voltageRms', volts), loss });
  if (!told.ok) throw new Error(told.because[0]!.text);
  return told;
};

test('with level the quality falls, and the tuning hardly moves, as was measured of vents', () => {
  const levels = [1, 5, 20, 60].map((volts) => at(volts));
  const qualities = levels.map(({ large }) => large.Q!);
  expect(qualities).toEqual([...qualities].sort((a, b) => b - a));
  for (const { small, large } of levels) {
    expect(small.fb).toBeCloseTo(27, 10);
    expect(small.Q).toBeCloseTo(7, 8);
    expect(large.Q).toBeLessThan(7);
    expect(Math.abs(large.fb / 27 - 1)).toBeLessThan(0.04);
    expect(large.airSpeedPeak).toBeLessThan(small.airSpeedPeak);
  }
});

test('a box that loses nothing has no quality factor until its vent loses, and a small drive changes nothing', () => {
  const lossless = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', ventArea: '44 cm²' });
  expect(at(1, lossless).small.Q).toBeUndefined();
  expect(at(1, lossless).large.Q).toBeGreaterThan(5);
  const { small, large } = at(1e-6);
  expect(large.Q).toBeCloseTo(small.Q!, 4);
  expect(large.leastImpedance!.frequency).toBeCloseTo(small.leastImpedance!.frequency, 4);
});

test('the chamber of a band-pass box and a vent along which waves travel have a tuning too', () => {
  const chambers = { rearVolume: '30 L', frontVolume: '20 L', frontTuning: '50 Hz', frontVentArea: '50 cm²' } as const;
  const bandPass = fourthOrderBandPass({ drivers, ...chambers, frontQL: 10 });
  expect(at(5, bandPass).small.fb).toBeCloseTo(50, 6);
  expect(at(5, bandPass).large.Q!).toBeLessThan(at(5, bandPass).small.Q ?? Infinity);
  const lined = lineVentedBox({ drivers, netVolume: '45 L', vent: { diameter: '75 mm', length: '30 cm' }, QL: 7 });
  const { small, large } = at(10, lined);
  expect(small.Q!).toBeGreaterThan(large.Q!);
  expect(small.fb).toBeGreaterThan(20);
});

property.prop([span(0.1, 200), span(15, 80), span(0.005, 0.3), span(1.5, 60)], { numRuns: Math.ceil(fuzzRuns / 20) })(
  'tuning and quality are those of a dense sweep of a linear box whose vent has that resistance',
  (volts, fb, volume, QL) => {
    const spec = { drivers, netVolume: si('volume', volume), fb: si('frequency', fb), QL, ventArea: '44 cm²' } as const;
    const told = tuningAtLevel(ventedBox(spec), { driveVoltageRms: si('voltageRms', volts), loss });
    if (!told.ok) return;
    const { small, large } = told;
    // Leak and vent together: Q = √(1 + xy) / (x + y) with x = 1/QL and y = 1/QP, which is solved for y.
    const [x, square] = [1 / QL, large.Q! ** 2];
    const half = (2 * x * square - x) / (2 * square);
    const QP = 1 / (Math.sqrt(half ** 2 - (x * x * square - 1) / square) - half);
    if (!(QP > 1 && QP < 1e4)) return;
    const swept = (system: System, near: number) => {
      const grid = frequencyGrid(Array.from({ length: 4001 }, (_, i) => near * (0.97 + 1.5e-5 * i)));
      const { ventAirSpeed: u, coneVelocity: v } = probeColumns(compiledSystem(system), grid);
      const [re, im] = [new Float64Array(grid.length), new Float64Array(grid.length)];
      grid.forEach((_, i) => {
        const square = u!.re[i]! ** 2 + u!.im[i]! ** 2;
        re[i] = (v!.re[i]! * u!.re[i]! + v!.im[i]! * u!.im[i]!) / square;
        im[i] = (v!.im[i]! * u!.re[i]! - v!.re[i]! * u!.im[i]!) / square;
      });
      const at = re.findIndex((value, i) => i > 0 && value > 0 !== re[i - 1]! > 0);
      const slope = (re[at + 20]! - re[at - 20]!) / (grid[at + 20]! - grid[at - 20]!);
      return { fb: grid[at]!, Q: Math.abs((grid[at]! * slope) / (2 * im[at]!)) };
    };
    const before = swept(ventedBox(spec), small.fb);
    expect(Math.abs(before.fb / small.fb - 1)).toBeLessThan(1e-4);
    expect(Math.abs(before.Q / small.Q! - 1)).toBeLessThan(1e-3);
    const after = swept(ventedBox({ ...spec, QP }), large.fb);
    expect(Math.abs(after.fb / large.fb - 1)).toBeLessThan(1e-4);
    expect(Math.abs(after.Q / large.Q! - 1)).toBeLessThan(1e-3);
  },
);

test('in a box that leaks so much that its quality is below 1 a loss can make the resonance sharper', () => {
  const { small, large } = at(20, ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 0.51, ventArea: '44 cm²' }));
  expect(large.Q!).toBeGreaterThan(small.Q!);
  expect(large.fb).toBeGreaterThan(small.fb);
});

test('a tuning outside the band is not found, and a box without a vent, or with several, is refused', () => {
  const driveVoltageRms = '20 V';
  const rear = { rearVolume: '40 L', rearTuning: '28 Hz', rearVentArea: '50 cm²' } as const;
  const front = { frontVolume: '20 L', frontTuning: '60 Hz', frontVentArea: '50 cm²' } as const;
  const above = tuningAtLevel(box, { driveVoltageRms, loss, from: '50 Hz', to: '90 Hz' });
  expect(above).toMatchObject({ ok: false, because: [{ code: 'no-tuning' }] });
  expect(() => at(20, closedBox({ drivers, netVolume: '45 L' }))).toThrow(/a vent of a stated area/);
  expect(() => at(20, parallelBandPass({ drivers, ...front, ...rear }))).toThrow(/one vent, or several alike/);
});

property.prop([span(1e-9, 1e5), span(1e-3, 1e6), span(3, 100), span(1e-3, 10)], { numRuns: Math.ceil(fuzzRuns / 10) })(
  'at any drive and loss all numbers are finite, and the loss never makes the resonance sharper',
  (volts, K, fb, volume) => {
    const any = ventedBox({
      drivers,
      netVolume: si('volume', volume),
      fb: si('frequency', fb),
      QL: 7,
      ventArea: '44 cm²',
    });
    const strong = quadraticLoss({ outward: si('ratio', K) });
    const told = answered(() => tuningAtLevel(any, { driveVoltageRms: si('voltageRms', volts), loss: strong }));
    allFinite(told);
    if (told?.ok) expect(told.large.Q!).toBeLessThanOrEqual(told.small.Q! * (1 + 1e-6));
  },
);
