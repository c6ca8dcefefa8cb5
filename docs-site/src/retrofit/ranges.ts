import type { Bands } from 'airspring';
import { afterRanges, rangeParts, rangeProof, rangesText } from '../../../packages/airspring/src/words/bands-text.js';
import type { Phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { html, type Markup } from '../html.js';
import { tied } from '../say.js';

/** The formula of each number, whose proof `RangesProof` puts on the page. */
const FORMULAS = { reach: 'cutoff', level: 'greatestLevel', airSpeed: 'respond' } as const;

/**
 * A paragraph with the ranges of a box in it, and their proofs behind it. Each range opens its own: how its ends were found, which readings
 * give each end, and the formula with its checks. `where` tells apart the ranges of one page.
 */
export function withRanges(
  text: string,
  {
    bands,
    where,
    say,
    answer,
  }: { readonly bands: Bands | undefined; readonly where: string; readonly say: Phrasing; readonly answer?: true },
): Markup {
  const open = answer ? html`<p class="answer">` : html`<p>`;
  const told = bands && rangesText(bands, say);
  const [before = '', after] = told === undefined ? [text] : text.split(told);
  if (bands === undefined || after === undefined) return html`${open}${tied(text)}</p>`;
  const parts = rangeParts(bands, say).map(({ range, of, ...words }) => ({
    ...words,
    range,
    of,
    id: `proof-${where}-${of}`,
  }));
  const buttons = parts.map(
    ({ before: words, range, id }) =>
      html`${words}<button type="button" class="proof" popovertarget="${id}" aria-describedby="${id}">${tied(range)}</button>`,
  );
  const proofs = parts.map(({ of, id }) => {
    const lines = rangeProof(of, bands[of]!, say).map((line) => html`<span class="proof-line">${tied(line)}</span>`);
    return html`<div popover id="${id}" class="proof-text" data-pagefind-ignore>${lines}<span class="proof-line"><button type="button" class="proof" popovertarget="proof-${FORMULAS[of]}">The formula, and what its checks found</button></span></div>`;
  });
  return html`${open}${tied(before)}${buttons}${tied(afterRanges(bands) + after)}</p>${proofs}`;
}
