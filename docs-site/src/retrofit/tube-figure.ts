import { drawTubes } from '../../../packages/airspring/src/page/tube-drawing.js';
import { labelOf, standing } from '../../../packages/airspring/src/page/tube-words.js';
import type { MarkedSet } from '../../../packages/airspring/src/standing/marked-tubes.js';
import { reachText } from '../../../packages/airspring/src/words/account-text.js';
import { html, type Markup, table, trusted } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';

/** What tells the addresses of sets apart; the first has the plain one. */
export const anchorOf = ({ number }: MarkedSet): string => (number === 1 ? '' : `-${number}`);

const widths = { wide: 648, narrow: 350 } as const;

/** Tuning, reach, level, air speed, onsets of noise and limits over the length of the tube, below each other on one axis. */
export function tubeFigure(facts: Facts, set: MarkedSet): Markup {
  const { say } = facts;
  const { tubes } = set;
  const rows = tubes.options.map((option) => [
    say.bareLength(option.length),
    (option.account.fb ?? 0).toFixed(1),
    reachText(option.account, say)?.replace(/ Hz$/, '') ?? '–',
    option.account.loudest.level.toFixed(1),
    option.account.wanted.airSpeed?.value.toFixed(1) ?? '–',
    option.account.noise?.quiet.level.toFixed(1) ?? '–',
    option.account.noise?.noisy.level.toFixed(1) ?? '–',
    option.account.loudest.binding,
    standing(option),
  ]);
  const title = tied(`What a tube of ${say.length(tubes.diameter)} would do at each length`);
  const heads = [
    `length, ${say.lengthUnit}`,
    'tuned, Hz',
    'reach, Hz',
    'level, dB',
    'air, m/s',
    'quiet up to, dB',
    'noisy above, dB',
    'gives out',
    'fits',
  ];
  return html`
<div class="figure" id="tube-lengths${anchorOf(set)}"><figure>
<sweep-figure data-what="Length of the tube at which the curves are read">
<div class="wide">${trusted(drawTubes(facts, set, widths.wide))}</div>
<div class="narrow">${trusted(drawTubes(facts, set, widths.narrow))}</div>
</sweep-figure>
<figcaption><strong>${title}.</strong> ${tied(labelOf(facts, tubes))}</figcaption>
</figure>
<details><summary>The numbers of this figure</summary>${table(title, heads, rows)}</details>
</div>`;
}
