/** Unlike vents that lose by their speeds: the state that is told agrees with a network in which each loss is a fixed resistance, and is the only one. */
import { type FlowLoss, quadraticLoss } from '@airspring/core/duct';
import { parallelBandPass, type System, seriesBandPass } from '@airspring/core/enclosure';
import { compile, valuesOf, withSeriesResistance } from '@airspring/core/network';
import { complexColumns } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compileAtLevel, respondAtLevel } from '@airspring/core/response';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';
import { pathsOf } from '../../refusal/faults.js';
import { driver } from '../../unit/laws/boxes.js';

const grid = frequencyGrid([14, 20, 26, 33, 41, 52, 68, 90]);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const litres = (value: number) => si('volume', value / 1000);
const hertz = (value: number) => si('frequency', value);

/** A box with two unlike vents, of every size. */
const boxes = fc
  .record({
    series: fc.boolean(),
    rear: fc.tuple(number(10, 200), number(15, 60), number(5, 200)),
    front: fc.tuple(number(5, 100), number(30, 120), number(5, 200)),
    QL: fc.option(number(3, 50), { nil: undefined }),
  })
  .map(({ series, rear, front, QL }): System => {
    const make = series ? seriesBandPass : parallelBandPass;
    return make({
      drivers: driver,
      rearVolume: litres(rear[0]),
      rearTuning: hertz(rear[1]),
      rearVentArea: si('area', rear[2] * 1e-4),
      frontVolume: litres(front[0]),
      frontTuning: hertz(front[1]),
      frontVentArea: si('area', front[2] * 1e-4),
      ...(QL !== undefined && { rearQL: si('ratio', QL), frontQL: si('ratio', QL) }),
    });
  });

const quadratic = (K: number) => quadraticLoss({ outward: si('ratio', K) });
const names = ['rear', 'front'] as const;

/** Peak speeds in both vents at a frequency, with a fixed acoustic resistance in each. */
function fixedSpeeds(system: System, drive: number) {
  const { topology, values } = system.network;
  const lossy = names.reduce((made, name) => withSeriesResistance(made, `vent ${name}`, `loss ${name}`), topology);
  const compiled = compile(lossy);
  return (frequency: number, resistances: readonly number[]): readonly number[] => {
    const losses = Object.fromEntries(names.map((name, k) => [`loss ${name}`, resistances[k]!]));
    const network = compiled.network(valuesOf(compiled.slots, { ...values, ...losses }));
    const columns = complexColumns(network.probes.length, 1);
    network.sweep(Float64Array.of(frequency), columns);
    return names.map((name) => {
      const { re, im } = columns[network.probes.indexOf(`ventAirSpeed ${name}`)]!;
      return Math.SQRT2 * drive * Math.hypot(re[0]!, im[0]!);
    });
  };
}

const cases = fc.record({ system: boxes, rear: number(0.01, 8), front: number(0.01, 8), drive: number(0.05, 150) });

test.prop([cases])('each resistance fits the speed that a network with these resistances has', (one) => {
  const { system, drive } = one;
  const losses = { rear: quadratic(one.rear), front: quadratic(one.front) };
  const at = compileAtLevel(system, grid).at(losses, drive);
  const speeds = fixedSpeeds(system, drive);
  grid.forEach((f, i) => {
    const told = names.map((name) => at.vents![name]!);
    const found = speeds(
      f,
      told.map(({ resistance }) => resistance[i]!),
    );
    names.forEach((name, k) => {
      const speed = told[k]!.airSpeedPeak[i]!;
      expect(Math.abs(found[k]! - speed)).toBeLessThan(1e-7 * Math.max(...found));
      const area = 1 / (system.network.values[`perVentArea ${name}`] as number);
      const fits = losses[name].resistance(speed, f, system.air) / area;
      expect(Math.abs(told[k]!.resistance[i]! - fits)).toBeLessThan(1e-7 * fits + 1e-12);
    });
    expect(at.airSpeedPeak[i]).toBe(Math.max(...told.map(({ airSpeedPeak }) => airSpeedPeak[i]!)));
  });
});

/** The same state by a slow road from far away: each resistance goes half the way, in its logarithm, to the one that fits the speeds. */
test.prop([cases, number(-3, 3), number(-3, 3)], { numRuns: 12 })(
  'a damped iteration from any other state ends in the same one',
  (one, a, b) => {
    const { system, drive } = one;
    const losses = { rear: quadratic(one.rear), front: quadratic(one.front) };
    const at = respondAtLevel(system, grid, { driveVoltageRms: si('voltageRms', drive), loss: losses });
    const speeds = fixedSpeeds(system, drive);
    const areas = names.map((name) => 1 / (system.network.values[`perVentArea ${name}`] as number));
    for (const i of [1, 4]) {
      const fitting = (resistances: readonly number[]) =>
        speeds(grid[i]!, resistances).map((u, k) => losses[names[k]!].resistance(u, grid[i]!, system.air) / areas[k]!);
      let now = [1e3 * 10 ** a, 1e3 * 10 ** b];
      for (let step = 0; step < 400; step++) {
        const next = fitting(now);
        const off = Math.max(...next.map((r, k) => Math.abs(r / now[k]! - 1)));
        now = now.map((r, k) => r ** 0.6 * next[k]! ** 0.4);
        if (off < 1e-10) break;
      }
      names.forEach((name, k) => {
        expect(Math.abs(at.vents![name]!.resistance[i]! / now[k]! - 1)).toBeLessThan(1e-6);
      });
    }
  },
);

test.prop([boxes, number(0.05, 20)])('without losses it is the linear box', (system, drive) => {
  const none: FlowLoss = { name: 'none', sources: [], resistance: () => 0 };
  const at = compileAtLevel(system, grid).at({ rear: none, front: none }, drive);
  expect(Math.max(...at.compression.map(Math.abs))).toBeLessThan(1e-9);
});

test('several vents need a loss each, by their names', () => {
  const [system] = fc.sample(boxes, { numRuns: 1, seed: 1 }) as [System];
  const ask = (loss: unknown) =>
    pathsOf(() => respondAtLevel(system, grid, { driveVoltageRms: '10 V', loss: loss as FlowLoss }));
  expect(ask(quadratic(1))).toEqual(['options.loss']);
  expect(ask({ rear: quadratic(1) })).toEqual(['options.loss.front']);
  expect(ask({ rear: quadratic(1), front: quadratic(1), side: quadratic(1) })).toEqual(['options.loss.side']);
  expect(ask(undefined)).toHaveLength(1);
  expect(ask({ rear: quadratic(1), front: { name: 'NaN', sources: [], resistance: () => Number.NaN } })).toEqual([
    'loss.resistance',
  ]);
});
