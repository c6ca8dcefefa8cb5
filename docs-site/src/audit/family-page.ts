/** The page of a family: the formulas of one file of the library, with what they were held against. */
import { type Audit, linksOf, noLedger, rowsOf } from './audit.js';
import { checkBlock } from './check-block.js';
import type { Formula } from './formula.js';
import { type Links, page, prose, sourceText } from './markdown.js';
import { sizeText } from './numbers.js';
import { symbolNames } from './symbols.js';
import { capital, ended } from './words.js';
import { countText, worstRows } from './worst.js';

/** Symbols in a title at most. */
const TITLED = 4;
const words = (family: string) => family.replaceAll('-', ' ');

export function familyPage(family: readonly Formula[], audit: Audit): string {
  const { floor, family: name, question } = family[0] as Formula;
  const rows = family.flatMap((formula) => rowsOf(audit, formula));
  const symbols = symbolNames(family.map(({ text }) => text).join('\n'));
  const shown = symbols.slice(0, TITLED).map(([symbol]) => symbol);
  const listed = shown.length > 0 ? ` (${shown.join(', ')}${symbols.length > TITLED ? ' …' : ''})` : '';
  const worst = worstRows(rows).map(
    (row) =>
      `${sizeText(row, row.deviation)}${row.tolerance.relative === undefined ? '' : ' of the expected value'} ([${row.id}](#${row.id}))`,
  );
  const verdict = worst.length === 0 ? '' : ` Worst deviation from outside: ${worst.join('; ')}.`;
  return page(
    {
      title: `${capital(floor)}${name === floor ? '' : `: ${words(name)}`}${listed}`,
      summary: question,
      keywords: [...family.map((one) => one.name), ...symbols.flat()],
    },
    `<p class="story">${question}</p>`,
    symbols.length > 0 ? `Symbols: ${symbols.map(([symbol, meaning]) => `${symbol}, ${meaning}`).join('; ')}.` : '',
    audit.ledger ? `${capital(countText(rows))}.${verdict}` : noLedger,
    ...family.map((formula) => formulaPart(formula, audit)),
    shownIn(`${floor}/${name}`, audit),
    '[All formulas and their worst deviation](/formulas/)',
  );
}

/** The pages written by hand that compute with the family. */
function shownIn(family: string, { using }: Audit): string {
  const pages = using.get(family) ?? [];
  return pages.length === 0
    ? ''
    : `**Used on:**\n\n${pages.map(({ title, address }) => `- [${title}](${address})`).join('\n')}`;
}

function formulaPart(formula: Formula, audit: Audit): string {
  const links = linksOf(audit);
  const { name, floor, text, tags, path, code } = formula;
  const rows = rowsOf(audit, formula);
  const exception = audit.exceptions[`${floor}/${name}`];
  const parts = [
    `## ${name}`,
    prose(text, links),
    said('Holds for', tags.validity, links),
    said('Leaves out', tags.neglects, links),
    said('Gives', tags.returns, links),
    said('Refuses with', tags.throws, links),
    tags.source ? `**Source:** ${sourceText(tags.source, links)}` : '',
    tags.example ? `**In use:**\n\n\`\`\`ts\n${tags.example}\n\`\`\`` : '',
    `[Signature and types of \`${name}\` in the API](/api/${floor}/#${name.toLowerCase()})`,
    `<details><summary>Code of ${name}, <code>${path}</code></summary>\n\n\`\`\`ts\n${code}\n\`\`\`\n\n</details>`,
    exception ? `**No check from outside:** ${ended(exception)}` : '',
    ...(rows.length > 0 ? [`### Checks of ${name}`, ...rows.map(checkBlock)] : []),
  ];
  return parts.filter(Boolean).join('\n\n');
}

const said = (label: string, text: string | undefined, links: Links): string =>
  text ? `**${label}:** ${prose(text, links)}` : '';
