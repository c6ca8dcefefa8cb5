import { isLoose, isOutside, type LedgerRow } from '../../../tests/ledger/row.js';
import { sizeText } from './numbers.js';
import { standingText } from './standing.js';

/** The row of the greatest deviation among the outside ones: of those relative, and of those in each unit. */
export function worstRows(rows: readonly LedgerRow[]): readonly LedgerRow[] {
  const worst = new Map<string, LedgerRow>();
  for (const row of rows.filter(isOutside)) {
    const scale = row.tolerance.relative === undefined ? row.unit : 'relative';
    const last = worst.get(scale);
    if (!last || row.deviation > last.deviation) worst.set(scale, row);
  }
  return [...worst.values()];
}

export const worstText = (rows: readonly LedgerRow[]): string =>
  worstRows(rows)
    .map((row) => sizeText(row, row.deviation))
    .join('; ') || 'none';

/** '12 checks: 1 read in print, 11 recomputed independently; 2 loose'. */
export function countText(rows: readonly LedgerRow[]): string {
  const loose = rows.filter(isLoose).length;
  const failed = rows.filter(({ passed }) => !passed).length;
  const count = `${rows.length}\u00a0${rows.length === 1 ? 'check' : 'checks'}`;
  return [
    rows.length > 0 ? `${count}: ${standingText(rows)}` : count,
    ...(loose > 0 ? [`${loose}\u00a0loose`] : []),
    ...(failed > 0 ? [`${failed}\u00a0failed`] : []),
  ].join('; ');
}
