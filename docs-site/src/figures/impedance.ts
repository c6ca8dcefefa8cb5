import type { Design } from 'airspring';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Panel } from './sweep.js';
import { thirdOctaves } from './third-octaves.js';

/** Magnitude of the impedance at the terminals: what the builder measures in the end. */
export function impedancePanel(designs: readonly Design[]): Panel {
  const title = 'Input impedance';
  const peaks = designs.map(({ name, told, impedance: { maxima, minima } }) => {
    const at = maxima.map(({ frequency }) => say('frequency', frequency, 'Hz'));
    const valley = told.dip && minima[0] ? `, with a dip at ${say('frequency', minima[0].frequency, 'Hz')}` : '';
    return `${name} peaks at ${list(at)}${valley}`;
  });
  const label = `Box ${peaks.join('; ')}. The finished box should show the same.`;
  const { domain, ticks } = axis([0, ...designs.flatMap(({ curves }) => curves.impedance)], 10);
  return {
    id: 'impedance',
    title,
    label,
    colour: 'var(--impedance)',
    unit: 'Ω',
    lines: designs.map(({ name, curves }) => ({ name, values: curves.impedance })),
    domain,
    ticks,
    data: thirdOctaves(
      designs,
      ({ curves }) => curves.impedance,
      (value) => value.toFixed(1),
    ),
  };
}
