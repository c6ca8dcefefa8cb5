import type { Air } from '../air/index.js';
import type { Opening } from '../duct/index.js';
import { type Fault, refuse } from '../fault/index.js';

/** From where on air in a vent may be heard: it moves farther than this, or faster, or its layer at the walls turns turbulent. */
export type OnsetAt =
  | { readonly displacementPeak: number }
  | { readonly airSpeedPeak: number }
  | { readonly boundaryReynolds: number };

/** A published onset of separation, turbulence or noise, as a value. Your own is used as ours are. */
export interface NoiseOnset {
  readonly name: string;
  /** What was published, and how well it is known, in words for the reader. */
  readonly basis: string;
  readonly sources: readonly string[];
  readonly at: (opening: Opening, air: Air) => OnsetAt;
}

const numbers = ['displacementPeak', 'airSpeedPeak', 'boundaryReynolds'] as const;

/** Where each onset is reached in an opening. Without an onset, or with one that tells no number, no vent may be called quiet. */
export function onsetsAt(
  onsets: readonly NoiseOnset[],
  opening: Opening,
  air: Air,
  path = 'onsets',
): readonly OnsetAt[] {
  if (!Array.isArray(onsets) || onsets.length === 0) {
    const remedy = 'Leave it out for all published onsets.';
    refuse([{ code: 'empty', path, got: onsets, expected: 'a list of at least one onset', remedy }]);
  }
  const told = onsets.map((onset) => (typeof onset?.at === 'function' ? onset.at(opening, air) : undefined));
  refuse(
    told.flatMap((at, i): Fault[] => {
      const got = numbers.map((name) => (at as Partial<Record<string, unknown>> | undefined)?.[name]);
      if (got.some((one) => typeof one === 'number' && one > 0 && one < Infinity)) return [];
      const expected = `a function \`at\` that tells one of ${numbers.join(', ')} above zero`;
      const remedy = 'Correct the onset.';
      return [
        { code: 'inconsistent', path: `${path}[${i}].at`, got: got.find((one) => one !== undefined), expected, remedy },
      ];
    }),
  );
  return told as readonly OnsetAt[];
}
