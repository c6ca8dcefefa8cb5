import { visibleStart } from './visible.js';

/**
 * What is wrong with one input, as data. The words stand only in the message of {@link InputError}.
 *
 * - `unit`: not a number, one space, and a unit of the kind
 * - `not-finite`: NaN or an infinity
 * - `not-positive`: zero or below where only more than zero, or below zero where only zero or more, has a meaning
 * - `out-of-range`: finite, but outside what the library accepts for that quantity
 * - `inconsistent`: two or more fields contradict each other
 * - `conflict`: two fields are given of which only one may be
 * - `empty`: a list or a text without content, or a required field that is missing
 * - `unsorted`: a column that must rise does not
 * - `unknown-field`: a field that nobody reads
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

/** One fault of an input. */
export interface Fault {
  readonly code: FaultCode;
  /** Where, as written by the caller: `vent.diameter`, `drivers[1].Qts`. */
  readonly path: string;
  readonly got: unknown;
  /** What would have been accepted, as the end of 'expected …'. */
  readonly expected: string;
  /** What to do, one sentence. */
  readonly remedy: string;
}

/** Longest text of a value and of a path in a line, in characters, and most faults told in a message. */
export const toldAtMost = { value: 60, path: 120, faults: 100 } as const;

/** Text for a value that may be anything, short enough for one line. */
function shown(got: unknown): string {
  if (got === undefined) return 'nothing';
  if (typeof got === 'string') return `"${visibleStart(got, toldAtMost.value).replace(/"/g, '\\"')}"`;
  if (typeof got === 'function') return 'a function';
  if (typeof got === 'object' && got !== null) return Array.isArray(got) ? `a list of ${got.length}` : 'a record';
  return visibleStart(String(got), toldAtMost.value);
}

/** One line for one fault: path, got, expected, remedy. What came from outside is made visible and short. */
export const faultLine = ({ path, got, expected, remedy }: Fault): string =>
  `${visibleStart(path, toldAtMost.path)}: got ${shown(got)}; expected ${expected}. ${remedy}`;

/** A name that nobody reads explains what is missing elsewhere, so it comes first; then shallow paths before deep ones. */
const rank = ({ code, path }: Fault): number => (code === 'unknown-field' ? 0 : 1000) + path.split(/[.[]/, 999).length;

function messageOf(faults: readonly Fault[]): string {
  const lines = faults.slice(0, toldAtMost.faults).map(faultLine);
  const more = faults.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${more} more ${more === 1 ? 'fault' : 'faults'}`] : [])].join('\n');
}

/**
 * The only error the library throws: an input was refused, with every fault at once. Unknown names come first, then shallow
 * paths before deep ones; the message tells the first {@link toldAtMost} and counts the others.
 * Recognise it with {@link isInputError}, not with `instanceof`: a program that loads both the ESM and the CommonJS build
 * holds two classes of this name.
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
 * Whether an error is a refusal of this library, told by its name and code, whichever copy of the library threw it.
 * @example isInputError(error) ? error.faults : []
 */
export function isInputError(error: unknown): error is InputError {
  const { name, code } = (error ?? {}) as Partial<InputError>;
  return name === 'InputError' && code === 'airspring-input';
}

/** Throws when there is a fault, else does nothing. */
export function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new InputError(faults);
}
