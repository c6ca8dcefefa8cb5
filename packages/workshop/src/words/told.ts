import { type Fault, type LengthWords, type Reason, sayWords } from '@airspring/core/fault';
import { format } from '@airspring/core/quantity';

/** The units in which people read lengths. */
export type LengthUnit = 'mm' | 'cm' | 'in';
export const lengthUnits: readonly LengthUnit[] = ['mm', 'cm', 'in'];

/** The unit itself, where it is written after several lengths. */
export const UNIT = { unit: 'after a number' } as const;
/** What lengths are in, in a sentence. */
export const UNITS = { unit: 'in a sentence' } as const;
type Unit = typeof UNIT | typeof UNITS;

/** Words with lengths among them, m: whoever reads them has them in a unit of one's own. */
export type Words = string | readonly (string | { readonly metres: number } | Unit)[];

const partsOf = (words: Words) => (typeof words === 'string' ? [words] : words);

/** Words around lengths in metres, as a template: told\`${width} × ${height} ${UNIT}\`. A count is given as a text. */
export const told = (texts: TemplateStringsArray, ...among: readonly (Words | number | Unit)[]): Words =>
  texts.flatMap((text, i) => {
    const one = among[i];
    if (one === undefined) return [text];
    if (typeof one === 'number') return [text, { metres: one }];
    return [text, ...('unit' in Object(one) ? [one as Unit] : partsOf(one as Words))];
  });

/** Words after each other, with a text between them. */
export const joined = (all: readonly Words[], between: string): Words =>
  all.flatMap((words, i) => [...(i === 0 ? [] : [between]), ...partsOf(words)]);

const inOne = { mm: 1e3, cm: 1e2, in: 1 / 0.0254 } as const;
/** As fine as a tenth of a millimetre. */
const decimals = { mm: 1, cm: 2, in: 3 } as const;

/** A length as a drawing says it. */
export const lengthIn = (unit: LengthUnit, metres: number): string =>
  String(Number((metres * inOne[unit]).toFixed(decimals[unit])));

/** Words in a unit. */
export const wordsIn = (unit: LengthUnit, words: Words): string =>
  partsOf(words)
    .map((part) => {
      if (typeof part === 'string') return part;
      if ('metres' in part) return lengthIn(unit, part.metres);
      return part.unit === UNITS.unit && unit === 'in' ? 'inches' : unit;
    })
    .join('');

const lengthsIn = (words: Words): LengthWords =>
  partsOf(words).filter((part) => typeof part === 'string' || 'metres' in part);

/** Why something cannot be made: a sentence in millimetres, which can be told in another unit as well. */
export function reasonOf(code: string, words: Words, digits = 3): Reason {
  const parts = lengthsIn(words);
  return {
    code,
    text: sayWords(parts, (metres) => format('length', metres, 'mm', digits)),
    words: parts,
  };
}

/** A reason with its lengths as a reader has them. */
export const sayReason = ({ words, text }: Pick<Reason, 'words' | 'text'>, says: (metres: number) => string): string =>
  words ? sayWords(words, says) : text;

/** A number in metres is told in metres, words in millimetres, and both in another unit as well. */
export function faultOf({
  got,
  expected,
  ...fault
}: Omit<Fault, 'got' | 'expected' | 'words'> & { readonly got: number | Words; readonly expected: Words }): Fault {
  const says =
    typeof got === 'number'
      ? (metres: number) => `${Number(metres.toPrecision(6))} m`
      : (metres: number) => format('length', metres, 'mm', 4);
  const words = { got: lengthsIn(typeof got === 'number' ? told`${got}` : got), expected: lengthsIn(expected) };
  return {
    ...fault,
    got: typeof got === 'number' ? got : sayWords(words.got, says),
    expected: sayWords(words.expected, says),
    words,
  };
}
