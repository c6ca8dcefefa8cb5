import type { DriverGroup } from '@airspring/core/driver';
import { closedBox, type System } from '@airspring/core/enclosure';
import { compile } from '@airspring/core/network';
import { frequencyGrid, si } from '@airspring/core/quantity';
import {
  compiledSystem,
  cutoff,
  features,
  HALF_POWER,
  levelColumn,
  levelCrossings,
  probeColumns,
  radiatedPower,
  referenceLevel,
  respond,
  stepResponse,
} from '@airspring/core/response';
import { expect } from 'vitest';
import { bassFrequency, closedBoxArbitrary, systemArbitrary, withoutCoil } from '../../arbitrary/box.js';
import { driverArbitrary } from '../../arbitrary/driver.js';
import { listed, partsOf, withParts } from '../../arbitrary/network-of.js';
import { fc, test } from '../../arbitrary/property.js';

const grid = frequencyGrid(Array.from({ length: 60 }, (_, i) => 8 * 1.07 ** i));
/** The matcher is asked where it fails: a comparison takes far less time than it does. */
const close = (got: number, expected: number, absolute: number) => {
  const off = Math.abs(got - expected);
  if (!(off <= absolute)) expect(off).toBeLessThanOrEqual(absolute);
};
/** Level at one frequency, per volt. */
const levelAt = (system: System) => (f: number) => respond(system, [f]).levelHalfSpace[0]!;
const driverOf = (system: System) => (system.spec as { drivers: DriverGroup }).drivers.equivalent;

test.prop([systemArbitrary])('group delay is the slope of the phase', (system) => {
  const step = 1e-5;
  const { groupDelay } = respond(system, grid);
  const [below, above] = [1 - step, 1 + step].map(
    (factor) =>
      respond(
        system,
        grid.map((f) => f * factor),
      ).phase,
  ) as [Float64Array, Float64Array];
  grid.forEach((f, i) => {
    let turn = above[i]! - below[i]!;
    turn -= 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    const slope = -turn / (2 * Math.PI * f * 2 * step);
    close(groupDelay[i]!, slope, 1e-5 * Math.abs(slope) + 1e-8);
  });
});
test.prop([systemArbitrary])(
  'without polynomials the group delay is the same within its difference quotient',
  (system) => {
    const exact = respond(system, grid).groupDelay;
    const Rms = system.network.values.Rms as number;
    const parts = partsOf(system.network).map((element) =>
      element.name === 'Rms' ? listed('Rms', ['cone', 'ground'], (_f, re) => re.fill(Rms)) : element,
    );
    const other = respond({ ...system, compile, network: withParts(system.network, parts) }, grid).groupDelay;
    exact.forEach((value, i) => close(other[i]!, value, 1e-5 * Math.abs(value) + 1e-8));
  },
);

test.prop([systemArbitrary, fc.double({ min: 0.01, max: 100, noNaN: true })])(
  'everything but levels and ratios grows with the drive',
  (system, factor) => {
    const one = respond(system, grid);
    const many = respond(system, grid, { driveVoltageRms: si('voltageRms', factor) });
    for (const name of ['displacementPeak', 'radiatedFlowRms', 'currentRms', 'airSpeedPeak'] as const) {
      one[name]?.forEach((value, i) => close(many[name]![i]!, value * factor, 1e-12 * value * factor));
    }
    one.levelHalfSpace.forEach((value, i) => close(many.levelHalfSpace[i]!, value + 20 * Math.log10(factor), 1e-10));
    for (const name of ['phase', 'groupDelay', 'impedance', 'impedancePhase'] as const)
      expect(many[name]).toEqual(one[name]);
  },
);

test.prop([systemArbitrary])(
  'a passive load: the impedance turns the current by a quarter turn at most, and is Re at least where there is no coil',
  (system) => {
    const { impedance, impedancePhase } = respond(system, grid);
    expect(Math.max(...impedancePhase.map(Math.abs))).toBeLessThan(Math.PI / 2);
    const { Re } = driverOf(system);
    impedance.forEach((size, i) =>
      expect(size * Math.cos(impedancePhase[i]!)).toBeGreaterThanOrEqual(Re * (1 - 1e-12)),
    );
  },
);

test.prop([systemArbitrary, bassFrequency])(
  'the doors agree: level of a column, of a flow, of a power',
  (system, f) => {
    const { levelHalfSpace, radiatedFlowRms } = respond(system, [f]);
    const out = new Float64Array(1);
    levelColumn(
      Float64Array.of(f),
      probeColumns(compiledSystem(system), Float64Array.of(f)).radiatedFlow!,
      system.air.density,
      1,
      out,
    );
    close(out[0]!, levelHalfSpace[0]!, 1e-10);
    // The other road to a level: far-field power, spread over 2π m².
    const { density, speedOfSound } = system.air;
    const power = radiatedPower(radiatedFlowRms[0]!, f, system.air);
    close(10 * Math.log10((power * density * speedOfSound) / (2 * Math.PI * 4e-10)), levelHalfSpace[0]!, 1e-9);
  },
);

/** Where absorption keeps the pressure in the box up, a share of the flow goes out by the leak even at high frequency. */
function leaked({ network }: System): number {
  const { absorption = 0, leak = Number.POSITIVE_INFINITY } = network.values as Record<string, number>;
  return 1 + absorption / leak;
}
const level = (bl: number, Sd: number, Mms: number, R: number, density: number) =>
  20 * Math.log10((density * bl * Sd) / (2 * Math.PI * Mms * R * 20e-6));
test.prop([systemArbitrary])('the reference level is what the driver alone says', (system) => {
  const { Bl, Sd, Mms, Re } = driverOf(system);
  const { sourceResistance } = system.spec as { sourceResistance: number };
  // The leak is left out of it, with absorption or without.
  close(referenceLevel(system), level(Bl, Sd, Mms, Re + sourceResistance, system.air.density), 1e-7);
});

test.prop([systemArbitrary], { numRuns: 50 })(
  'a cut-off is the last crossing, and there the level is the reference less the drop',
  (system) => {
    for (const drop of [HALF_POWER, 6, 10]) {
      const found = cutoff(system, { drop });
      const crossings = levelCrossings(system, { drop });
      expect(crossings).toEqual([...crossings].sort((a, b) => a - b));
      if (!found.ok) continue;
      expect(found.frequency).toBe(crossings.at(-1));
      close(levelAt(system)(found.frequency), referenceLevel(system) - drop, 1e-8);
      const above = grid.filter((f) => f > found.frequency && f < 200);
      if (above.length === 0) continue;
      respond(system, above).levelHalfSpace.forEach((value) =>
        expect(value).toBeGreaterThan(referenceLevel(system) - drop - 1e-3),
      );
    }
  },
);
test.prop([systemArbitrary], { numRuns: 30 })('a reference is a reference: by level, by frequency', (system) => {
  const byAsymptote = cutoff(system);
  const byLevel = cutoff(system, { reference: { level: referenceLevel(system) } });
  expect(byLevel).toEqual(byAsymptote);
  const at = si('frequency', 150);
  const byFrequency = cutoff(system, { reference: { frequency: at }, drop: 3 });
  if (byFrequency.ok) close(levelAt(system)(byFrequency.frequency), levelAt(system)(150) - 3, 1e-8);
});
test.prop([systemArbitrary], { numRuns: 30 })('features are what their doors say, and survive JSON', (system) => {
  const found = features(system);
  const f3 = cutoff(system);
  expect(found.f3 !== undefined).toBe(f3.ok);
  if (f3.ok) close(found.f3!, f3.frequency, 1e-9 * f3.frequency);
  expect(JSON.parse(JSON.stringify(found))).toEqual(found);
  expect(found.ripple).toBeGreaterThanOrEqual(0);
});

test.prop([driverArbitrary, fc.double({ min: 0.35, max: Math.SQRT1_2, noNaN: true })])(
  'a closed box of Q up to 0.7071 has a level that only rises',
  (driver, Q) => {
    // Damped so that the box has the Q asked for.
    const drivers = withoutCoil(driver);
    const netVolume = si('volume', 0.05);
    const wc = (air: number) => Math.sqrt((1 / drivers.Cms + air) / drivers.Mms);
    const probe = closedBox({ drivers, netVolume });
    const stiffness = drivers.Sd ** 2 / (probe.network.values.Cab as number);
    const Bl = si('forceFactor', Math.sqrt((wc(stiffness) * drivers.Mms * drivers.Re) / Q));
    const { levelHalfSpace } = respond(closedBox({ drivers: { ...drivers, Bl }, netVolume }), grid);
    levelHalfSpace.forEach((value, i) => i > 0 && expect(value).toBeGreaterThan(levelHalfSpace[i - 1]!));
  },
);

test.prop([closedBoxArbitrary])('a step starts with what moves mass: ρ Bl Sd/(2π Mms R)', (input) => {
  const drivers = withoutCoil(input.drivers as Parameters<typeof withoutCoil>[0]);
  const system = closedBox({ ...input, drivers });
  const R = drivers.Re + ((input.sourceResistance as number | undefined) ?? 0);
  const start = (system.air.density * drivers.Bl * drivers.Sd) / (2 * Math.PI * drivers.Mms * R * leaked(system));
  const { pressure, times } = stepResponse(system, { until: '50 ms', points: 5 });
  close(pressure[0]!, start, 1e-9 * start);
  expect(times.length).toBe(5);
  times.forEach((time, i) => close(time, 0.0125 * i, 1e-15));
});
test.prop([systemArbitrary])('a step is the same on a finer grid, and dies out', (system) => {
  const coarse = stepResponse(system, { until: '80 ms', points: 9 }).pressure;
  const fine = stepResponse(system, { until: '80 ms', points: 81 }).pressure;
  const most = Math.max(...fine.map(Math.abs));
  coarse.forEach((value, i) => close(value, fine[10 * i]!, 1e-8 * most));
  const late = stepResponse(system, { until: '60 s', points: 2 }).pressure[1]!;
  expect(Math.abs(late)).toBeLessThan(1e-3 * most);
});
