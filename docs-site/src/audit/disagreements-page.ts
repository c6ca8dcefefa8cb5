/** Printed and told values that the formulas do not meet to the last digit printed, found by that rule alone. */
import type { LedgerRow } from '../../../tests/ledger/row.js';
import { type Fragment, html, table } from '../html.js';
import { type Audit, noLedger, rowAddress } from './audit.js';
import { page } from './markdown.js';
import { listed, numberText, unitsOf, withUnit } from './numbers.js';
import { capital, ended, flat } from './words.js';

/** Values of more digits were computed, not printed for people. */
const PRINTED = 6;

/** Half of the last digit of a number as it is printed; trailing zeros do not show, so that it errs on the side of print. */
export function halfDigit(value: number): number {
  const [mantissa, exponent] = value.toExponential().split('e') as [string, string];
  return 0.5 * 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
}
const digitsOf = (value: number) => value.toExponential().replace(/e.*|\D/g, '').length;

/** Whether a row holds what somebody printed or told, rather than what was worked out anew. */
const isPrint = ({ kind, status }: LedgerRow): boolean =>
  ['table', 'example', 'standard', 'measured'].includes(kind) && (status === 'seen' || status === 'practice');

/** Numbers of the elements that miss print by more than half of its last digit. */
export const disagreeing = (row: LedgerRow): readonly number[] => {
  const got = listed(row.got);
  return listed(row.expected).flatMap((want, i) => {
    const off = Math.abs(got[i]! - want);
    return isPrint(row) && want !== 0 && digitsOf(want) <= PRINTED && off > halfDigit(want) * (1 + 1e-9) ? [i] : [];
  });
};

export function disagreementsPage(audit: Audit): string {
  const found = (audit.ledger?.rows ?? []).filter((row) => disagreeing(row).length > 0);
  const parts = found.sort((a, b) => greatest(b) - greatest(a)).map((row) => part(row, audit));
  return page(
    {
      title: 'Where print and exact solutions disagree',
      summary: 'Values in print that the formulas miss by more than half of the last digit, and why.',
      tableOfContents: false,
    },
    'Print is rounded, copied and at times wrong. Here stands each value in the ledger that was read in print, or that the trade tells, and that the formula misses by more than half of its last printed digit. The rule finds them, nobody picks them; trailing zeros do not count as digits, which favours print. The reason is the one that the check gives for its tolerance.',
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
    withUnit(numberText(wanted[i]!), units[i] ?? ''),
    withUnit(numberText(got[i]!, 6), units[i] ?? ''),
    `${numberText(100 * fraction(row, i), 2)}\u00a0%`,
  ]);
}
