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

/** Text for a value that may be anything, short enough for one line. */
function shown(got: unknown): string {
  if (typeof got === 'string') return JSON.stringify(got.length > 60 ? `${got.slice(0, 57)}...` : got);
  if (typeof got === 'function') return 'a function';
  if (typeof got === 'object' && got !== null) return Array.isArray(got) ? `a list of ${got.length}` : 'a record';
  return String(got);
}

/** One line for one fault: path, got, expected, remedy. */
export const faultLine = (fault: Fault): string =>
  `${fault.path}: got ${shown(fault.got)}; expected ${fault.expected}. ${fault.remedy}`;

/**
 * The only error the library throws: an input was refused, with every fault at once, shallow paths first.
 * Test `error.code === 'airspring-input'`: a program that loads both the ESM and the CommonJS build holds two classes.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly code = 'airspring-input';
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    const depth = (fault: Fault) => fault.path.split(/[.[]/).length;
    const sorted = [...faults].sort((a, b) => depth(a) - depth(b));
    super(sorted.map(faultLine).join('\n'));
    this.faults = sorted;
  }
}

/** Throws when there is a fault, else does nothing. */
export function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new InputError(faults);
}
