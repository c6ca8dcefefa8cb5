import {
  measuredRanges,
  measuredRows,
  measuredSentences,
} from '../../../packages/airspring/src/words/measured-text.js';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';
import { cite } from '../sections/sources.js';
import type { Facts } from './facts.js';

/** The ranges of the numbers that a driver is chosen by. Each opens its proof, which `RangesProof` puts on the page. */
export function measuredHead({ answer: { measuredDrivers: found } }: Facts): Markup | false {
  if (found === undefined) return false;
  const ranges = measuredRanges(found);
  const last = ranges.length - 1;
  const numbers = ranges.map((range, i) => {
    return html`${i > 0 && (i === last ? ' and ' : ', ')}<button type="button" class="proof" popovertarget="proof-lossyVentedImpedance" aria-describedby="proof-lossyVentedImpedance">${tied(range)}</button>`;
  });
  return html`<p class="answer">Each driver has ${numbers}, as far as the impedance of the box tells.</p>`;
}

/** What the impedance of the box tells of drivers without a sheet, each value with its range, and what stays open. */
export function measuredDrivers({ answer: { measuredDrivers: found }, say }: Facts): Markup | false {
  if (found === undefined) return false;
  const [heads = [], ...rows] = measuredRows(found);
  const [first = '', ...others] = measuredSentences(found, say).map(tied);
  return html`
<section aria-labelledby="drivers"><h2 id="drivers">What the impedance tells of the drivers</h2>
<p>${first} The method: ${cite('small1973vented4')}, with the losses of ${cite('small1973vented1')}.</p>
${table('Each driver as the impedance tells it', heads, rows, 'measured')}
${others.map((text) => html`<p>${text}</p>`)}
</section>`;
}
