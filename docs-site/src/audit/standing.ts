/** What the checks rest on, in the same words on every page. */
import { rowCounts } from '../../../tests/ledger/counts.js';
import { type LedgerRow, standingOf, standings } from '../../../tests/ledger/row.js';

/** Laws and values of our own, which prove nothing about the world. */
const own = 'of our own';

/** What stands behind the expected value of a row. */
export const standingWords = (row: Pick<LedgerRow, 'status' | 'kind'>): string => standingOf(row) ?? own;

/** All words there are, in the order of their weight. */
export const allStandings: readonly string[] = [...Object.values(standings), own];

/** '1 read in print, 10 recomputed independently, 2 rules of thumb': no word for what there is none of. */
export function standingText(rows: readonly LedgerRow[]): string {
  const counts = rowCounts(rows);
  const outside = Object.values(counts).reduce((sum, count) => sum + count, 0);
  return Object.entries({ ...counts, [own]: rows.length - outside })
    .filter(([, count]) => count > 0)
    .map(([word, count]) => `${count}\u00a0${count === 1 ? word : word.replace(/^rule /, 'rules ')}`)
    .join(', ');
}
