import type { Fault } from './fault.js';
import type { LengthWords } from './outcome.js';

/** Words with their lengths as a reader has them. */
export const sayWords = (words: LengthWords, says: (metres: number) => string): string =>
  words.map((part) => (typeof part === 'string' ? part : says(part.metres))).join('');

/** A fault with its lengths as a reader has them; one without lengths is the same. */
export function sayFault({ words, ...fault }: Fault, says: (metres: number) => string): Fault {
  if (words === undefined) return fault;
  return {
    ...fault,
    got: words.got ? sayWords(words.got, says) : fault.got,
    expected: sayWords(words.expected, says),
  };
}
