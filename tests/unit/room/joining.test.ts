import { butterworthShape, highPass, linkwitzRileyShape, lowPass } from '@airspring/core/filter';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import type { JoinInput } from '@airspring/core/room';
import {
  bestDelay,
  joinMains,
  levelAtDistance,
  mainPressure,
  pressureLevel,
  soundPressure,
  sumAtListener,
} from '@airspring/core/room';
import { expect, test } from 'vitest';
import { ventedOf } from '../../literature/enclosure/textbook.js';
import { faultsOf } from '../../refusal/faults.js';

const told = (work: () => unknown) => faultsOf(work).map(({ code, path }) => `${code} ${path}`);
const grid = logarithmicGrid('20 Hz', '320 Hz', 193);
const flat = () => ({ re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) });
const band = { from: '40 Hz', to: '160 Hz' } as const;
const shape = linkwitzRileyShape(4);
const both: JoinInput = {
  box: { pressure: flat(), filter: lowPass(shape, '80 Hz'), distance: '2 m' },
  main: { pressure: flat(), filter: highPass(shape, '80 Hz'), distance: '2 m' },
};

test('a response becomes a pressure and back', () => {
  const columns = respond(ventedOf({ QL: 7, Qts: 0.38, h: 1, alpha: 1.4 }), grid, { driveVoltageRms: '2.83 V' });
  const pressure = soundPressure(columns);
  pressureLevel(pressure).forEach((level, i) => {
    expect(level).toBeCloseTo(columns.levelHalfSpace[i]!, 9);
    expect(Math.cos(Math.atan2(pressure.im[i]!, pressure.re[i]!) - columns.phase[i]!)).toBeCloseTo(1, 12);
  });
});

test('twice the distance is 6.02 dB less', () => {
  expect(levelAtDistance({ level: '90 dB', distance: '2 m' })).toBeCloseTo(90 - 20 * Math.log10(2), 12);
});

test('two equal boxes: 6.02 dB more in phase, nothing where one is half a period late', () => {
  const box = { pressure: flat(), distance: '1 m' } as const;
  const one = pressureLevel(sumAtListener([box], grid))[0]!;
  expect(pressureLevel(sumAtListener([box, box], grid))[0]! - one).toBeCloseTo(20 * Math.log10(2), 12);
  const late = sumAtListener([box, { ...box, delay: si('time', 0.5 / grid[0]!) }], grid);
  expect(pressureLevel(late)[0]! - one).toBeLessThan(-280);
});

test('boxes of one distance cross at the corner of a Linkwitz–Riley filter, in phase, 6.02 dB down', () => {
  const { crossing } = joinMains(both, grid);
  expect(crossing!.frequency).toBeCloseTo(80, 9);
  expect(crossing!.phaseDifference).toBeCloseTo(0, 9);
  const level = 20 * Math.log10(1 / 2 / 2 / 20e-6); // half at the corner, half at 2 m
  expect(crossing!.level).toBeCloseTo(level, 9);
  const inverted = joinMains({ ...both, main: { ...both.main, polarity: 'inverted' } }, grid);
  expect(Math.abs(inverted.crossing!.phaseDifference)).toBeCloseTo(Math.PI, 9);
});

test('where the main speaker is always the louder there is no crossing', () => {
  expect(joinMains({ ...both, box: { ...both.box, level: '-200 dB' } }, grid)).not.toHaveProperty('crossing');
});

test('the best delay undoes a difference of distance, and the best polarity a wire the wrong way round', () => {
  const main = { ...both.main, distance: '3.4398 m', polarity: 'inverted' } as const;
  const found = bestDelay(joinMains({ ...both, main }, grid), band);
  expect(found.polarity).toBe('inverted');
  expect(found.mainDelay).toBe(0);
  expect(found.boxDelay).toBeCloseTo(1.4398 / 343.99, 5);
  expect(found.shortfall).toBeLessThan(1e-9);
  expect(found.otherPolarity.polarity).toBe('normal');
  expect(found.otherPolarity.shortfall).toBeGreaterThan(0.1);
});

test('in phase already: no delay, and the polarity as it is', () => {
  const { polarity, boxDelay, mainDelay, shortfall } = bestDelay(joinMains(both, grid), band);
  expect(polarity).toBe('normal');
  expect(boxDelay + mainDelay).toBeLessThan(1e-8);
  expect(shortfall).toBeLessThan(1e-12);
});

test('what cannot be is refused at its place', () => {
  const short = { re: new Float64Array(3), im: new Float64Array(3) };
  const holed = { re: flat().re.fill(Number.NaN, 7, 8), im: flat().im };
  const join = (box: object, main: object = both.main) => told(() => joinMains({ box, main } as never, grid));
  expect(join({ ...both.box, pressure: short }, { ...both.main, polarity: 'up' })).toEqual([
    'unknown-field main.polarity',
    'inconsistent box.pressure.re',
  ]);
  expect(join({ ...both.box, pressure: holed })).toEqual(['not-finite box.pressure.re[7]']);
  const plain = { re: [1, 2, 3], im: [0, 0, 0] } as never;
  expect(() => sumAtListener([{ pressure: plain, distance: '1 m' }], [10, 20, 30])).toThrow(
    'sources[0].pressure.re: got a list of 3; expected a Float64Array of 3 finite values.',
  );
  expect(join({ pressure: flat() })).toEqual(['empty box.distance']);
  expect(told(() => sumAtListener([], grid))).toEqual(['empty sources']);
  expect(told(() => sumAtListener([{ pressure: flat(), distance: '2 m', solidAngle: 20 }], grid))).toEqual([
    'out-of-range sources[0].solidAngle',
  ]);
  const joined = joinMains(both, grid);
  expect(told(() => bestDelay(joined, { from: '80 Hz', to: '80.1 Hz' }))).toEqual(['inconsistent to']);
  expect(told(() => bestDelay(joined, { ...band, most: '100 s' }))).toEqual(['out-of-range most']);
  expect(told(() => soundPressure({ levelHalfSpace: Float64Array.of(90), phase: Float64Array.of() }))).toEqual([
    'inconsistent phase',
  ]);
  expect(told(() => soundPressure({ levelHalfSpace: Float64Array.of(NaN), phase: Float64Array.of(0) }))).toEqual([
    'not-finite levelHalfSpace[0]',
  ]);
  const main = { level: '88 dB', highPass: { ...highPass(butterworthShape(2), '60 Hz'), denominator: [1, -1, 1] } };
  expect(told(() => mainPressure(main as never, grid))).toEqual(['inconsistent main.highPass.denominator']);
});
