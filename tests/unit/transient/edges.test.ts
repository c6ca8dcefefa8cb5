/** What has no answer is refused: too few steps for a tone, a share of a tone that is not there, a burst of a part of a cycle. */
import { meanBurstLevel, playBurst } from '@airspring/transient/burst';
import { harmonicDistortion, modulationDistortion, steadyState } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';
import { closed } from './boxes.js';

test('steps that fold a tone or a harmonic onto another are refused', () => {
  const ask = (multiple: number, orders: number, steps: number) =>
    pathsOf(() =>
      steadyState(closed, {
        base: '30 Hz',
        tones: [{ multiple, voltageRms: '1 V' }],
        outputs: ['displacement'],
        ...{ orders, steps, mostPeriods: 2 },
      }),
    );
  expect(ask(2, 2, 4)).toEqual(['steady.steps']);
  expect(ask(1, 3, 6)).toEqual(['steady.steps']);
  expect(ask(1, 3, 64)).toEqual([]);
});

test('distortion over a tone that is not there is refused', () => {
  const amplitudes = Float64Array.of(0, 0, 1);
  expect(pathsOf(() => harmonicDistortion({ amplitudes }))).toEqual(['amplitudes[1]']);
  expect(pathsOf(() => modulationDistortion({ amplitudes }, 1, 15))).toEqual(['amplitudes[15]']);
});

test('a burst of a part of a cycle or of a treble tone is refused at its own path', () => {
  const ask = (more: object) =>
    pathsOf(() => playBurst(closed, { frequency: '30 Hz', driveVoltageRms: '1 V', ...more }));
  expect(ask({ cycles: 1e-6 })).toEqual(['burst.cycles']);
  expect(ask({ frequency: '20 kHz' })).toEqual(['burst.frequency']);
});

test('the mean of bursts is between them at any level', () => {
  for (const level of [-7000, 0, 110, 7000]) expect(meanBurstLevel([level, level])).toBe(level);
});
