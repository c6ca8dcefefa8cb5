/** Of which formulas a value was read in print, and of which none was: from the ledger, floor by floor. */
import { type FloorInPrint, readInPrint } from '../../../tests/ledger/counts.js';
import type { LedgerRow } from '../../../tests/ledger/row.js';
import { type Fragment, html, table } from '../html.js';
import { addressOf, type Formula, keyOf } from './formula.js';
import { breakable, capital, flat } from './words.js';

export function inPrint(rows: readonly LedgerRow[], formulas: readonly Formula[]): string {
  const byKey = new Map(formulas.map((formula) => [keyOf(formula), formula]));
  const checked = new Set(rows.map(({ formula }) => formula));
  const floors = readInPrint(
    rows,
    [...byKey.keys()].filter((key) => checked.has(key)),
  );
  const link = (key: string, name: string): Fragment => {
    const formula = byKey.get(key);
    const code = html`<code>${breakable(name)}</code>`;
    const parts = rows.flatMap((row) => (row.formula === key && row.part ? [row.part] : []));
    const alone = parts.length > 0 && ` (${parts.join(', ')})`;
    return html`${formula ? html`<a href="${addressOf(formula)}">${code}</a>` : code}${alone}`;
  };
  const line = ({ floor, read, quoted, unread }: FloorInPrint): readonly Fragment[] => [
    capital(floor),
    `${read.length} of ${read.length + unread.length}`,
    String(quoted.length),
    unread.length === 0 ? 'none' : unread.flatMap((name, i) => [i > 0 && ', ', link(`${floor}/${name}`, name)]),
  ];
  const heads = [
    'floor',
    'with a value read in print',
    'of them only as another text quotes it',
    'no value read in print',
  ];
  return `## What was read in print

Counted by formula. A formula in the last column was checked against values that we recomputed from a published definition or with another program, or against a rule of thumb; we have read no printed value of it, or no more than the part that stands in brackets. Of some formulas each value in print was read where another text or data file quotes it, and not in the source itself: these are counted in the third column.

${flat(table('Formulas with a value read in print', heads, floors.map(line)).markup)}`;
}
