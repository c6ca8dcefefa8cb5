import type { Air } from '../air/index.js';
import { InputError } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import { type NoiseOnset, onsetSpeed } from '../vent/index.js';
import { onsetsAt } from '../vent/onset.js';

/** Where the search begins, m: any diameter would do. */
const START = 0.1;

/**
 * The smallest round opening in which a peak flow stays below every onset at each frequency, m. A wider opening reaches each onset
 * at a greater flow, so there is one.
 */
export function leastDiameter(
  frequencies: Float64Array,
  flows: Float64Array,
  onsets: readonly NoiseOnset[],
  air: Air,
): number {
  // Refuses what is no onset.
  onsetsAt(onsets, { radius: START / 2 }, air, 'map.onsets');
  /** The diameter that the speeds allow which hold for an opening of this diameter. */
  const needed = (diameter: number): number => {
    let area = 0;
    for (const onset of onsets) {
      const at = onset.at({ radius: diameter / 2 }, air);
      for (let i = 0; i < flows.length; i++) area = Math.max(area, flows[i]! / onsetSpeed(at, frequencies[i]!, air));
    }
    return Math.sqrt((4 * area) / Math.PI);
  };
  const first = needed(START);
  if (first === START) return first;
  const found = bracketedRoot(
    (diameter) => diameter - needed(diameter),
    Math.min(first, START),
    Math.max(first, START),
  );
  if (found.ok) return found.x;
  const expected = 'onsets that a wider vent reaches at a greater flow';
  const remedy = 'Let the speed or the travel of an onset grow with the opening, or stay the same.';
  throw new InputError([{ code: 'inconsistent', path: 'map.onsets', got: found.because[0]?.text, expected, remedy }]);
}
