import { air } from '@airspring/core/air';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { bestOf, demo, metByWeights } from '../../arbitrary/brief.js';
import { faultsOf as refusal } from '../../refusal/faults.js';

const normal = air({});
const own = {
  temperature: '20 °C',
  humidity: '50 %',
  pressure: `${normal.pressure / 1000} kPa`,
  density: `${normal.density} kg/m³`,
  speedOfSound: `${normal.speedOfSound} m/s`,
  viscosity: `${normal.viscosity} Pa·s`,
  thermalConductivity: `${normal.thermalConductivity} W/(m·K)`,
} as const;
const faultsOf = (medium: object): string[] =>
  refusal(() => readBrief({ ...demo, air: medium }, standard)).map(({ path, code }) => `${path}: ${code}`);

test('a medium by its own numbers is used as it stands', () => {
  const read = readBrief({ ...demo, air: { ...own, density: '1.15 kg/m³' } }, standard).air;
  expect(read.density).toBe(1.15);
  expect(read.speedOfSound).toBeCloseTo(normal.speedOfSound, 9);
  expect(read.heatCapacityRatio).toBeCloseTo((1.15 * normal.speedOfSound ** 2) / normal.pressure, 9);
});

test('the numbers of ordinary air lead to the boxes of ordinary air', () => {
  const outer = (air: object) => metByWeights({ ...demo, air }, 2).designs.map(({ box }) => box.outer);
  expect(outer(own)).toEqual(outer({}));
});

test('a heavier gas is another box', () => {
  const gas = {
    temperature: '20 °C',
    pressure: '101.325 kPa',
    density: '1.66 kg/m³',
    speedOfSound: '319 m/s',
    viscosity: '22.3e-6 Pa·s',
    thermalConductivity: '0.0177 W/(m·K)',
  };
  const closed = { ...demo, box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } };
  const [ours, theirs] = [{}, gas].map((air) => bestOf({ ...closed, air }));
  expect(theirs!.box.netVolume).not.toBeCloseTo(ours!.box.netVolume, 3);
});

test('what a medium lacks or contradicts is told at its field', () => {
  expect(faultsOf({ density: '1.2 kg/m³' }).sort()).toEqual([
    'air.pressure: empty',
    'air.speedOfSound: empty',
    'air.temperature: empty',
    'air.thermalConductivity: empty',
    'air.viscosity: empty',
  ]);
  expect(faultsOf({ ...own, heatCapacityRatio: 1.6 })).toEqual(['air.heatCapacityRatio: inconsistent']);
  expect(faultsOf({ ...own, speedOfSound: '500 m/s' })).toEqual(['air.speedOfSound: inconsistent']);
  expect(faultsOf({ ...own, altitude: '100 m' })).toEqual(['air.altitude: conflict']);
  expect(faultsOf({ ...own, density: '1.2 g' })).toEqual(['air.density: unit']);
});
