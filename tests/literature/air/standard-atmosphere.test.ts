import { standardAtmosphere } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';

const at = (altitude: number) => standardAtmosphere(si('altitude', altitude));
const printed = { value: [0, 2000, 4000, 6000, 8000, 10000], unit: 'm' };
const source = { key: 'ussa1976', locator: 'table to 86 km by 2 km, geometric altitude' };

check('air.standard-atmosphere.table', {
  formula: 'air/standardAtmosphere',
  source,
  status: 'seen',
  kind: 'table',
  given: { altitude: printed },
  got: ({ altitude }) => at(altitude).pressure,
  printed: ['1.0132e5', '7.9501e4', '6.1660e4', '4.7218e4', '3.5652e4', '2.6500e4'],
  unit: 'Pa',
});

check('air.standard-atmosphere.temperature', {
  formula: 'air/standardAtmosphere',
  source,
  status: 'seen',
  kind: 'table',
  given: { altitude: printed },
  got: ({ altitude }) => at(altitude).temperature,
  printed: ['288.15', '275.15', '262.17', '249.19', '236.22', '223.25'],
  unit: 'K',
});

check('air.standard-atmosphere.fine', {
  formula: 'air/standardAtmosphere',
  source: { key: 'ussa1976', locator: 'lowest layer, worked out apart' },
  status: 'derived',
  kind: 'standard',
  given: { altitude: { value: [0, 100, 250, 500, 750, 1000, 1500, 2000, 2500, 3000, 4000], unit: 'm' } },
  got: ({ altitude }) => at(altitude).pressure,
  expected: [
    101325.0, 100129.4573, 98357.65137, 95461.2895, 92634.59987, 89876.28519, 84559.67669, 79501.42464, 74691.75647,
    70121.16224, 61660.44413,
  ],
  unit: 'Pa',
  tolerance: { relative: 1e-9, why: 'closed formula; ten digits given' },
});

const integrated = { value: [-5000, -2500, 5500, 11000], unit: 'm' };
const hydrostatic = {
  formula: 'air/standardAtmosphere',
  source: {
    key: 'scipy',
    locator: 'hydrostatic equation with the constants of 1976, integrated; script atmosphere.py',
  },
  status: 'derived',
  kind: 'program',
  given: { altitude: integrated },
  tolerance: { relative: 1e-11, why: 'twelve digits printed' },
} as const;
check('air.standard-atmosphere.ends', {
  ...hydrostatic,
  got: ({ altitude }) => at(altitude).pressure,
  expected: [177761.500481, 135204.511977, 50539.3151043, 22699.9607392],
  unit: 'Pa',
});
check('air.standard-atmosphere.ends.temperature', {
  ...hydrostatic,
  got: ({ altitude }) => at(altitude).temperature,
  expected: [320.675583436, 304.406393343, 252.430904869, 216.773512704],
  unit: 'K',
});
