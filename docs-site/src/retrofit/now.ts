import { nowSentences } from '../../../packages/airspring/src/words/account-text.js';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';
import { caution } from './cautions.js';
import type { Facts } from './facts.js';
import { withRanges } from './ranges.js';

/** What the box does now, and where a measurement contradicts its sizes. */
export const whatItDoesNow = ({ answer, say }: Facts): Markup => html`
<section aria-labelledby="now"><h2 id="now">What it does now</h2>
${nowSentences(answer, say).map((text) => withRanges(text, { bands: answer.now.bands, where: 'now', say }))}
${answer.doubts.map((phrase) => html`<p class="caution"><strong>Check the tuning.</strong> ${tied(say.phrase(phrase))}</p>`)}
${caution('hearing')}
</section>`;

/** What the brief left open, and what was taken for it. */
export const whatWasAssumed = ({ answer: { assumed }, say }: Facts): Markup | false =>
  assumed.length > 0 &&
  html`
<section aria-labelledby="assumed"><h2 id="assumed">What was assumed</h2>
<ul>${assumed.map((phrase) => html`<li>${tied(say.phrase(phrase))}</li>`)}</ul>
</section>`;
