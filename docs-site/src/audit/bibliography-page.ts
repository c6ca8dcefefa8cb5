/** Every source, what of it was seen, and where it is used. */
import { type Fragment, html, type Markup } from '../html.js';
import { type Audit, isRestedOn, noLedger, restingOn, rowAddress } from './audit.js';
import { addressOf } from './formula.js';
import { page } from './markdown.js';
import { described } from './reference.js';

/** More checks than this are folded behind a summary, and listed by formula. */
const SHOWN = 6;

export function bibliographyPage(audit: Audit): string {
  const [used, spare] = [[] as Markup[], [] as Markup[]];
  for (const reference of [...audit.references].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const found = uses(reference.id, audit);
    const item = html`<li id="${reference.id}"><b>[${reference.id}]</b> ${described(reference, isRestedOn(reference.id, audit))}${found}</li>`;
    (found.some((use) => use !== false) ? used : spare).push(item);
  }
  return page(
    { title: 'Bibliography', summary: 'Every source, how much of it we have seen, and what rests on it.' },
    'These are the sources that the formulas, checks and pages name. The words in italics say how much of each source we have read. ‘No address verified’ means that we found no link or DOI that we could check: one from memory may lead elsewhere. Each check says whether its expected value was read in print, recomputed independently, or is a rule of thumb.',
    audit.ledger ? '' : noLedger,
    '## Sources in use',
    html`<ul class="plain sources">${used}</ul>`.markup,
    '## Sources that nothing rests on yet',
    html`<ul class="plain sources">${spare}</ul>`.markup,
  );
}

function uses(key: string, audit: Audit): readonly Fragment[] {
  const resting = restingOn(key, audit);
  const formulas = resting.formulas.map((formula) =>
    link(addressOf(formula), html`<code>${formula.floor}/${formula.name}</code>`),
  );
  const checks = resting.rows.map((row) => link(rowAddress(row, audit), row.id));
  const checked = [...new Set(resting.rows.map(({ formula }) => formula))].map((formula) => {
    const [row, ...others] = resting.rows.filter((one) => one.formula === formula);
    return link(rowAddress(row!, audit), html`${formula}${others.length > 0 && ` (${others.length + 1})`}`);
  });
  const pages = (audit.citing.get(key) ?? []).map(({ title, address }) => link(address, title));
  return [
    formulas.length > 0 && html`<br>Formulas: ${joined(formulas)}.`,
    checks.length > 0 &&
      (checks.length <= SHOWN
        ? html`<br>Checks: ${joined(checks)}.`
        : html`<details><summary>${checks.length} checks</summary>Of ${joined(checked)}.</details>`),
    pages.length > 0 && html`<br>Pages: ${joined(pages)}.`,
  ];
}

const link = (address: string | undefined, text: Fragment): Fragment =>
  address === undefined ? text : html`<a href="${address}">${text}</a>`;
const joined = (items: readonly Fragment[]): Fragment => items.flatMap((item, i) => (i === 0 ? [item] : [', ', item]));
