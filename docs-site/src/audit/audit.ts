/** Everything that the pages of the audit are made of. */
import type { LedgerRow } from '../../../tests/ledger/row.js';
import type { Bench } from './bench.js';
import { addressOf, type Formula, keyOf } from './formula.js';
import type { Links } from './markdown.js';
import type { Reference } from './reference.js';

export interface Audit {
  readonly formulas: readonly Formula[];
  /** Rows of the last full run of the tests; undefined when there was none. */
  readonly ledger: { readonly rows: readonly LedgerRow[]; readonly date: string } | undefined;
  readonly references: readonly Reference[];
  readonly bench: Bench | undefined;
  /** Pages written by hand that cite: key → their titles and addresses. */
  readonly citing: ReadonlyMap<string, readonly { readonly title: string; readonly address: string }[]>;
}

export const noLedger = 'The ledger is not there. `npm test` writes it; then build the site again.';

export const rowsOf = ({ ledger }: Audit, formula: Formula): readonly LedgerRow[] =>
  (ledger?.rows ?? []).filter((row) => row.formula === keyOf(formula));

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
