import {
  type Air,
  air,
  dryAirSpeedOfSound,
  type MoistAirInput,
  moistAirDensity,
  speedOfSound,
  standardAtmosphere,
  thermalConductivity,
  viscosity,
  waterVapourFraction,
} from '@airspring/core/air';
import { type AltitudeInput, si, type TemperatureInput } from '@airspring/core/quantity';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { moistAirArbitrary, wildAir, wildConditions } from '../../arbitrary/air.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const close = (got: number, expected: number, relative = 1e-12) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

test.prop([moistAirArbitrary])('ρc² = γp, Pr = μ cp/κ, and no warning inside the range', (state) => {
  const a = air(state);
  close(a.density * a.speedOfSound ** 2, a.heatCapacityRatio * a.pressure);
  close(a.prandtlNumber, (a.viscosity * a.specificHeat) / a.thermalConductivity);
  expect(a.warnings).toEqual([]);
});

test.prop([moistAirArbitrary])('the record holds what the single formulas say', (state) => {
  const a = air(state);
  expect(a.density).toBe(moistAirDensity(state));
  expect(a.speedOfSound).toBe(speedOfSound(state));
  expect(a.viscosity).toBe(viscosity(state.temperature));
  expect(a.thermalConductivity).toBe(thermalConductivity(state.temperature));
});

test.prop([moistAirArbitrary])('text and number say the same', (state) => {
  const text = air({
    temperature: `${state.temperature} K`,
    pressure: `${state.pressure} Pa`,
    humidity: `${state.humidity} 1`,
  });
  expect(text).toEqual(air(state));
});

test.prop([moistAirArbitrary])('nearly an ideal gas: density as pressure, dry speed of sound as √T', (state) => {
  const dry = { ...state, humidity: si('humidity', 0) };
  const half = { ...dry, pressure: si('pressure', dry.pressure / 2) };
  close(moistAirDensity(half) * 2, moistAirDensity(dry), 5e-4);
  close(speedOfSound(dry), dryAirSpeedOfSound({ temperature: dry.temperature }), 6e-4);
});

test.prop([moistAirArbitrary, fc.double({ min: 0.01, max: 0.5, noNaN: true })])(
  'warmer or moister air is lighter and faster',
  (state, step) => {
    const moister = { ...state, humidity: si('humidity', state.humidity * (1 - step)) };
    const warmer = { ...state, temperature: si('temperature', state.temperature + 10 * step) };
    expect(moistAirDensity(moister)).toBeGreaterThan(moistAirDensity(state));
    expect(speedOfSound(moister)).toBeLessThan(speedOfSound(state));
    expect(moistAirDensity(warmer)).toBeLessThan(moistAirDensity(state));
    expect(speedOfSound(warmer)).toBeGreaterThan(speedOfSound(state));
  },
);

test.prop([moistAirArbitrary, fc.double({ min: 0.01, max: 1, noNaN: true })])(
  'vapour fraction is proportional to humidity',
  (state, factor) => {
    const drier = { ...state, humidity: si('humidity', state.humidity * factor) };
    close(waterVapourFraction(drier), waterVapourFraction(state) * factor);
  },
);

/** A finite answer, or a refusal; nothing else. */
function answers(work: () => readonly number[]) {
  let values: readonly number[];
  try {
    values = work();
  } catch (error) {
    expect(error).toMatchObject({ code: 'airspring-input' });
    return;
  }
  for (const value of values) expect(Number.isFinite(value)).toBe(true);
}
const numbers = ({ warnings: _, ...rest }: Air) => Object.values(rest) as number[];
const fuzz = { numRuns: fuzzRuns };
const time = 5000 + 10 * fuzzRuns; // ms: more runs, more time

test.prop([wildConditions], fuzz)(
  'air: any input is answered with finite positive numbers or refused',
  (conditions) => {
    answers(() => {
      const a = air(conditions);
      for (const value of [a.density, a.speedOfSound, a.specificHeat, a.prandtlNumber])
        expect(value).toBeGreaterThan(0);
      expect(a.heatCapacityRatio).toBeGreaterThan(1);
      return numbers(a);
    });
  },
);

const { altitude, ...moist } = wildAir;
test.prop([fc.record(moist) as fc.Arbitrary<unknown>], fuzz)(
  'moist air: answered or refused',
  (state) => {
    answers(() => [moistAirDensity, speedOfSound, waterVapourFraction].map((f) => f(state as MoistAirInput)));
  },
  time,
);

test.prop([wildAir.temperature, altitude], fuzz)(
  'temperature or altitude: answered or refused',
  (t, z) => {
    for (const f of [viscosity, thermalConductivity]) answers(() => [f(t as TemperatureInput)]);
    answers(() => [dryAirSpeedOfSound({ temperature: t as TemperatureInput })]);
    answers(() => Object.values(standardAtmosphere(z as AltitudeInput)));
  },
  time,
);
