/** What the checks rest on, in the same words on every page. */
import { isOutside, type LedgerRow } from '../../../tests/ledger/row.js';

/** What stands behind an expected value. */
export const statusWords: Readonly<Record<LedgerRow['status'], string>> = {
  seen: 'read in print',
  derived: 'recomputed independently',
  memory: 'rule of thumb',
  practice: 'rule of thumb',
};

/** How many rows rest on what; the rest are laws and values of our own, which prove nothing about the world. */
export function standing(rows: readonly LedgerRow[]) {
  const thumb = rows.filter(({ status }) => status === 'practice' || status === 'memory').length;
  const outside = rows.filter(isOutside);
  const print = outside.filter(({ status }) => status === 'seen').length;
  const recomputed = outside.length - print;
  return { print, recomputed, thumb, own: rows.length - print - recomputed - thumb };
}

const counted = (count: number, one: string, many = one): string => `${count}\u00a0${count === 1 ? one : many}`;

/** '1 read in print, 10 recomputed independently, 1 rule of thumb'. */
export function standingText(rows: readonly LedgerRow[]): string {
  const { print, recomputed, thumb, own } = standing(rows);
  return [
    print > 0 && counted(print, statusWords.seen),
    recomputed > 0 && counted(recomputed, statusWords.derived),
    thumb > 0 && counted(thumb, statusWords.practice, 'rules of thumb'),
    own > 0 && counted(own, 'of our own'),
  ]
    .filter((part) => part !== false)
    .join(', ');
}
