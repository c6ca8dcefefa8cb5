import { infiniteBaffle, openBaffle, type System } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, features, passband, probeColumns, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { flat, largest } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { at, type Complex, flowOf, over } from '../complex.js';
import { paperAir, physical, split } from './textbook.js';

const check = checkIn(paperAir);

const [fs, Qts] = [30, 0.5];
const drivers = physical({ fs, ...split(Qts), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const box = (path: number) => openBaffle({ drivers, path: si('length', path) }, paperAir);
/** p/p∞ of the front alone, s over ωs: the driver without a box. */
const front = (s: Complex) => over(at(s, 0, 0, 1), at(s, 1, 1 / Qts, 1));
const grid = logarithmicGrid(5, 500, 101);
const source = { key: 'rayleigh1896', locator: 'sec. 302: two sources of opposite flow, a path apart' };

const alone = flowOf(front, drivers, fs, grid);
/** U (1 − exp(−jωD/c)), 345 m/s. */
const both = (D: number) => {
  const [re, im] = [new Float64Array(grid.length), new Float64Array(grid.length)];
  grid.forEach((f, i) => {
    const angle = (2 * Math.PI * f * D) / 345;
    const [a, b] = [alone.re[i]!, alone.im[i]!];
    const [c, d] = [1 - Math.cos(angle), Math.sin(angle)];
    re[i] = a * c - b * d;
    im[i] = a * d + b * c;
  });
  return { re, im };
};
const printed = both(0.45);
check('enclosure.open-baffle.response', {
  formula: 'enclosure/openBaffle',
  source,
  status: 'derived',
  kind: 'standard',
  given: { path: { value: 0.45, unit: 'm' }, Qts: { value: Qts, unit: '1' } },
  got: ({ path }) => flat(probeColumns(compiledSystem(box(path)), grid).radiatedFlow!),
  expected: flat(printed),
  unit: 'm³/s per V',
  tolerance: { absolute: 2e-14 * largest(printed), why: 'of the largest value; both in double precision' },
});
check('enclosure.open-baffle.level', {
  formula: 'enclosure/openBaffle',
  source: { ...source, locator: 'the same, with pressure ρf|U| at 1 m in half space' },
  status: 'derived',
  kind: 'standard',
  given: { density: { value: 1.18, unit: 'kg/m³' }, driveVoltageRms: { value: 1, unit: 'V' } },
  got: () => respond(box(0.45), grid).levelHalfSpace,
  expected: Array.from(
    grid,
    (f, i) => 20 * Math.log10((1.18 * f * Math.hypot(printed.re[i]!, printed.im[i]!)) / 20e-6),
  ),
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'both in double precision' },
});
check('enclosure.open-baffle.loss', {
  formula: 'enclosure/openBaffle',
  source: { ...source, locator: 'sec. 302: 2 |sin(ωD/2c)| of the front alone; equal to it at ωD/c = π/3' },
  status: 'derived',
  kind: 'standard',
  given: { angle: { value: [0.01, 0.5, Math.PI / 3, Math.PI / 2, Math.PI], unit: 'ωD/c, rad' } },
  got: ({ angle }) => {
    const D = si('length', (angle * 345) / (2 * Math.PI * 100));
    const walled = infiniteBaffle({ drivers }, paperAir) as System;
    const [open, wall] = [openBaffle({ drivers, path: D }, paperAir), walled].map(
      (system) => respond(system, [100]).levelHalfSpace[0] as number,
    );
    return open! - wall!;
  },
  expected: [-40.000036191, -6.111267178, 0, 3.010299957, 6.020599913],
  unit: 'dB',
  tolerance: { absolute: 1e-9, why: 'values to nine decimals' },
});
check('enclosure.open-baffle.delay', {
  formula: 'enclosure/openBaffle',
  source: { ...source, locator: 'the rear is heard D/c later; 345 m/s' },
  status: 'derived',
  kind: 'standard',
  given: { path: { value: [0.1, 0.69, 3.45], unit: 'm' } },
  got: ({ path }) => box(path).network.values.rearDelay as number,
  expected: [0.1 / 345, 0.002, 0.01],
  unit: 's',
  tolerance: { relative: 1e-15, why: 'one division in double precision' },
});

test('it has no asymptote; its features count from a stated reference', () => {
  expect(() => features(box(0.45))).toThrow(/maximum/);
  const found = passband(box(0.45), { reference: { frequency: si('frequency', 100) }, drop: 6 });
  expect(found.ok && found.lower! > 40 && found.lower! < 100).toBe(true);
});
test('a longer path reaches deeper', () => {
  const [short, long] = [box(0.3), box(0.9)].map((system) => respond(system, [40]).levelHalfSpace[0]!);
  expect(long! - short!).toBeCloseTo(20 * Math.log10(3), 0);
});
