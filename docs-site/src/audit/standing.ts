/** What the checks rest on, in the same words on every page. */
import { quotedCount, rowCounts } from '../../../tests/ledger/counts.js';
import { type LedgerRow, standingOf, standings } from '../../../tests/ledger/row.js';

/** Laws and values of our own, which prove nothing about the world. */
const own = 'of our own';

/** What stands behind the expected value of a row. */
export const standingWords = (row: Pick<LedgerRow, 'status' | 'kind'>): string => standingOf(row) ?? own;

/** How many of those read in print were read where another text quotes them: ' (160 of them as another text quotes them)'. */
function quotedText(rows: readonly LedgerRow[], read: number): string {
  const quoted = quotedCount(rows);
  if (quoted === 0) return '';
  const who = read === 1 ? '' : quoted === read ? 'all ' : `${quoted} of them `;
  return ` (${who}as another text quotes ${quoted === 1 ? 'it' : 'them'})`;
}

/** All words there are, in the order of their weight. */
export const allStandings: readonly string[] = [...Object.values(standings), own];

/** '5 read in print (2 of them as another text quotes them), 10 recomputed independently, 2 rules of thumb': no word for what there is none of. */
export function standingText(rows: readonly LedgerRow[]): string {
  const counts = rowCounts(rows);
  const outside = Object.values(counts).reduce((sum, count) => sum + count, 0);
  return Object.entries({ ...counts, [own]: rows.length - outside })
    .filter(([, count]) => count > 0)
    .map(([word, count]) => {
      const words = count === 1 ? word : word.replace(/^rule /, 'rules ');
      return `${count}\u00a0${words}${word === standings.seen ? quotedText(rows, count) : ''}`;
    })
    .join(', ');
}
