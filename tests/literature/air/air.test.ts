import { air } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import { celsius, fixtures, state, statesOf } from './fixtures.js';

check('air.air.bulk-modulus', {
  formula: 'air/air',
  source: {
    key: 'picard2008',
    locator: 'eq. 1, with eq. 15 of Cramer 1993: ρc² at 20 °C, 50 %, 101325 Pa, worked out apart',
  },
  status: 'derived',
  kind: 'table',
  given: { pressure: { value: 101325, unit: 'Pa' } },
  got: ({ pressure }) => air().heatCapacityRatio * pressure,
  expected: 141911.059,
  unit: 'Pa',
  tolerance: { relative: 1e-8, why: 'the same closed formulas; nine digits given' },
});

check('air.air.heat-capacity-ratio', {
  formula: 'air/air',
  source: { key: 'coolprop', locator: 'humid-air module, ρc²/p; middle and corners of the range' },
  status: 'derived',
  kind: 'program',
  given: statesOf(fixtures.speedOfSound),
  got: (given) => air(state(given)).heatCapacityRatio,
  expected: fixtures.speedOfSound.heatCapacityRatio,
  unit: '1',
  tolerance: { relative: 7e-4, why: 'twice the 3e-4 of the speed of sound and the 1e-4 of the density' },
});

check('air.air.specific-heat', {
  formula: 'air/air',
  source: { key: 'coolprop', locator: 'humid-air module, output cp_ha; middle and corners of the range' },
  status: 'derived',
  kind: 'program',
  given: statesOf(fixtures.speedOfSound),
  got: (given) => air(state(given)).specificHeat,
  expected: fixtures.speedOfSound.specificHeat,
  unit: 'J/(kg·K)',
  tolerance: { relative: 0.01, why: 'real-gas part of cp neglected, as the docstring states' },
});

const tube = { key: 'keefe1984', locator: 'air constants at 300 K' };
const at300 = { temperature: { value: 26.85, unit: '°C' }, humidity: { value: 0, unit: '1' } };
const dryAt = ({ temperature, humidity }: { temperature: number; humidity: number }) =>
  air(state({ temperature, humidity, pressure: 101325 }));

check('air.air.tube-constants', {
  formula: 'air/air',
  source: tube,
  status: 'seen',
  kind: 'example',
  given: at300,
  got: (given) => {
    const { density, speedOfSound, viscosity, heatCapacityRatio } = dryAt(given);
    return [density, speedOfSound, viscosity, heatCapacityRatio];
  },
  printed: ['1.1769', '347.23', '1.846e-5', '1.4017'],
  unit: 'kg/m³, m/s, Pa·s, 1',
  tolerance: { relative: 1e-3, why: 'constants quoted for engineering, to four digits; γ there is that of the heats' },
});

check('air.air.prandtl', {
  formula: 'air/air',
  source: tube,
  status: 'seen',
  kind: 'example',
  given: at300,
  got: (given) => Math.sqrt(dryAt(given).prandtlNumber),
  printed: '0.841',
  unit: '1',
  tolerance: { relative: 0.01, why: 'half of the 2 % of the conductivity, under the root' },
});

check('air.air.thermal-conductivity', {
  formula: 'air/air',
  source: { key: 'coolprop', locator: 'dry air after Lemmon and Jacobsen 2004, 101325 Pa; both ends and between' },
  status: 'derived',
  kind: 'program',
  given: { temperature: { value: fixtures.dry.temperature, unit: '°C' } },
  got: ({ temperature }) => air({ temperature: celsius(temperature), humidity: si('humidity', 0) }).thermalConductivity,
  expected: fixtures.dry.thermalConductivity,
  unit: 'W/(m·K)',
  tolerance: { relative: 0.02, why: 'uncertainty of the equation of 2004, 2 % (from memory of the paper)' },
});
