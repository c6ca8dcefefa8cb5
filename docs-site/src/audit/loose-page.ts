/** The checks that allow far more than they find: they would not notice a small error. */
import { isLoose, toleranceSize } from '../../../tests/ledger/row.js';
import { type Fragment, html, table } from '../html.js';
import { type Audit, noLedger, rowAddress } from './audit.js';
import { page } from './markdown.js';
import { sizeText } from './numbers.js';
import { flat } from './words.js';

export function loosePage(audit: Audit): string {
  const found = (audit.ledger?.rows ?? []).filter(isLoose);
  const lines = found.map((row): readonly Fragment[] => {
    const address = rowAddress(row, audit);
    return [
      address ? html`<a href="${address}">${row.id}</a>` : row.id,
      sizeText(row, row.deviation),
      sizeText(row, toleranceSize(row)),
      row.tolerance.why,
    ];
  });
  const heads = ['check', 'deviation', 'allowed', 'why so much'];
  return page(
    {
      title: 'Loose checks',
      summary: 'Checks that allow far more than they find, and why.',
      tableOfContents: false,
    },
    'The tolerance of these checks is more than a hundred times their deviation, or more than a millionth where they meet the value exactly. They would not notice a small error.',
    audit.ledger ? '' : noLedger,
    ...(lines.length > 0 ? [flat(table('Loose checks', heads, lines).markup)] : []),
    '[All formulas and their worst deviation](/formulas/)',
  );
}
