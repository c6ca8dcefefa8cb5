/** The spectrum of a burst by its definition: each band at its greatest line, line by line. */
import { expect, test } from 'vitest';
import { burstSpectrum } from '../../../packages/transient/src/burst/burst-spectrum.js';

test('each band has the greatest line that the sum of its definition has', () => {
  const [frequency, sampleRate, burst] = [40, 40 * 512, 1024];
  const signal = Float64Array.from({ length: 3 * burst }, (_, n) => {
    const t = n / 512;
    const tone = (multiple: number, size: number) => size * Math.sin(2 * Math.PI * multiple * t + multiple);
    return Math.exp(-t) * (tone(1, 1) + tone(2.9, 0.02) + tone(7.3, 0.004) + tone(126, 0.01));
  });
  const size = (multiple: number): number => {
    let [re, im] = [0, 0];
    signal.forEach((x, n) => {
      re += x * Math.cos((2 * Math.PI * multiple * n) / 512);
      im -= x * Math.sin((2 * Math.PI * multiple * n) / 512);
    });
    return Math.hypot(re, im);
  };
  const greatest = (from: number, to: number, count: number) =>
    Math.max(...Array.from({ length: count + 1 }, (_, i) => size(from + ((to - from) * i) / count)));
  const bands = [
    { name: 'middle', from: 2.6, to: 3.2, level: 0 },
    { name: 'rising to its end', from: 6.5, to: 7.1, level: 0 },
    { name: 'as high as there are any', from: 125, to: 128, level: 0 },
  ];
  const { tone, levels } = burstSpectrum(bands, { frequency, sampleRate, burst, longest: 8 * burst })(signal);
  expect(tone).toBeCloseTo(greatest(0.5, 1.5, 400), 1);
  bands.forEach(({ from, to }, i) => {
    expect(levels[i]).toBeCloseTo(20 * Math.log10(greatest(from, to, 300) / tone), 2);
  });
});
