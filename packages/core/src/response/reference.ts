import type { System } from '../enclosure/index.js';
import { anySign, type FrequencyInput, type LevelInput, optional, positive, readFields } from '../quantity/index.js';
import { type LevelOf, referenceLevel } from './level.js';
import type { SampledLevel } from './sampled-level.js';

/** The level that a cut-off is counted from. */
export type Reference =
  | 'asymptote'
  | 'maximum'
  | { readonly level: LevelInput }
  | { readonly frequency: FrequencyInput };

/** The readers of a band and of the reference in it. */
export const referenceShape = {
  reference: optional<Reference>({
    optional: false,
    read: (faults, got, path) => {
      if (got === 'asymptote' || got === 'maximum' || (typeof got === 'object' && got !== null))
        return got as Reference;
      const expected = "'asymptote', 'maximum', a record with level, or one with frequency";
      faults.push({ code: 'unknown-field', path, got, expected, remedy: 'Choose one of them.' });
      return undefined;
    },
  }),
  from: optional(positive('frequency')),
  to: optional(positive('frequency')),
};

/** The level of a reference, as a function of the sampled response. Only the maximum needs the samples. */
export function referenceIn(system: System, reference: Reference, level: LevelOf): (sampled: SampledLevel) => number {
  if (reference === 'maximum') return ({ levels }) => Math.max(...Array.from(levels));
  const top = statedLevel(system, reference, level);
  return () => top;
}

/** The level of a reference that needs no samples. */
function statedLevel(system: System, reference: Exclude<Reference, 'maximum'>, level: LevelOf): number {
  if (reference === 'asymptote') return referenceLevel(system);
  if ('level' in reference) return readFields('reference', reference, { level: anySign('level') }).level;
  const { frequency } = readFields('reference', reference, { frequency: positive('frequency') });
  return level.at(frequency);
}
