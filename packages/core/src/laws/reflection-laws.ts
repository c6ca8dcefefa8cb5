import type { Reflection } from '../room/index.js';
import { type LawResult, tried } from './law.js';

/** Hz, as far as bass is told. */
const frequencies = Array.from({ length: 200 }, (_, i) => 5 * 10 ** (i / 99.5));

/**
 * The laws of every reflection factor of a wall, including your own: it names its sources; it is a number from −1 to 1, so that no wall
 * returns more power than arrives; the same answer to the same question.
 *
 * @validity 5 to 500 Hz
 * @neglects whether the factor is that of the wall
 * @returns one result for each law
 * @source morse1968 a passive wall absorbs no less than nothing
 * @example reflectionLaws(absorbing(0.1))
 */
export function reflectionLaws(reflection: Reflection): readonly LawResult[] {
  const extent = `${frequencies.length} frequencies`;
  const first = (wrong: (factor: number, frequency: number) => boolean): string | undefined => {
    const at = frequencies.find((frequency) => wrong(reflection(frequency), frequency));
    return at === undefined ? undefined : `${reflection(at)} at ${at} Hz`;
  };
  return [
    tried('names its sources', 'the list', () =>
      Array.isArray(reflection.sources) && reflection.sources.length > 0 ? undefined : 'no list of sources',
    ),
    tried('is finite', extent, () => first((factor) => !Number.isFinite(factor))),
    tried('returns no more than arrives', extent, () => first((factor) => Math.abs(factor) > 1)),
    tried('gives the same answer twice', extent, () =>
      first((factor, frequency) => !Object.is(factor, reflection(frequency))),
    ),
  ];
}
