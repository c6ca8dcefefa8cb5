/** All formulas with their worst deviation. */
import type { LedgerRow } from '../../../tests/ledger/row.js';
import { type Fragment, html, table } from '../html.js';
import { type Audit, noLedger, rowsOf } from './audit.js';
import { addressOf, type Formula, keyOf, titleOf } from './formula.js';
import { inPrint } from './in-print.js';
import { page } from './markdown.js';
import { allStandings, standingWords } from './standing.js';
import { breakable, capital, flat } from './words.js';
import { countText, worstText } from './worst.js';

export function overviewPage(audit: Audit): string {
  const floors = [...new Set(audit.formulas.map(({ floor }) => floor))];
  const rows = audit.ledger?.rows ?? [];
  return page(
    {
      title: 'Formulas and their audit',
      summary: 'Each formula with its source and what it was checked against.',
      keywords: ['ledger', 'deviation', 'checks', 'sources'],
    },
    '<p class="answer">Each formula of the library names its source. Each test run compares it with values from outside this project. Some expected values were read in print; most were recomputed independently from a published definition, by a circuit simulator or a numeric library; a few are rules of thumb. What counts as read in print was read in the source itself, or in another text or data file that quotes it: each check says which. This page counts them.</p>',
    audit.ledger
      ? `${countText(rows)}. The checks ran on ${audit.ledger.date}. [Where print and exact solutions disagree](/formulas/disagreements/) · [Loose checks](/formulas/loose/) · [Speed](/formulas/speed/) · [Bibliography](/bibliography/)`
      : noLedger,
    `Of ${audit.formulas.length} formulas, ${audit.formulas.filter((formula) => keyOf(formula) in audit.exceptions).length} have no check from outside. The page of each says why.`,
    'A deviation in per cent, or without a unit, is relative to the expected value. A deviation with a unit is the difference itself.',
    ...floors.flatMap((floor) => [`## ${capital(floor)}`, floorTable(floor, audit)]),
    ...(audit.ledger ? [standing(rows), inPrint(rows, audit.formulas)] : []),
  );
}

function floorTable(floor: string, audit: Audit): string {
  const formulas = audit.formulas.filter((one) => one.floor === floor);
  const line = (formula: Formula): readonly Fragment[] => {
    const rows = rowsOf(audit, formula);
    const name = html`<a href="${addressOf(formula)}"><code>${breakable(formula.name)}</code></a><br>${titleOf(formula)}`;
    return audit.ledger ? [name, countText(rows), worstText(rows)] : [name];
  };
  const heads = audit.ledger ? ['formula', 'checks', 'worst deviation from outside'] : ['formula'];
  return flat(table(`Formulas of ${floor}`, heads, formulas.map(line), 'thirds').markup);
}

/** What the rows rest on, counted. */
function standing(rows: readonly LedgerRow[]): string {
  const kinds = [...new Set(rows.map(({ kind }) => kind))];
  const count = (kind: string, words: string) =>
    rows.filter((row) => row.kind === kind && standingWords(row) === words).length;
  const lines = kinds.map((kind) => [kind, ...allStandings.map((words) => String(count(kind, words) || '–'))]);
  const heads = ['kind', ...allStandings];
  return `## What the checks rest on\n\nA value read in print or recomputed independently counts as outside. A rule of thumb, an identity or a pinned value does not.\n\n${flat(table('Checks by kind and standing', heads, lines).markup)}`;
}
