import { dryAirSpeedOfSound, speedOfSound } from '@airspring/core/air';
import { check } from '../../ledger/check.js';
import { celsius, fixtures, state, statesOf } from './fixtures.js';

const got = (given: { temperature: number; pressure: number; humidity: number }) => speedOfSound(state(given));

check('air.speed-of-sound.table', {
  formula: 'air/speedOfSound',
  source: { key: 'cramer1993', locator: 'eq. 15 with table III, worked out apart for 400 ppm of carbon dioxide' },
  status: 'derived',
  kind: 'table',
  given: {
    temperature: { value: [0, 0, 0, 10, 10, 10, 20, 20, 20, 30, 30, 30], unit: '°C' },
    pressure: { value: 101325, unit: 'Pa' },
    humidity: { value: [0, 0.5, 1, 0, 0.5, 1, 0, 0.5, 1, 0, 0.5, 1], unit: '1' },
  },
  got,
  expected: [
    331.44767244, 331.60354084, 331.75935726, 337.45933611, 337.78107344, 338.10260097, 343.35946686, 343.98672889,
    344.61322971, 349.14806469, 350.30972698, 351.46887946,
  ],
  unit: 'm/s',
  tolerance: { relative: 1e-10, why: 'the same closed formula; eleven digits given' },
});

check('air.speed-of-sound.figure', {
  formula: 'air/speedOfSound',
  source: { key: 'cramer1993', locator: 'figure 1' },
  status: 'seen',
  kind: 'table',
  given: {
    temperature: { value: [0, 0, 0, 10, 10, 10, 20, 20, 20, 30, 30, 30], unit: '°C' },
    pressure: { value: 101325, unit: 'Pa' },
    humidity: {
      value: [0.30174, 0.60032, 0.99526, 0.30332, 0.6019, 0.9921, 0.30174, 0.6019, 0.98736, 0.30332, 0.6019, 0.98894],
      unit: '1',
    },
  },
  got,
  printed: [
    '331.627',
    '331.7063',
    '331.9048',
    '337.6984',
    '337.8571',
    '338.1746',
    '343.7302',
    '344.1667',
    '344.6825',
    '349.881',
    '350.5556',
    '351.5079',
  ],
  unit: 'm/s',
  tolerance: { absolute: 0.15, why: 'digitised from a printed figure' },
});

check('air.speed-of-sound.program', {
  formula: 'air/speedOfSound',
  source: { key: 'coolprop', locator: 'humid-air module, output speed_of_sound; middle and corners of the range' },
  status: 'derived',
  kind: 'program',
  given: statesOf(fixtures.speedOfSound),
  got,
  expected: fixtures.speedOfSound.speedOfSound,
  unit: 'm/s',
  tolerance: { relative: 3e-4, why: 'uncertainty of the polynomial, 300 ppm (from memory of the paper)' },
});

check('air.dry-air-speed-of-sound.reference', {
  formula: 'air/dryAirSpeedOfSound',
  source: { key: 'iso9613_1', locator: 'formula A.5' },
  status: 'seen',
  kind: 'standard',
  given: { temperature: { value: 293.15, unit: 'K' } },
  got: ({ temperature }) => dryAirSpeedOfSound({ temperature: celsius(temperature - 273.15) }),
  printed: '343.2',
  unit: 'm/s',
  tolerance: { relative: 2e-16, why: 'the definition' },
});

check('air.dry-air-speed-of-sound.table', {
  formula: 'air/dryAirSpeedOfSound',
  source: { key: 'iso9613_1', locator: 'formula A.5, worked out apart' },
  status: 'derived',
  kind: 'standard',
  given: { temperature: { value: [-20, -10, 0, 10, 15, 20, 25, 30, 40, 50], unit: '°C' } },
  got: ({ temperature }) => dryAirSpeedOfSound({ temperature: celsius(temperature) }),
  expected: [
    318.927005946, 325.165167786, 331.285884941, 337.295551083, 340.260583069, 343.2, 346.114454494, 349.004571918,
    354.714170057, 360.333309116,
  ],
  unit: 'm/s',
  tolerance: { relative: 2e-12, why: 'closed formula; twelve digits given' },
});

check('air.dry-air-speed-of-sound.minus20', {
  formula: 'air/dryAirSpeedOfSound',
  source: { key: 'pyfar', locator: 'number in a test of its ideal-gas speed of sound' },
  status: 'seen',
  kind: 'program',
  given: { temperature: { value: -20, unit: '°C' } },
  got: ({ temperature }) => dryAirSpeedOfSound({ temperature: celsius(temperature) }),
  printed: '318.927',
  unit: 'm/s',
});

check('air.dry-air-speed-of-sound.program', {
  formula: 'air/dryAirSpeedOfSound',
  source: { key: 'coolprop', locator: 'dry air by its reference equation of state, 101325 Pa' },
  status: 'derived',
  kind: 'program',
  given: { temperature: { value: fixtures.dryStandardRange.temperature, unit: '°C' } },
  got: ({ temperature }) => dryAirSpeedOfSound({ temperature: celsius(temperature) }),
  expected: fixtures.dryStandardRange.speedOfSound,
  unit: 'm/s',
  tolerance: { relative: 1e-3, why: 'the standard takes γ constant, which varies by 10⁻³ over the range' },
});
