import { moistAirDensity } from '@airspring/core/air';
import { check } from '../../ledger/check.js';
import { fixtures, state, statesOf } from './fixtures.js';

const formula = 'air/moistAirDensity';
const got = (given: { temperature: number; pressure: number; humidity: number }) => moistAirDensity(state(given));

check('air.density.table', {
  formula,
  source: { key: 'picard2008', locator: 'eq. 1 with the constants of section 2 and the appendix, worked out apart' },
  status: 'derived',
  kind: 'table',
  given: {
    temperature: { value: [15, 18, 20, 20, 20, 20, 22, 23, 25, 27], unit: '°C' },
    pressure: { value: [101325, 101325, 101325, 101325, 101325, 90000, 101325, 100000, 101325, 101325], unit: 'Pa' },
    humidity: { value: [0.5, 0.5, 0, 0.5, 1, 0.5, 0.4, 0.5, 0.6, 0.5], unit: '1' },
  },
  got,
  expected: [
    1.221631222, 1.208196057, 1.204557342, 1.199313895, 1.194087244, 1.064638381, 1.191659004, 1.170487348, 1.175921602,
    1.168578115,
  ],
  unit: 'kg/m³',
  tolerance: { relative: 1e-9, why: 'the same closed formula; ten digits given' },
});

check('air.density.example', {
  formula,
  source: { key: 'massmetrology', locator: 'p. 205 of the appendix' },
  status: 'seen',
  kind: 'example',
  given: {
    temperature: { value: [10, 40], unit: '°C' },
    pressure: { value: [97325.3289, 101325], unit: 'Pa' },
    humidity: { value: 0.4, unit: '1' },
  },
  got,
  printed: ['1.19569', '1.11497'],
  unit: 'kg/m³',
  tolerance: {
    relative: 1e-4,
    why: 'the second (40 °C) seems to belong to the equation of 1981/91: its revision of argon in 2007 added 6e-5',
  },
});

check('air.density.program', {
  formula,
  source: {
    key: 'coolprop',
    locator: 'humid-air module, output Vha; middle and corners of the published range, 0 and 40 °C',
  },
  status: 'derived',
  kind: 'program',
  given: statesOf(fixtures.density),
  got,
  expected: fixtures.density.density,
  unit: 'kg/m³',
  tolerance: {
    relative: 1e-4,
    why: 'molar mass of dry air 28.966 against 28.965 g/mol (4e-5), other virial coefficients',
  },
});
