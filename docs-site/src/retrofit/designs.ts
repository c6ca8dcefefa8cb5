import type { Retrofit } from 'airspring';
import {
  designHead,
  designSummary,
  partRows,
  stepsInOrder,
} from '../../../packages/airspring/src/words/changed-design-text.js';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';

function oneDesign(design: Retrofit['designs'][number], { answer, say }: Facts): Markup {
  const [heads = [], ...parts] = partRows(design, say);
  return html`<details><summary>${tied(designHead(design))}</summary>
<p>${tied(designSummary(design, answer.now.account, say))}</p>
<ol>${stepsInOrder(design, say).map(
    ({ text, caution }) =>
      html`<li>${caution !== undefined && html`<p class="caution">${tied(caution)}</p>`}${tied(text)}</li>`,
  )}</ol>
${parts.length > 0 && table(`What to make or to buy for design ${design.name}`, heads, parts, `parts-${design.name}`)}
</details>`;
}

/** The best combinations of changes, each a whole design that opens its steps and parts. */
export function wholeDesigns(facts: Facts): Markup | false {
  const { designs } = facts.answer;
  if (designs.length === 0) return false;
  return html`
<section aria-labelledby="designs"><h2 id="designs">The best combinations, as whole designs</h2>
<p>None of them is worse than another in reach, level and quietness of the vent at once. Their names compare them with each other alone: a change or a tube above may go further in one of the three. Open one to see all its work in order.</p>
${designs.map((design) => oneDesign(design, facts))}
</section>`;
}
