/** Checks of values that were read in print and stand in a file of data, one row of the ledger for each entry. */
import { check } from '../ledger/check.js';
import type { Kind, Source, Tolerance } from '../ledger/row.js';

/** An entry of such a file. */
interface PrintedEntry {
  readonly source: Source;
  /** 'table' if it is left out. */
  readonly kind?: string;
  /** What of the result is printed, where that is a part of it. */
  readonly part?: string;
  readonly given: Readonly<Record<string, { readonly value: readonly number[] | number; readonly unit: string }>>;
  readonly printed: readonly string[];
  readonly unit: string;
  /** Where the print cannot be met, with the reason. */
  readonly tolerance?: { readonly absolute?: number; readonly relative?: number; readonly why: string };
}
type Numbers<E extends PrintedEntry> = { readonly [K in keyof E['given']]: number };

/** Makes a function that turns the entry of a name into a row for a formula of the floor; `also` tells apart rows of one entry. */
export const printedChecks =
  <const T extends Readonly<Record<string, PrintedEntry>>>(floor: string, entries: T) =>
  <N extends keyof T & string>(formula: string, name: N, got: (given: Numbers<T[N]>) => number, also = ''): void => {
    const { kind = 'table', tolerance, ...entry } = entries[name] as PrintedEntry;
    check([floor, 'read', name.replaceAll(' ', '-'), also].filter(Boolean).join('.'), {
      ...entry,
      formula: `${floor}/${formula}`,
      status: 'seen',
      kind: kind as Kind,
      got: got as (given: Readonly<Record<string, number>>) => number,
      ...(tolerance && { tolerance: tolerance as Tolerance }),
    });
  };
