import { fourthOrderBandPass, lineVentedBox, ventedBox } from '@airspring/core/enclosure';
import { voltageLimit } from '@airspring/core/limit';
import { logarithmicGrid } from '@airspring/core/quantity';
import { cutoffGradient } from '@airspring/core/response';
import { compileBuilds, type Distribution, normal, scatterOf, summaryOf, within } from '@airspring/core/tolerance';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';
import { pathsOf } from '../../refusal/faults.js';

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const system = ventedBox({ drivers, netVolume: '40 L', fb: '30 Hz', QL: 7 });
const grid = logarithmicGrid(10, 200, 40);
const scatter = { Cms: normal(0.05) };
const own = (change: Partial<Distribution>): Distribution => ({ ...normal(0.05), ...change });

test.each([-1, 1.5, Number.NaN, Infinity, 1e12, '3' as never])('a run of %s builds is refused', (count) => {
  expect(pathsOf(() => compileBuilds(system, scatter, grid)(1, 0, count))).toEqual(['count']);
});

test.each([-1, 1.5, Number.NaN, 2 ** 32])('builds from number %s on are refused', (first) => {
  expect(pathsOf(() => compileBuilds(system, scatter, grid)(1, first, 3))).toEqual(['first']);
});

test('frequencies that do not rise are refused', () => {
  expect(pathsOf(() => compileBuilds(system, scatter, Float64Array.of(200, 100) as never))).toEqual(['frequencies[1]']);
  expect(pathsOf(() => compileBuilds(system, scatter, new Float64Array(0) as never))).toEqual(['frequencies']);
});

test('what is no distribution is refused at its name', () => {
  for (const wrong of [0.05, undefined, null, {}, own({ standardDeviation: 0 })]) {
    expect(pathsOf(() => compileBuilds(system, { Cms: wrong as never }, grid))).toEqual(['scatter.Cms']);
  }
  expect(pathsOf(() => compileBuilds(system, undefined as never, grid))).toEqual(['scatter']);
});

test('a number of an element over frequency scatters by both names', () => {
  const piped = lineVentedBox({ drivers, netVolume: '40 L', vent: { diameter: '75 mm', length: '25 cm' }, QL: 7 });
  const { f3 } = compileBuilds(piped, { 'vent.length': within(0.1) }, grid)(1, 0, 40);
  const slope = cutoffGradient(piped);
  if (!slope.ok) throw new Error('no gradient');
  const spread = Math.max(...f3) - Math.min(...f3);
  // Of forty values within ±10 %, the outermost lie apart by nearly 20 %.
  expect(spread / Math.abs(0.2 * slope.byElement['vent.length']!)).toBeGreaterThan(0.8);
  expect(spread / Math.abs(0.2 * slope.byElement['vent.length']!)).toBeLessThan(1.2);
  expect(pathsOf(() => compileBuilds(piped, { vent: within(0.1) }, grid))).toEqual(['scatter.vent']);
});

test.each([0, -1, Number.NaN, Infinity])('a distribution that gives the factor %s is refused at its name', (factor) => {
  const kernel = compileBuilds(system, { Bl: own({ factor: () => factor }) }, grid);
  expect(pathsOf(() => kernel(1, 0, 3))).toEqual(['scatter.Bl.factor']);
});

test.each([0, 1, 1.5, Number.NaN])('the scatter of %s builds is refused', (builds) => {
  expect(pathsOf(() => scatterOf(system, scatter, { builds }))).toEqual(['options.builds']);
});

test('an option that does not exist is refused', () => {
  expect(pathsOf(() => scatterOf(system, scatter, { build: 20 } as never))).toEqual(['options.build']);
});

test('a reference that is none is refused, and so are limits that no build can be held to', () => {
  const limits = [voltageLimit('20 V')];
  const frequencies = logarithmicGrid(30, 100, 3);
  for (const work of [
    (more: object) => scatterOf(system, scatter, { builds: 20, ...more }),
    (more: object) => compileBuilds(system, scatter, grid, more),
  ]) {
    expect(pathsOf(() => work({ reference: 'max' }))).toEqual(['options.reference']);
    expect(pathsOf(() => work({ within: { limits } }))).toEqual(['options.within.frequencies']);
    expect(pathsOf(() => work({ within: { frequencies } }))).toEqual(['options.within.limits']);
    expect(pathsOf(() => work({ within: { limits: {}, frequencies } }))).toEqual(['limits']);
    for (const gain of [
      [0, 0],
      [0, 0, 0, 0],
    ]) {
      expect(pathsOf(() => work({ within: { limits, frequencies, gain } }))).toEqual(['options.within.gain']);
    }
    expect(pathsOf(() => work({ within: { limits, frequencies, gain: [0, Number.NaN, 0] } }))).toEqual([
      'options.within.gain[1]',
    ]);
  }
});

test('parts of other frequencies, or none, are refused', () => {
  const part = compileBuilds(system, scatter, grid)(1, 0, 20);
  expect(pathsOf(() => summaryOf(system, scatter, logarithmicGrid(10, 200, 50), [part]))).toEqual(['parts[0].levels']);
  expect(pathsOf(() => summaryOf(system, scatter, grid, []))).toEqual(['parts']);
});

test('builds of a band-pass, which has no f3, are refused', () => {
  const box = { drivers, rearVolume: '20 L', frontVolume: '15 L', frontTuning: '52 Hz' } as const;
  expect(pathsOf(() => compileBuilds(fourthOrderBandPass(box), scatter, grid))).toEqual(['system']);
});
