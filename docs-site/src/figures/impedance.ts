import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { list, say } from '../say.js';
import { axis } from './axis.js';
import type { Figure } from './figure.js';
import { drawFrame } from './frame.js';
import { thirdOctaves } from './third-octaves.js';

/** Magnitude of the impedance at the terminals: what the builder measures in the end. */
export function impedanceFigure(designs: readonly Design[], { lowest, highest }: BriefFacts): Figure {
  const title = 'Input impedance';
  const peaks = designs.map(({ name, told, impedance: { maxima, minima } }) => {
    const at = maxima.map(({ frequency }) => say('frequency', frequency, 'Hz'));
    const valley = told.dip && minima[0] ? `, with a valley at ${say('frequency', minima[0].frequency, 'Hz')}` : '';
    return `${name} peaks at ${list(at)}${valley}`;
  });
  const label = `Box ${peaks.join('; ')}. The finished box should show the same.`;
  const { domain, ticks } = axis([0, ...designs.flatMap(({ curves }) => curves.impedance)], 10);
  const frame = {
    label: `${title}: ${label}`,
    colour: 'var(--impedance)',
    unit: 'Ω',
    frequencies: designs[0]?.curves.frequencies ?? [],
    lines: designs.map(({ name, curves }) => ({ name, values: curves.impedance })),
    domain,
    ticks,
    band: [lowest, highest] as const,
  };
  return {
    id: 'impedance',
    title,
    label,
    draw: (width) => drawFrame(frame, width),
    data: thirdOctaves(
      designs,
      ({ curves }) => curves.impedance,
      (value) => value.toFixed(1),
    ),
  };
}
