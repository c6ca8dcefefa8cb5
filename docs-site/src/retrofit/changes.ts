import type { Account, RowDone } from 'airspring';
import { glanceNumbers } from '../../../packages/airspring/src/words/account-text.js';
import { changeText, doneRows } from '../../../packages/airspring/src/words/changes-text.js';
import { endOfSearchText } from '../../../packages/airspring/src/words/phrasing.js';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';
import { stepList } from './first.js';
import { withRanges } from './ranges.js';
import { meets } from './wishes.js';

const heads = ['tuned, Hz', 'reach, Hz', 'level, dB', 'air, m/s', 'quiet, dB', 'travel, mm'] as const;

/** The numbers of a row, aligned on their points; what meets a wish stands out. */
function cells(account: Account, { answer }: Facts): Markup[] {
  const met = meets(account, answer);
  const isMet = [false, met.reach, met.level, met.airSpeed, met.quiet, false];
  return [...glanceNumbers(account), (account.wanted.travel.value * 1e3).toFixed(1)].map(
    (text, i) => html`<td>${isMet[i] && text !== '' ? html`<strong>${text}</strong>` : text || '–'}</td>`,
  );
}

/** What a change is; of changes that are called the same, also the step in which they differ. */
function summaryOf(row: RowDone, { answer, say }: Facts): string {
  const what = say.phrase(row.what);
  const twins = answer.rows.filter(
    (other): other is RowDone => other.ok && other !== row && say.phrase(other.what) === what,
  );
  const own = row.steps
    .map((step) => say.phrase(step))
    .filter(
      (step) => twins.length > 0 && !twins.some(({ steps }) => steps.some((other) => say.phrase(other) === step)),
    );
  const [clause = ''] = (own.at(-1) ?? '').split(/[.;,:] /);
  return clause === '' ? what : `${what}. ${clause.replace(/\.$/, '')}`;
}

function group([number, row]: readonly [number, RowDone], facts: Facts): Markup {
  const { say, first } = facts;
  const least = `The amplifier sees an impedance of at least ${say.ohms(row.account.leastLoad.value)}.`;
  return html`<tbody${first?.number === number && html` class="chosen"`}>
<tr><th scope="row">${number}. ${row.change}</th>${cells(row.account, facts)}</tr>
<tr class="how"><td colspan="${heads.length + 1}"><details><summary>${tied(summaryOf(row, facts))}${row.fitting === 'measure' && '; measure first'}</summary>${withRanges(`${changeText(row, say)} ${least}`, { bands: row.bands, where: 'change', say })}${stepList(facts, row)}</details></td></tr>
</tbody>`;
}

/** Every change that can be made, a row that opens its steps; and what cannot be done, and why. */
export function changes(facts: Facts): Markup {
  const { answer, say } = facts;
  const refused = answer.rows.flatMap((row) => (row.ok ? [] : [row]));
  return html`
<section aria-labelledby="changes"><h2 id="changes">What could be done, each change alone</h2>
<p>Every row is computed as a complete box. Open a row to see its steps. A bold number meets what you asked for.</p>
<div class="table"><table class="changes">
<caption>${tied(`Tuned: the tuning, or the resonance of a closed box. Reach: the response has fallen by ${say.decibels(answer.asked.fall)} there.${endOfSearchText([answer.now.account, ...doneRows(answer).map(([, row]) => row.account)])} Level: the loudest steady tone at every frequency of the band. Air and travel: the greatest peak values at ${say.decibels(answer.asked.level)}. Quiet: up to this level the vent stays below every published onset of noise.`)}</caption>
<thead><tr><th scope="col">change</th>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody class="now"><tr><th scope="row">as it is</th>${cells(answer.now.account, facts)}</tr></tbody>
${doneRows(answer).map((row) => group(row, facts))}
</table></div>
${
  refused.length > 0 &&
  html`<h3>What cannot be done</h3>
<ul>${refused.map((row) => html`<li><strong>${row.change}</strong>: ${tied(say.phrase(row.because))}</li>`)}</ul>`
}
</section>`;
}
