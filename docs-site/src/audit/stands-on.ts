/** What a page written by hand stands on. */
import { join } from 'node:path';
import { type Fragment, html, type Markup, table, trusted } from '../html.js';
import { isRestedOn, noLedger, rowsOf } from './audit.js';
import { addressOf } from './formula.js';
import { raised } from './markdown.js';
import { described } from './reference.js';
import { standingText } from './standing.js';
import { breakable } from './words.js';
import { countText, worstText } from './worst.js';
import { readAudit } from './write.js';

/** Read once a build. The build runs in docs-site. */
export const audit = readAudit(join(process.cwd(), '..'));

/** How all checks of the ledger stand. */
export const counts = audit.ledger && standingText(audit.ledger.rows);

/** Sources that the page at an address cites, and the formulas of some families with their checks in the ledger. */
export function standsOn(address: string, families: readonly string[]): Markup {
  const cited = audit.references.filter(({ id }) => audit.citing.get(id)?.some((page) => page.address === address));
  const formulas = families.flatMap((of) => {
    const found = audit.formulas.filter(({ floor, family }) => `${floor}/${family}` === of);
    // Before the checks have run, those that only the ledger knows as formulas are not told yet.
    if (found.length === 0 && audit.ledger) throw new Error(`There is no family ${of}`);
    return found;
  });
  const lines = formulas.map((formula): readonly Fragment[] => {
    const name = html`<a href="${addressOf(formula)}"><code>${breakable(formula.name)}</code></a>`;
    const rows = rowsOf(audit, formula);
    return audit.ledger ? [name, countText(rows), worstText(rows)] : [name];
  });
  const heads = audit.ledger ? ['formula', 'checks', 'worst deviation from outside'] : ['formula'];
  const caption = 'The formulas used here; each name leads to its sources and to every check';
  const formulaTable = table(caption, heads, lines, 'thirds');
  return html`
${cited.length > 0 && html`<ul class="plain sources">${cited.map((source) => html`<li><a href="/bibliography/#${source.id}">[${source.id}]</a> ${described(source, isRestedOn(source.id, audit))}</li>`)}</ul>`}
${!audit.ledger && html`<p>${noLedger}</p>`}
${trusted(raised(formulaTable.markup))}`;
}
