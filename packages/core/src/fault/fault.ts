import type { LengthWords } from './outcome.js';
import { visibleStart } from './visible.js';

/**
 * What is wrong with one input, as data. The full sentence appears only in the message of {@link InputError}.
 *
 * - `unit`: not a number, one space, and a unit of the kind
 * - `not-finite`: NaN or an infinity
 * - `not-positive`: zero or negative where the value must be positive, or negative where it must be zero or more
 * - `out-of-range`: finite, but outside what the library accepts for that quantity
 * - `inconsistent`: two or more fields contradict each other
 * - `conflict`: two fields are given, but only one of them is allowed
 * - `empty`: a list or a text without content, or a required field that is missing
 * - `unsorted`: numbers that must increase do not
 * - `unknown-field`: a field name or a word that the library does not know
 */
export type FaultCode =
  | 'unit'
  | 'not-finite'
  | 'not-positive'
  | 'out-of-range'
  | 'inconsistent'
  | 'conflict'
  | 'empty'
  | 'unsorted'
  | 'unknown-field';

/** One fault in an input. */
export interface Fault {
  readonly code: FaultCode;
  /** Where the fault is, in the caller's own terms: `vent.diameter`, `drivers[1].Qts`. */
  readonly path: string;
  readonly got: unknown;
  /** What would have been accepted, worded to follow 'expected'. */
  readonly expected: string;
  /** What to do about it, in one sentence. */
  readonly remedy: string;
  /** `got` and `expected` with their lengths in metres, for people who read them in another unit. */
  readonly words?: { readonly got?: LengthWords; readonly expected: LengthWords };
}

/** Limits of a message: characters of a value, characters of a path, and number of faults listed. */
export const toldAtMost = { value: 60, path: 120, faults: 100 } as const;

/** Describes any value in a text that fits on one line. */
function shown(got: unknown): string {
  if (got === undefined) return 'nothing';
  if (typeof got === 'string') return `"${visibleStart(got, toldAtMost.value).replace(/"/g, '\\"')}"`;
  if (typeof got === 'function') return 'a function';
  if (Array.isArray(got) || (ArrayBuffer.isView(got) && 'length' in got))
    return `a list of ${(got as ArrayLike<unknown>).length}`;
  if (typeof got === 'object' && got !== null) return 'a record';
  // A number without what rounding leaves behind the digits that mean something.
  return visibleStart(String(typeof got === 'number' ? Number(got.toPrecision(15)) : got), toldAtMost.value);
}

/** The line for one fault: path, got, expected, remedy. Text from outside is shortened, and its control characters are escaped. */
export const faultLine = ({ path, got, expected, remedy }: Fault): string =>
  `${visibleStart(path, toldAtMost.path)}: got ${shown(got)}; expected ${expected}. ${remedy}`;

/** Unknown names come first, because a misspelt name explains why another field is missing; then shallow paths before deep ones. */
const rank = ({ code, path }: Fault): number => (code === 'unknown-field' ? 0 : 1000) + path.split(/[.[]/, 999).length;

function messageOf(faults: readonly Fault[]): string {
  const lines = faults.slice(0, toldAtMost.faults).map(faultLine);
  const more = faults.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${more} more ${more === 1 ? 'fault' : 'faults'}`] : [])].join('\n');
}

/**
 * The only error the library throws. It means that an input was refused, and it carries every fault at once: unknown names
 * first, then shallow paths before deep ones. The message lists as many as {@link toldAtMost} allows and counts the rest.
 * Recognise it with {@link isInputError}, not with `instanceof`: a program that loads both the ESM and the CommonJS build has
 * two classes of this name.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly code = 'airspring-input';
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    const ranked = faults.map((fault) => ({ fault, rank: rank(fault) })).sort((a, b) => a.rank - b.rank);
    const sorted = ranked.map(({ fault }) => fault);
    super(messageOf(sorted));
    this.faults = sorted;
  }
}

/**
 * Says whether an error is a refusal by this library. It looks at name and code, so it works for every copy of the library.
 * @example isInputError(error) ? error.faults : []
 */
export function isInputError(error: unknown): error is InputError {
  const { name, code } = (error ?? {}) as Partial<InputError>;
  return name === 'InputError' && code === 'airspring-input';
}

/** Throws an {@link InputError} when there is a fault, and otherwise does nothing. */
export function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new InputError(faults);
}
