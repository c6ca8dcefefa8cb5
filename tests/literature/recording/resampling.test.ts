/** Changes of sample rate against an independent program, and the bands that are promised. */
import { compileResampler, resample } from '@airspring/transient/recording';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import json from './resampling.json' with { type: 'json' };

interface Case {
  readonly from: number;
  readonly to: number;
  readonly x: readonly number[];
  readonly y: readonly number[];
}
const rates = ({ from, to }: Case) => ({ from: `${from} Hz`, to: `${to} Hz` }) as const;

/** The same by blocks of odd sizes. */
function inBlocks(one: Case): number[] {
  const { start, run, end } = compileResampler(rates(one));
  const state = start();
  const out: number[] = [];
  for (let at = 0, size = 1; at < one.x.length; at += size, size = (3 * size) % 41) {
    out.push(...run(state, Float64Array.from(one.x.slice(at, at + size))));
  }
  return [...out, ...end(state)];
}

const scipy = { key: 'scipy', locator: 'scipy.signal.upfirdn with a sinc under its own Kaiser window' };
const direct = { key: 'scipy', locator: 'numpy, the sum itself, the window by scipy.special.i0' };
const double = { absolute: 4e-14, why: 'double precision on both sides; samples of about 1' };
const straight = { absolute: 5e-6, why: 'straight lines between 1024 phases; samples of about 1' };

for (const [cases, source, tolerance] of [
  [json.cases, scipy, double],
  [json.odd, direct, straight],
] as const) {
  for (const one of cases) {
    const row = {
      ...({ source, tolerance, status: 'derived', kind: 'program', expected: one.y, unit: '1' } as const),
      given: { from: { value: one.from, unit: 'Hz' }, to: { value: one.to, unit: 'Hz' } },
    } as const;
    check(`recording.resample.${one.from}.${one.to}`, {
      ...row,
      formula: 'recording/resample',
      got: () => resample(Float64Array.from(one.x), rates(one)),
    });
    check(`recording.resampler.${one.from}.${one.to}`, {
      ...row,
      formula: 'recording/compileResampler',
      got: () => inBlocks(one),
    });
  }
}

test('the filter passes and suppresses what it says', () => {
  expect(Math.max(...json.ripple.map(Math.abs))).toBeLessThan(1e-4);
  expect(json.stop).toBeLessThan(-98);
});
