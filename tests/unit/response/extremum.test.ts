import { standardAir } from '@airspring/core/air';
import { driver, lr2Inductor } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { cutoff, features, lowestLoad, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';

/** Invented. */
const sizes = { Sd: 0.033, Mms: 0.086, Cms: 0.4e-3, Re: 5.6 } as const;

test('a peak between the last two samples of the band is found, where the response function has it', () => {
  const [Rms, Bl] = [3.6, 9];
  const box = closedBox({ drivers: driver({ ...sizes, Rms, Bl } as never), netVolume: '20 L' });
  const stiffness = 1 / sizes.Cms + (standardAir.density * standardAir.speedOfSound ** 2 * sizes.Sd ** 2) / 0.02;
  const Q = Math.sqrt(stiffness * sizes.Mms) / (Rms + Bl ** 2 / sizes.Re);
  const top = Math.sqrt(stiffness / sizes.Mms) / (2 * Math.PI) / Math.sqrt(1 - 1 / (2 * Q * Q));
  const { peaks } = features(box, { to: si('frequency', top * 1.001) });
  expect(peaks).toHaveLength(1);
  expect(Math.abs(peaks[0]!.frequency / top - 1)).toBeLessThan(1e-9);
  const height = 20 * Math.log10((Q * Q) / Math.sqrt(Q * Q - 0.25));
  expect(peaks[0]!.value).toBeCloseTo(height, 9);
  // And the maximum that a cut-off is counted from is that peak.
  const band = { to: si('frequency', top * 1.004), drop: 1 };
  const found = cutoff(box, { ...band, reference: 'maximum' });
  const known = cutoff(box, { ...band, reference: { level: si('level', features(box).referenceLevel + height) } });
  expect(found.ok && known.ok).toBe(true);
  if (found.ok && known.ok) expect(Math.abs(found.frequency / known.frequency - 1)).toBeLessThan(1e-9);
});

test('a dip of the impedance close beside its peak is told apart from the peak', () => {
  const soft = driver({ Sd: 0.012, Mms: 0.04, Cms: 1.2e-3, Rms: 0.9, Re: 5.6, Bl: 9 } as never);
  for (let fb = 39; fb < 41; fb += 0.02) {
    const box = ventedBox({ drivers: soft, netVolume: '2000 L', fb: si('frequency', fb) });
    const { impedanceMaxima, impedanceMinima } = features(box, { from: '30 Hz', to: '2000 Hz' });
    for (const { frequency } of [...impedanceMaxima, ...impedanceMinima]) {
      const step = 1e-5 * frequency;
      const [a, b, c] = respond(box, [frequency - step, frequency, frequency + step]).impedance as never as number[];
      expect((b! - a!) * (b! - c!)).toBeGreaterThan(0);
    }
  }
});

test('the greatest current angle is that of the greater of two tops that are nearly alike', () => {
  const band = Array.from({ length: 20_001 }, (_, i) => 20 * 10 ** (i / 20_000));
  const small = {
    Sd: 0.010542,
    Mms: 0.019098,
    Cms: 0.64283e-3,
    Re: 5.48,
    Bl: 5.328,
    coil: lr2Inductor({ Le: '0.149 mH', R2: '4.63 ohm', L2: '4.35 mH' }),
  } as const;
  for (let Rms = 0.82; Rms < 0.86; Rms += 0.002) {
    const drivers = driver({ ...small, Rms } as never);
    const box = ventedBox({ drivers, netVolume: '52.08 L', fb: '86.03 Hz', sourceResistance: '0.0822 ohm' });
    const most = respond(box, band).impedancePhase.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
    expect(Math.abs(lowestLoad(box).angle.value)).toBeGreaterThan(most - 1e-9);
  }
});
