/** Everything that the pages of the audit are made of. */
import type { LedgerRow } from '../../../tests/ledger/row.js';
import type { Bench } from './bench.js';
import { addressOf, type Formula, keyOf } from './formula.js';
import { keysIn, type Links } from './markdown.js';
import type { Reference } from './reference.js';

export interface Audit {
  readonly formulas: readonly Formula[];
  /** Rows of the last full run of the tests; undefined when there was none. */
  readonly ledger: { readonly rows: readonly LedgerRow[]; readonly date: string } | undefined;
  readonly references: readonly Reference[];
  /** 'floor/name' of formulas that nothing outside can check → why. */
  readonly exceptions: Readonly<Record<string, string>>;
  readonly bench: Bench | undefined;
  /** Pages written by hand that cite: key → their titles and addresses. */
  readonly citing: ReadonlyMap<string, readonly Named[]>;
  /** Pages written by hand that stand on formulas: family, such as 'response/cutoff' → their titles and addresses. */
  readonly using: ReadonlyMap<string, readonly Named[]>;
}

/** A page written by hand. */
export interface Named {
  readonly title: string;
  readonly address: string;
}

/** Said while `npm start` runs the checks; a built site always has them. */
export const noLedger = 'The checks are running now. Load this page again in a minute to see what they found.';

export const rowsOf = ({ ledger }: Audit, formula: Formula): readonly LedgerRow[] =>
  (ledger?.rows ?? []).filter((row) => row.formula === keyOf(formula));

/** The formulas that name a source, and the checks against it. */
export function restingOn(key: string, audit: Audit): { formulas: readonly Formula[]; rows: readonly LedgerRow[] } {
  const { references } = linksOf(audit);
  return {
    formulas: audit.formulas.filter(({ tags }) => keysIn(tags.source ?? '', references).includes(key)),
    rows: (audit.ledger?.rows ?? []).filter(({ source }) => source.key === key),
  };
}

/** Whether anything does. */
export const isRestedOn = (key: string, audit: Audit): boolean =>
  Object.values(restingOn(key, audit)).some(({ length }) => length > 0);

/** Where a row stands in full. */
export const rowAddress = (row: LedgerRow, { formulas }: Audit): string | undefined => {
  const formula = formulas.find((one) => keyOf(one) === row.formula);
  return formula && addressOf(formula).replace(/#.*/, `#${row.id}`);
};

export function linksOf({ formulas, references }: Audit): Links {
  const names = formulas.map(({ name }) => name);
  const single = formulas.filter(({ name }) => names.indexOf(name) === names.lastIndexOf(name));
  return {
    formulas: new Map(single.map((one) => [one.name, addressOf(one)])),
    references: new Set(references.map(({ id }) => id)),
  };
}
