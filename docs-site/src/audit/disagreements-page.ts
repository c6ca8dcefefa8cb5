/** Printed and told values that the formulas do not meet to the last digit printed, found by that rule alone. */
import { missesPrint } from '../../../tests/ledger/print.js';
import type { LedgerRow } from '../../../tests/ledger/row.js';
import { type Fragment, html, table } from '../html.js';
import { type Audit, noLedger, rowAddress } from './audit.js';
import { page } from './markdown.js';
import { listed, numberText, unitsOf, withUnit } from './numbers.js';
import { capital, ended, flat } from './words.js';

/** Values of the trade with more digits were computed, not told by people. */
const TOLD = 6;

/** The digits of a number that the trade tells; trailing zeros do not show, so that it errs on the side of the trade. */
const told = (value: number): string => value.toExponential();

/** Zeros at the end of a whole number may only hold the place: print is favoured. */
const favoured = (printed: string): string =>
  printed.replace(/^([-+]?\d*?[1-9])(0+)$/, (_, digits: string, zeros: string) => `${digits}e${zeros.length}`);

/** What somebody printed or told, digit by digit; nothing of what was worked out anew. */
function printOf({ kind, status, printed, expected }: LedgerRow): readonly string[] {
  if (!['table', 'example', 'standard', 'measured'].includes(kind)) return [];
  if (status === 'seen' && printed !== undefined)
    return (typeof printed === 'string' ? [printed] : printed).map(favoured);
  const few = (text: string) => text.replace(/e.*|\D/g, '').length <= TOLD;
  return status === 'practice' ? listed(expected).map((value) => (few(told(value)) ? told(value) : '')) : [];
}

/** Numbers of the elements that miss print by more than half of its last digit. */
export const disagreeing = (row: LedgerRow): readonly number[] => {
  const got = listed(row.got);
  return printOf(row).flatMap((text, i) =>
    text !== '' && Number(text) !== 0 && missesPrint(got[i]!, text) ? [i] : [],
  );
};

export function disagreementsPage(audit: Audit): string {
  const found = (audit.ledger?.rows ?? []).filter((row) => disagreeing(row).length > 0);
  const parts = found.sort((a, b) => greatest(b) - greatest(a)).map((row) => part(row, audit));
  return page(
    {
      title: 'Where print and exact solutions disagree',
      summary: 'Printed values that differ from the formulas by more than half of their last digit, and why.',
      tableOfContents: false,
    },
    'Printed values are rounded, copied and sometimes wrong. This page lists the values read in print, and the rules of thumb, that a formula misses by more than half a unit of the last digit. A program finds them; nobody selects them. Zeros at the end of a whole number do not count as digits, which favours print. The reason is the one that the check gives for its tolerance. No formula was changed to meet a printed value.',
    audit.ledger ? '' : noLedger,
    ...parts,
    '[All formulas and their worst deviation](/formulas/)',
  );
}

function part(row: LedgerRow, audit: Audit): string {
  const { id, source, kind, formula, tolerance } = row;
  const address = rowAddress(row, audit);
  const known = audit.references.some((reference) => reference.id === source.key);
  const key = known
    ? html`<a class="cite" href="/bibliography/#${source.key}">[${source.key}]</a>`
    : `[${source.key.replace('-', ' ')}]`;
  const check = address ? html`<a href="${address}"><code>${formula}</code></a>` : html`<code>${formula}</code>`;
  const intro = html`<p>${key} ${ended(source.locator)} ${capital(kind)}, against ${check}. Why: ${ended(tolerance.why)}</p>`;
  const caption = `${disagreeing(row).length} of ${listed(row.expected).length} values of the check`;
  const heads = ['printed or told', 'by the formula', 'difference'];
  return `## ${id}\n\n${intro.markup}\n${flat(table(caption, heads, lines(row)).markup)}`;
}

/** How far the formula is from print, as a fraction of it. */
const fraction = (row: LedgerRow, i: number): number => listed(row.got)[i]! / listed(row.expected)[i]! - 1;
const greatest = (row: LedgerRow): number => Math.max(...disagreeing(row).map((i) => Math.abs(fraction(row, i))));

function lines(row: LedgerRow): readonly (readonly Fragment[])[] {
  const [wanted, got, units] = [listed(row.expected), listed(row.got), unitsOf(row)];
  return disagreeing(row).map((i) => [
    withUnit(numberText(wanted[i]!, 16), units[i] ?? ''),
    withUnit(numberText(got[i]!, digitsToShow(wanted[i]!, got[i]!)), units[i] ?? ''),
    `${numberText(100 * fraction(row, i), 2)}\u00a0%`,
  ]);
}

/** So many digits that the two differ, and six at least. */
const digitsToShow = (wanted: number, got: number): number =>
  Math.min(16, Math.max(6, 2 + Math.ceil(-Math.log10(Math.abs(got / wanted - 1)))));
