import {
  listedVents,
  rankedMeaning,
  rankedName,
  rankedNumbers,
} from '../../../packages/airspring/src/words/ranked-text.js';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';

/** Where each kind of choice is told in full. */
const told = { change: 'changes', design: 'designs', tube: 'tubes' } as const;

/** What keeps the vent quiet up to the highest level, the best choice first; left out where it is quiet already. */
export function quietestVents({ answer, say }: Facts): Markup | false {
  const ranked = listedVents(answer);
  if (ranked.length === 0) return false;
  const rows = ranked.map((one) => [html`<a href="#${told[one.what]}">${rankedName(one)}</a>`, ...rankedNumbers(one)]);
  return html`
<section aria-labelledby="quietest"><h2 id="quietest">Which vent stays quiet up to the highest level</h2>
${table(
  tied(rankedMeaning(answer, say)),
  ['choice', 'quiet, dB', 'louder, dB', 'behind, dB', 'published losses, dB'],
  rows,
  'quietest',
)}
</section>`;
}
