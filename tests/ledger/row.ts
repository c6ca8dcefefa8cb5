/** What stands behind an expected value: read by us, worked out by us from what we read, recalled, or custom of the trade. */
export type Status = 'seen' | 'derived' | 'memory' | 'practice';

/** The kind of truth, outside kinds first. */
export type Kind = 'table' | 'example' | 'standard' | 'program' | 'measured' | 'identity' | 'own' | 'pinned';

/** A tolerance and the reason for its size; relative to the expected value, or absolute in the row's unit. */
export type Tolerance =
  | { readonly relative: number; readonly absolute?: never; readonly why: string }
  | { readonly absolute: number; readonly relative?: never; readonly why: string };

/** A number, a list of them (the check runs once for each), or a name such as that of an alignment. */
export type GivenValue = number | string | readonly number[];

export interface Given {
  readonly value: GivenValue;
  readonly unit: string;
}

export interface Source {
  /** An id of references.json; 'common-practice' with status practice; 'own' with kind identity, own or pinned. */
  readonly key: string;
  /** Where in it: page, equation, table and row. */
  readonly locator: string;
  /** Where a value was read: 'itself', or what quotes the source. references.json says it, or the check where it differs. */
  readonly readIn?: string;
}

/** One line of the ledger, as a test run writes it. */
export interface LedgerRow {
  readonly id: string;
  /** 'floor/function' */
  readonly formula: string;
  readonly source: Source;
  readonly status: Status;
  readonly kind: Kind;
  /** What of the result was read in print, where that is a part of it, such as a constant or a limit. */
  readonly part?: string;
  readonly given: Readonly<Record<string, Given>>;
  /** The air of the check where it is not the standard one: kg/m³ and m/s. */
  readonly air?: { readonly density: number; readonly speedOfSound: number };
  readonly expected: number | readonly number[];
  /** The digits of what is expected, where they were read in print. */
  readonly printed?: string | readonly string[];
  readonly got: number | readonly number[];
  readonly unit: string;
  readonly tolerance: Tolerance;
  /**
   * The worst over all elements, as a fraction of the expected value or in the unit, as the tolerance is. Where each element
   * is held to its own print, of the one that uses most of what its print allows; the tolerance is then that of this element.
   */
  readonly deviation: number;
  readonly passed: boolean;
}

const outsideKinds: readonly Kind[] = ['table', 'example', 'standard', 'program', 'measured'];

/** Whether a row compares with something outside the project that could have proved us wrong. */
export const isOutside = (row: Pick<LedgerRow, 'status' | 'kind'>): boolean =>
  outsideKinds.includes(row.kind) && (row.status === 'seen' || row.status === 'derived');

/** The three words for what a check rests on, wherever it is told. */
export const standings = {
  seen: 'read in print',
  derived: 'recomputed independently',
  practice: 'rule of thumb',
} as const;
export type Standing = (typeof standings)[keyof typeof standings];

/** What a row rests on; undefined for one that rests on nothing outside, such as an identity of our own. */
export const standingOf = (row: Pick<LedgerRow, 'status' | 'kind'>): Standing | undefined =>
  row.status === 'practice'
    ? standings.practice
    : isOutside(row)
      ? standings[row.status as 'seen' | 'derived']
      : undefined;

/** Whether a value in print was read where another text or data file quotes it, not in the source that the row names. */
export const isQuoted = (row: Pick<LedgerRow, 'status' | 'kind' | 'source'>): boolean =>
  standingOf(row) === standings.seen && row.source.readIn !== 'itself';

export const toleranceSize = ({ tolerance }: Pick<LedgerRow, 'tolerance'>): number =>
  tolerance.relative ?? tolerance.absolute;

/** The reason of a tolerance that print itself gives. */
export const heldToPrint = 'half a unit of the last printed digit';

/**
 * Whether a row would let a hundred times its deviation pass, or more than a millionth where it meets the value exactly.
 * A row that is held to the digits in print is as tight as print allows.
 */
export const isLoose = (row: Pick<LedgerRow, 'tolerance' | 'deviation'>): boolean =>
  row.tolerance.why !== heldToPrint && toleranceSize(row) > (row.deviation > 0 ? 100 * row.deviation : 1e-6);
