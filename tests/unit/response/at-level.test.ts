import { flared, quadraticLoss } from '@airspring/core/duct';
import { closedBox, lineVentedBox, parallelBandPass, ventedBox } from '@airspring/core/enclosure';
import { InputError } from '@airspring/core/fault';
import { ventOnsets } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { respond, respondAtLevel } from '@airspring/core/response';
import { ventLoss, ventNoise } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { driver } from '../laws/boxes.js';

const grid = [18, 22, 26, 30, 40, 60];
const drivers = driver;
const box = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 7, ventArea: '44 cm²' });
const drive = { driveVoltageRms: '20 V' } as const;
const loss = (K: number) => quadraticLoss({ outward: si('ratio', K) });

test('a resistance that does not depend on the speed is the QP of the box', () => {
  const lossy = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 7, ventArea: '44 cm²', QP: 20 });
  const { vent, ventLoss: resistance } = lossy.network.values as Record<string, number>;
  expect(resistance).toBeCloseTo((2 * Math.PI * 27 * vent!) / 20, 6);
  const steady = { name: 'cloth', sources: [], resistance: () => resistance! * 44e-4 };
  const mine = respondAtLevel(box, grid, { ...drive, loss: steady });
  const theirs = respond(lossy, grid, drive);
  for (const [i] of grid.entries()) {
    expect(mine.levelHalfSpace[i]).toBeCloseTo(theirs.levelHalfSpace[i]!, 10);
    expect(mine.displacementPeak[i]).toBeCloseTo(theirs.displacementPeak[i]!, 12);
    expect(mine.airSpeedPeak[i]).toBeCloseTo(theirs.airSpeedPeak![i]!, 10);
    expect(mine.impedance[i]).toBeCloseTo(theirs.impedance[i]!, 10);
    expect(mine.currentRms[i]).toBeCloseTo(theirs.currentRms[i]!, 10);
  }
});

test('without a loss nothing is lost, and more loss or more drive loses more', () => {
  const none = respondAtLevel(box, grid, { ...drive, loss: loss(0) });
  expect(Math.max(...none.compression.map(Math.abs))).toBeLessThan(1e-12);
  const at27 = (K: number, driveVoltageRms: number) =>
    respondAtLevel(box, [27], { driveVoltageRms: si('voltageRms', driveVoltageRms), loss: loss(K) }).compression[0]!;
  const rising = [at27(0.5, 10), at27(1.5, 10), at27(1.5, 20), at27(5.6, 20), at27(5.6, 40)];
  expect(rising).toEqual([...rising].sort((a, b) => a - b));
});

test('a vent along which waves travel loses as one that is lumped, at low frequencies', () => {
  const lined = lineVentedBox({ drivers, netVolume: '45 L', vent: { diameter: '75 mm', length: '30 cm' }, QL: 7 });
  const { compression, airSpeedPeak } = respondAtLevel(lined, grid, { ...drive, loss: loss(1.5) });
  const fb = grid[airSpeedPeak.indexOf(Math.max(...airSpeedPeak))]!;
  expect(fb).toBeLessThan(40);
  expect(Math.max(...compression)).toBeGreaterThan(0.5);
});

test('systems without a vent of a stated area are refused, and one loss for several vents', () => {
  const sealed = closedBox({ drivers, netVolume: '45 L' });
  const { ventArea: _, ...spec } = box.spec;
  const front = { frontVolume: '20 L', frontTuning: '60 Hz', frontVentArea: '50 cm²' } as const;
  const rear = { rearVolume: '40 L', rearTuning: '28 Hz', rearVentArea: '50 cm²' } as const;
  for (const system of [sealed, ventedBox(spec as never), parallelBandPass({ drivers, ...front, ...rear })]) {
    expect(() => respondAtLevel(system, grid, { ...drive, loss: loss(1) })).toThrow(InputError);
    expect(() => respondAtLevel(system, grid, { ...drive, loss: loss(1) })).toThrow(
      /a vent of a stated area|a loss for each vent: rear, front/,
    );
  }
});

test('a loss without a value is refused', () => {
  const nothing = { name: 'mine', sources: [], resistance: () => Number.NaN };
  expect(() => respondAtLevel(box, [27], { ...drive, loss: nothing })).toThrow(/flowLossLaws/);
});

test('below the lowest onset a vent is quiet, above the highest noisy, and more loss lets it play louder', () => {
  const vent = { diameter: '75 mm' } as const;
  const { quiet, noisy } = ventOnsets(box, vent, grid);
  for (const [i, f] of grid.entries()) {
    expect(quiet.levelHalfSpace[i]!).toBeLessThan(noisy.levelHalfSpace[i]!);
    const verdictAt = (driveVoltageRms: number) => {
      const { airSpeedPeak } = respond(box, [f], { driveVoltageRms: si('voltageRms', driveVoltageRms) });
      const speed = si('airSpeedPeak', airSpeedPeak![0]!);
      return ventNoise({ vent, frequency: si('frequency', f), airSpeedPeak: speed }).verdict;
    };
    expect(verdictAt(0.999 * quiet.driveVoltageRms[i]!)).toBe('quiet');
    expect(verdictAt(1.001 * quiet.driveVoltageRms[i]!)).toBe('doubtful');
    expect(verdictAt(0.999 * noisy.driveVoltageRms[i]!)).toBe('doubtful');
    expect(verdictAt(1.001 * noisy.driveVoltageRms[i]!)).toBe('noisy');
  }
  const lossy = ventOnsets(box, vent, grid, { loss: loss(2) });
  grid.forEach((_, i) => {
    expect(lossy.noisy.driveVoltageRms[i]!).toBeGreaterThan(noisy.driveVoltageRms[i]!);
  });
});

test('a rounder edge loses less until it stops falling, and a bend loses more', () => {
  const nominal = (radius: number) => {
    const flush = { diameter: '75 mm', length: '30 cm', innerFlangeDiameter: '150 mm' } as const;
    const { parts } = ventLoss({ vent: { ...flush, ...(radius > 0 && { outerEnd: flaredBy(radius) }) } });
    return parts.find(({ part }) => part === 'outer end')!.nominal;
  };
  const falling = [0, 0.002, 0.005, 0.01, 0.015, 0.02].map(nominal);
  expect(falling).toEqual([...falling].sort((a, b) => b - a));
  expect(nominal(0.02)).toBeCloseTo(nominal(0.03), 3);
});

const flaredBy = (radius: number) => flared({ radius: si('length', radius) });
