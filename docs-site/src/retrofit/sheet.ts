import { drawTubes } from '../../../packages/airspring/src/page/tube-drawing.js';
import { holeText } from '../../../packages/airspring/src/words/tubes-text.js';
import { html, type Markup, trusted } from '../html.js';
import { tied } from '../say.js';
import { caution } from './cautions.js';
import type { Facts } from './facts.js';
import { doFirst, howQuiet, measureWhenDone, quieterChoices, whatItChanges } from './first.js';

/** Pixels on paper. */
const WIDTH = 648;

/** One sheet for the workshop: what to do first, its steps, and the tubes. Seen on paper only. */
export function workshopSheet(facts: Facts): Markup {
  const { answer, first, sets, say } = facts;
  const steps = first ? [...(first.row.measure ? [first.row.measure] : []), ...first.row.steps] : [];
  return html`<article class="sheet"><h2>${answer.title}</h2>
<p>${tied(doFirst(facts))} ${tied(whatItChanges(facts))} ${tied(howQuiet(facts))} ${tied(quieterChoices(facts))}</p>
<ol>${steps.map((step) => html`<li>${tied(say.phrase(step))}</li>`)}</ol>
<p>${tied(measureWhenDone(facts))}</p>
${caution('dust')}${caution('fumes')}${caution('hearing')}
${sets.length > 0 && html`<p>Found by measuring: free way behind the hole ________ mm, hole ________ mm, panel ________ mm, tuning ________ Hz.</p>`}
${sets.map(
  (set) => html`<h3>${tied(`Set ${set.number}, ${holeText(set.tubes, answer, say)}`)}, one flange</h3>
<p>${tied(set.proposed.map(({ mark, option }) => `${mark}: ${say.length(option.length)}`).join('. '))}.</p>
<div class="plot-on-paper">${trusted(drawTubes(facts, set, WIDTH))}</div>`,
)}</article>`;
}
