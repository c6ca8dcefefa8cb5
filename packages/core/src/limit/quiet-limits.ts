import { type Air, readAir, standardAir } from '../air/index.js';
import { type FrequencyInput, read, si } from '../quantity/index.js';
import {
  type NoiseOnset,
  noiseOnsets,
  onsetSpeed,
  openingOf,
  type VentInput,
  type VentSection,
} from '../vent/index.js';
import { onsetsAt } from '../vent/onset.js';
import type { Limit } from './limit.js';

export interface QuietOptions {
  /** Default: all published ones. */
  readonly onsets?: readonly NoiseOnset[];
  readonly air?: Air;
  /** The lowest frequency that the box plays: an onset whose speed rises with frequency otherwise is taken there. Default 10 Hz. */
  readonly from?: FrequencyInput;
}

/**
 * The limits of a vent that stays quiet by every published onset: how far its air may move, and how fast.
 *
 * @validity as `ventNoise`
 * @neglects as `ventNoise`
 * @returns the least travel of the air, and its least speed
 * @throws InputError those of `ventNoise`
 * @source holman2005 formation of jets; peters1993 open ends; salvatti2002 recommended speed
 * @example greatestLevel(box, quietLimits({ diameter: '75 mm' }), [25, 30, 40])
 */
export function quietLimits(
  vent: VentSection | VentInput,
  { onsets = noiseOnsets, air = standardAir, from = si('frequency', 10) }: QuietOptions = {},
): readonly Limit[] {
  const opening = openingOf(vent);
  const medium = readAir(air);
  const lowest = read('frequency', from, 'from');
  const reached = onsetsAt(onsets, opening, medium);
  const limits = onsets.map((onset, i): Limit => {
    const at = reached[i]!;
    const moved = 'displacementPeak' in at;
    const peak = moved ? at.displacementPeak : onsetSpeed(at, lowest, medium);
    return {
      name: 'quiet vent',
      probe: 'ventAirSpeed',
      ...(moved && { integrated: true }),
      greatestRms: peak / Math.SQRT2,
      basis: `${onset.name}: ${onset.basis}`,
    };
  });
  const lower = (one: Limit) =>
    limits.some((other) => other.integrated === one.integrated && other.greatestRms < one.greatestRms);
  return limits.filter((one) => !lower(one));
}
