import { group } from '@airspring/core/driver';
import {
  type ClosedBoxInput,
  closedBox,
  type DriverNet,
  driversOf,
  mixedBox,
  mixedFamily,
  type System,
  type VentedBoxInput,
  ventedBox,
} from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { greatestLevel, limitsOfEach } from '@airspring/core/limit';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, lowestLoad, probeColumns, respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { closedBoxArbitrary, ventedBoxArbitrary, withoutCoil } from '../../arbitrary/box.js';
import { cases, fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { absurdMixedBoxArbitrary, mixedBoxArbitrary } from '../../arbitrary/mixed-box.js';
import { fc, test } from '../../arbitrary/property.js';
import { largest, minus, worst } from '../../circuit/compare.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 40 }, (_, i) => 5 * 1.13 ** i));
const columns = (system: System) => probeColumns(compiledSystem(system), grid);
/** To 1e-12 of the largest value, and to 1e-10 of each, in dips too. */
const same = (a: System, b: System, probes: readonly (readonly [string, string])[], tolerance = 1e-12) => {
  const [x, y] = [columns(a), columns(b)];
  for (const [p, q] of probes) {
    expect(largest(minus(x[p]!, y[q]!)) / largest(y[q]!), p).toBeLessThan(tolerance);
    expect(worst(x[p]!, y[q]!), p).toBeLessThan(100 * tolerance);
  }
};
const whole = ['radiatedFlow', 'current', 'terminalVoltage'].map((name) => [name, name] as const);

type Box = (ClosedBoxInput | VentedBoxInput) & { drivers: never };
/** A box of ours with one chamber, and a mixed one with the same air. */
const plain = (input: Box, drivers: Box['drivers'] | ReturnType<typeof group>): System =>
  'fb' in input ? ventedBox({ ...input, drivers }) : (closedBox({ ...input, drivers }) as System);
const mixed = (input: Box, drivers: DriverNet): System => {
  const { drivers: _, sourceResistance, ...air } = input as ClosedBoxInput;
  return mixedBox({ drivers, chambers: { main: air }, ...(sourceResistance && { sourceResistance }) });
};
const boxArbitrary = fc.oneof(closedBoxArbitrary, ventedBoxArbitrary) as fc.Arbitrary<Box>;
const few = fc.integer({ min: 1, max: 3 });

test.prop([boxArbitrary, few, few, fc.boolean()], { numRuns: cases(40) })(
  'drivers alike are their group, however they are nested: to 1e-12 without inductance',
  (input, series, parallel, across) => {
    const driver = withoutCoil(input.drivers);
    const name = (i: number, k: number) => `${i} ${k}`;
    const drivers: DriverNet = across
      ? // Alike, so that joints between the branches carry nothing.
        {
          series: Array.from({ length: series }, (_, i) => ({
            parallel: Array.from({ length: parallel }, (_, k) => ({ name: name(i, k), driver })),
          })),
        }
      : {
          parallel: Array.from({ length: parallel }, (_, k) => ({
            series: Array.from({ length: series }, (_, i) => ({ name: name(i, k), driver })),
          })),
        };
    const one = group(driver, { series, parallel });
    const last = name(series - 1, parallel - 1);
    const vent = 'ventArea' in input ? [['ventAirSpeed main', 'ventAirSpeed'] as const] : [];
    same(
      mixed(input, drivers),
      plain(input, one),
      [...whole, [`coneVelocity ${last}`, 'coneVelocity'], ...vent],
      1e-12,
    );
  },
);

test.prop([boxArbitrary], { numRuns: cases(40) })('two halves apart are one whole', (input) => {
  const { drivers: driver, sourceResistance: _, ...air } = input as ClosedBoxInput;
  const half = { ...air, netVolume: si('volume', (air.netVolume as number) / 2) } as typeof air;
  const parallel = ['left', 'right'].map((name) => ({ name, driver, chamber: name }));
  const apart = mixedBox({ drivers: { parallel }, chambers: { left: half, right: half } });
  const together = mixed(air as Box, { parallel: parallel.map(({ name, driver }) => ({ name, driver })) });
  same(apart, together, [...whole, ['coneVelocity left', 'coneVelocity right']]);
});

/** Turns every list of a net around. */
const turned = (net: DriverNet): DriverNet =>
  'series' in net
    ? { series: net.series.map(turned).reverse() }
    : 'parallel' in net
      ? { parallel: net.parallel.map(turned).reverse() }
      : net;
test.prop([mixedBoxArbitrary], { numRuns: cases(40) })('the order in a list does not matter', (input) => {
  const system = mixedBox(input);
  const each = driversOf(system.spec.drivers).map(
    ({ name }) => [`coneVelocity ${name}`, `coneVelocity ${name}`] as const,
  );
  same(system, mixedBox({ ...input, drivers: turned(input.drivers) }), [...whole, ...each]);
});

test.prop([mixedBoxArbitrary], { numRuns: cases(25) })('the laws of a family hold', (spec) => {
  const laws = familyLaws({ family: mixedFamily, spec });
  expect(laws.filter(({ holds }) => !holds)).toEqual([]);
});

test.prop([mixedBoxArbitrary], { numRuns: cases(40) })(
  'currents of the drivers add up, and the travel told is that of the cone that moves most',
  (input) => {
    const system = mixedBox(input);
    const names = driversOf(system.spec.drivers).map(({ name }) => name);
    const swept = columns(system);
    const { displacementPeak, currentRms } = respond(system, grid);
    grid.forEach((f, i) => {
      const travel = names.map((name) => {
        const { re, im } = swept[`coneVelocity ${name}`]!;
        return (Math.SQRT2 * Math.hypot(re[i]!, im[i]!)) / (2 * Math.PI * f);
      });
      expect(Math.max(...travel) / displacementPeak[i]!).toBeCloseTo(1, 12);
      // A net of two ends takes its whole current through the drivers of its first series part, or of all parallel ones.
      const through = (net: DriverNet): [number, number] => {
        if ('series' in net) return through(net.series[0]!);
        const parts = 'parallel' in net ? net.parallel.map(through) : [];
        if ('parallel' in net) return parts.reduce(([a, b], [c, d]) => [a + c, b + d]);
        const { re, im } = swept[`current ${net.name}`]!;
        return [re[i]!, im[i]!];
      };
      expect(Math.hypot(...through(input.drivers)) / currentRms[i]!).toBeCloseTo(1, 9);
    });
  },
);

test.prop([mixedBoxArbitrary], { numRuns: cases(15) })(
  'the lowest load is below every point of a sweep, and among them',
  (input) => {
    const system = mixedBox(input);
    const { impedance, angle } = lowestLoad(system);
    const sweep = respond(system, logarithmicGrid(20, 200, 1700));
    expect(impedance.value).toBeLessThanOrEqual(Math.min(...sweep.impedance) * (1 + 1e-9));
    expect(impedance.value).toBeGreaterThan(Math.min(...sweep.impedance) * (1 - 1e-3));
    const steepest = Math.max(...sweep.impedancePhase.map(Math.abs));
    expect(Math.abs(angle.value)).toBeGreaterThanOrEqual(steepest * (1 - 1e-9));
    expect(Math.abs(angle.value)).toBeLessThan(steepest * (1 + 1e-3));
    const there = respond(system, [impedance.frequency]).impedance[0]!;
    expect(impedance.value / there).toBeCloseTo(1, 9);
  },
);

test.prop([mixedBoxArbitrary], { numRuns: cases(25) })(
  'at the greatest drive one driver is at its limit and none is past it',
  (input) => {
    const system = mixedBox(input);
    const limits = limitsOfEach(system.spec, { airSpeedRms: '12 m/s' });
    if (limits.length === 0) return;
    const { driveVoltageRms, binding } = greatestLevel(system, limits, grid);
    const swept = columns(system);
    grid.forEach((f, i) => {
      const shares = Object.fromEntries(
        limits.map(({ name, probe, integrated, greatestRms }) => {
          const { re, im } = swept[probe!]!;
          const size = Math.hypot(re[i]!, im[i]!) / (integrated ? 2 * Math.PI * f : 1);
          return [name, (size * driveVoltageRms[i]!) / greatestRms];
        }),
      );
      expect(Math.max(...Object.values(shares))).toBeCloseTo(1, 9);
      expect(shares[binding[i]!]).toBeCloseTo(1, 9);
    });
  },
);

test.prop([absurdMixedBoxArbitrary], { numRuns: Math.ceil(fuzzRuns / 3) })(
  'any accepted magnitude is answered',
  (system) => {
    answered(() => allFinite(respond(system, [1e-4, 5, 28, 3e4, 1e7])));
    answered(() => allFinite(lowestLoad(system)));
    answered(() => allFinite(limitsOfEach(system.spec, { airSpeedRms: '5 m/s' })));
  },
);
test.prop([fc.jsonValue(), fc.jsonValue()], { numRuns: fuzzRuns })(
  'any JSON is refused or answered',
  (drivers, chambers) => {
    answered(() => mixedBox({ drivers, chambers } as never));
    answered(() => mixedBox({ drivers, chambers: { box: { netVolume: '10 L' } } } as never));
  },
);
