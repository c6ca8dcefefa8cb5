import type { Made } from './changes/change.js';
import { numbered, type RowDone } from './row.js';

/** A change that can be made, with its number in the report. */
export interface NumberedChange {
  readonly number: number;
  readonly row: RowDone;
  readonly made: Made;
}

/** Whether a reader means this name. */
export const isNamed = (name: string, asked: string): boolean => name.toLowerCase() === asked.trim().toLowerCase();

/** The changes that can be made, by their numbers in the report. */
export const numberedChanges = (made: readonly Made[]): readonly NumberedChange[] =>
  numbered(made.map(({ row }) => row)).map(([number, row]) => ({
    number,
    row,
    made: made.find((one) => one.row === row) as Made,
  }));

/** Those of them that a reader means by a number or a name. */
export const changesNamed = (made: readonly Made[], asked: string): readonly NumberedChange[] =>
  numberedChanges(made).filter(({ number, row }) => isNamed(String(number), asked) || isNamed(row.change, asked));
