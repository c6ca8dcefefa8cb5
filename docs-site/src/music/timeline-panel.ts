import { axisOf, spread } from '../figures/axis.js';
import { linePath } from '../figures/line-path.js';
import { html, type Markup } from '../html.js';
import type { BoxAccount, Verdict } from './account.js';
import type { Panel } from './panels-in-time.js';
import { columnsOf, LOOKS, RANK, STRIP, stretchesOf, worstOf } from './verdict-looks.js';

const px = (value: number): string => value.toFixed(1);

/** One quantity over time, with its limits. */
export function drawPanel(
  { id, title, unit, colour, lines, rules, verdicts: each }: Panel,
  width: number,
  height: number,
): Markup {
  const columns = lines.map(({ values }) => columnsOf(values));
  const most = Math.max(...columns.map((column) => Math.max(...column)), 0.01);
  const near = rules.filter(({ at }) => at < 2.5 * most);
  const { domain, ticks } = axisOf(0, Math.max(most, ...near.map(({ at }) => at)), '');
  const high = domain[1];
  const x = (column: number, count: number) => (width * (column + 0.5)) / count;
  const y = (value: number) => height * (1 - value / high);
  const path = (column: Float64Array, from = 0, to = column.length - 1) => {
    const at = Array.from({ length: to - from + 1 }, (_, i) => from + i);
    return linePath(
      at.map((i) => x(i, column.length)),
      at.map((i) => y(column[i]!)),
    );
  };
  const [bold, thin] = columns as [Float64Array, Float64Array | undefined];
  const boldPath = path(bold);
  const isFirst = lines[0]?.name === 'A';
  const stretches = isFirst && each ? stretchesOf(worstOf(each)) : [];
  // One path for each colour, over the whole line: a picture of many elements is slow to follow a hand.
  const over = (['doubtful', 'noisy'] as const).flatMap((verdict) => {
    const parts = stretches.filter((one) => one.verdict === verdict);
    if (parts.length === 0) return [];
    const d = parts.map(({ from, to }) => path(bold, from, Math.min(to, bold.length - 1))).join('');
    return [html`<path d="${d}" stroke="${LOOKS[verdict].colour}" stroke-width="2.4"/>`];
  });
  const shown = ticks.filter((_, i) => ticks.length <= 5 || i % 2 === 0);
  // What lies above the limit of A is drawn once more, in the colour of what is too much.
  const above = isFirst && near.find(({ at, words }) => at < Math.max(...bold) && !words.endsWith('of B'));
  // Words stand above their lines, or below where there is no room, and not on each other.
  const places = spread(
    near.map(({ at }) => (y(at) < 20 ? y(at) + 15 : y(at) - 5)),
    14,
    12,
  );
  const area = `${boldPath}V${px(height)}H${px(x(0, bold.length))}Z`;
  return html`<g data-panel="${id}" data-height="${px(height)}" data-low="0" data-high="${high}" data-unit="${unit}" data-names="${lines.map(({ name }) => name).join('|')}">
<rect class="band" width="${px(width)}" height="${px(height)}"/>
<text class="panel-title" y="-8" fill="${colour}">${title}, ${unit}</text><text class="read halo" data-read x="${px(width)}" y="-8" text-anchor="end" fill="${colour}"></text>
${shown.map((tick) => html`<path class="grid" d="M0 ${px(y(tick))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(y(tick) + 4)}">${tick}</text>`)}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden"><path class="area" d="${area}" color="${colour}"/>${thin && html`<path data-line="${lines[1]?.name ?? ''}" d="${path(thin)}" stroke="var(--ink)" stroke-width="0.9"/>`}<path data-line="${lines[0]?.name ?? ''}" d="${boldPath}" stroke="${colour}" stroke-width="1.8"/>${over}${above && html`<svg width="${px(width)}" height="${px(y(above.at))}" overflow="hidden"><path d="${boldPath}" stroke="var(--heat)" stroke-width="2.4"/></svg>`}</svg>
${near.map(({ at, words }, i) => html`<path class="rule" d="M0 ${px(y(at))}H${px(width)}"/><text class="soft halo" x="${px(width - 4)}" y="${px(places[i]!)}" text-anchor="end">${words}</text>`)}
</g>`;
}

/** Whether a vent may be heard, over time: the taller, the noisier. */
export function drawStrip(
  name: string,
  { short, noise }: BoxAccount,
  each: readonly Verdict[] = [],
  width: number,
): Markup {
  const columns = worstOf(each);
  const x = (column: number) => (width * column) / columns.length;
  const title = `${name}: ${short}${noise ? '' : ', no vent to be heard'}`;
  const bar = ({ from, to, verdict }: ReturnType<typeof stretchesOf>[number]) => {
    const { tall, colour, words } = LOOKS[verdict];
    return html`<rect data-to="${px(x(to))}" data-words="${words}" x="${px(x(from))}" y="${STRIP - tall}" width="${px(Math.max(0.4, x(to) - x(from)))}" height="${tall}" fill="${colour}"/>`;
  };
  const legend = name === 'A' && noise && title.length < 26;
  return html`<g data-strip>${legend && html`<text class="legend" x="${px(width)}" y="-7" text-anchor="end">${RANK.map((verdict, i) => html`<tspan fill="${LOOKS[verdict].colour}">${i > 0 ? ' · ' : ''}${LOOKS[verdict].words}</tspan>`)}</text>`}<text class="panel-title" y="-7" fill="var(--ink)">${title}</text><text class="read halo" data-read x="${px(width)}" y="-7" text-anchor="end" fill="var(--ink)"></text>${stretchesOf(columns).map(bar)}<path class="grid" d="M0 ${STRIP + 0.5}H${px(width)}"/></g>`;
}
