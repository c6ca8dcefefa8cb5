import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { cutoff, features, passband } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';
import { pathsOf } from '../../refusal/faults.js';

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const system = ventedBox({ drivers, netVolume: '40 L', fb: '30 Hz', QL: 7 });

test('what is no filter is refused', () => {
  for (const filter of [null, 'x'] as never[]) {
    expect(pathsOf(() => cutoff(system, { filter }))).toEqual(['cutoff.filter']);
  }
});

test('a fault in the options of a passband is found there', () => {
  expect(pathsOf(() => passband(system, { drop: Number.NaN }))).toEqual(['passband.drop']);
});

test('frequencies in a reason are told in four digits', () => {
  const found = cutoff(system, { from: (200 / 7) as never, to: (100 / 3) as never });
  expect(found.ok || found.because[0]?.text).toMatch(/^at 33\.33 Hz, the end of the band/);
});

test('a level that is nowhere high enough has no ripple', () => {
  expect(features(system, { reference: { level: '300 dB' } }).ripple).toBe(0);
  const dull = closedBox({ drivers: { ...drivers, Le: 0.05 as never }, netVolume: '40 L' });
  const { f3, ripple } = features(dull);
  expect(f3).toBeUndefined();
  expect(ripple).toBeLessThan(10);
});
