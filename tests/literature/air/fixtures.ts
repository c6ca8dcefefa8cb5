import type { MoistAirInput } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import json from './fixtures.json' with { type: 'json' };

/** Air by an independent program; `fixtures.py` beside this file wrote it. */
export const fixtures = json;

interface States {
  readonly temperature: readonly number[];
  readonly pressure: readonly number[];
  readonly humidity: readonly number[];
}

/** The states of a table as given values of a check: °C, Pa, 1. */
export const statesOf = ({ temperature, pressure, humidity }: States) => ({
  temperature: { value: temperature, unit: '°C' },
  pressure: { value: pressure, unit: 'Pa' },
  humidity: { value: humidity, unit: '1' },
});

/** Number in °C → SI. */
export const celsius = (t: number) => si('temperature', t + 273.15);

/** The numbers of a check → the input of a door. */
export const state = (given: { temperature: number; pressure: number; humidity: number }): MoistAirInput => ({
  temperature: celsius(given.temperature),
  pressure: si('pressure', given.pressure),
  humidity: si('humidity', given.humidity),
});
