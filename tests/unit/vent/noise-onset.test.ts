/** A verdict needs an onset: without one, or with one that is no speed, nothing may be called quiet. */
import { isInputError } from '@airspring/core/fault';
import { quietLimits, ventOnsets } from '@airspring/core/limit';
import { type NoiseOnset, ventNoise } from '@airspring/core/vent';
import { compileTimeline } from '@airspring/transient/timeline';
import { expect, test } from 'vitest';
import { plainVented } from '../transient/boxes.js';

const vent = { diameter: '75 mm' } as const;
const onset = (at: unknown): NoiseOnset => ({ name: 'own', basis: 'measured', sources: [], at: () => at as never });
const asked = (onsets: readonly NoiseOnset[]) => [
  () => ventNoise({ vent, frequency: '30 Hz', airSpeedPeak: '100 m/s' }, { onsets }),
  () => quietLimits(vent, { onsets }),
  () => ventOnsets(plainVented, vent, [30], { onsets }),
  () => compileTimeline(plainVented, { sampleRate: '48 kHz', vents: [{ vent }], onsets }),
];

function pathOf(ask: () => unknown): string {
  try {
    return `answered ${JSON.stringify(ask())}`;
  } catch (error) {
    return isInputError(error) ? error.faults[0]!.path : String(error);
  }
}

test.each([
  ['no onset at all', []],
  ['no list', onset({ airSpeedPeak: 10 })],
  ['an onset without a function', [{ name: 'own', basis: '', sources: [] }]],
  ['a speed that is no number', [onset({ airSpeedPeak: Number.NaN })]],
  ['a travel of zero', [onset({ displacementPeak: 0 })]],
  ['a Reynolds number without end', [onset({ boundaryReynolds: Infinity })]],
  ['nothing of these three', [onset({ speed: 3 })]],
  ['nothing', [onset(undefined)]],
])('%s is refused at its path', (_, onsets) => {
  for (const ask of asked(onsets as never)) expect(pathOf(ask)).toMatch(/onsets/);
});

test.each([0, -1, Number.NaN, Infinity])('a vent that has %d of the speed is refused', (share) => {
  const ask = () => compileTimeline(plainVented, { sampleRate: '48 kHz', vents: [{ vent, share }] });
  expect(pathOf(ask)).toBe('timeline.vents[0].share');
});

test('one onset of your own decides alone', () => {
  const onsets = [onset({ airSpeedPeak: 4 })];
  const at = (airSpeedPeak: '3.9 m/s' | '4.1 m/s') => ventNoise({ vent, frequency: '30 Hz', airSpeedPeak }, { onsets });
  expect([at('3.9 m/s').verdict, at('4.1 m/s').verdict]).toEqual(['quiet', 'noisy']);
});
