import type { AirConditions } from '@airspring/core/air';
import { type Kind, kinds, type Quantity, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';

const between = <K extends Kind>(kind: K, min: number, max: number): fc.Arbitrary<Quantity<K>> =>
  fc.double({ min, max, noNaN: true }).map((value) => si(kind, value));

/** Air where people listen: 0 to 30 °C, 75 to 102 kPa, no formula outside its range. */
export const moistAirArbitrary = fc.record({
  temperature: between('temperature', 273.15, 303.15),
  pressure: between('pressure', 75e3, 102e3),
  humidity: between('humidity', 1e-6, 1),
});

/** Any number or text of a kind: unreadable, extreme, on the edges of what is accepted. */
const anything = (kind: Kind, edges: readonly number[]) =>
  fc.oneof(
    fc.constantFrom(...edges),
    fc.double(),
    fc.constantFrom(...kinds[kind].range),
    fc.tuple(fc.double(), fc.constantFrom(...Object.keys(kinds[kind].units))).map(([x, unit]) => `${x} ${unit}`),
    fc.double({ min: Math.min(...edges), max: Math.max(...edges), noNaN: true }),
  );

/** Inputs of the right type and of any size. */
export const wildAir = {
  temperature: anything('temperature', [213.15, 333.15]),
  pressure: anything('pressure', [2e4, 2e5]),
  humidity: anything('humidity', [0, 1e-9, 1]),
  altitude: anything('altitude', [-5000, 0, 11000]),
};

export const wildConditions = fc.record(wildAir, { requiredKeys: [] }) as fc.Arbitrary<AirConditions>;
