import { type Chart, drawChart } from '../figures/chart.js';
import { sweepPictures, sweepTables } from '../figures/sweep.js';
import { html, type Markup, table, trusted } from '../html.js';
import { tied } from '../say.js';
import type { AnyValues } from './input.js';
import type { WorkedFigure, WorkedSweep } from './worked.js';

/** Widths for the measure of the text and for a telephone; the style sheet shows one of the two. */
export const widths = { wide: 648, narrow: 350 } as const;

/** The picture at some values; no line break tears a number from its unit. */
export const chartOf = (figure: WorkedFigure, values: AnyValues): Chart => {
  const chart = figure.chart(values);
  return { ...chart, label: tied(chart.label) };
};

export const dataTable = (figure: WorkedFigure, values: AnyValues): Markup => {
  const { heads, rows } = figure.data(values);
  return table(figure.title, heads, rows);
};

export function workedFigureMarkup(name: string, figure: WorkedFigure, values: AnyValues): Markup {
  const chart = chartOf(figure, values);
  return html`
<div class="figure" id="figure-${name}" data-figure="${name}"><figure>
<div class="wide">${trusted(drawChart(chart, widths.wide))}</div>
<div class="narrow">${trusted(drawChart(chart, widths.narrow))}</div>
<figcaption><strong>${figure.title}.</strong> <span data-label>${chart.label}</span>${figure.note && html` ${figure.note}`}</figcaption></figure>
<details><summary>The numbers of this figure</summary><div data-numbers>${dataTable(figure, values)}</div></details>
</div>`;
}

/** Every sentence under the curves has its place, so that it can follow. */
export function workedSweepMarkup(name: string, { how, sweep }: WorkedSweep, values: AnyValues): Markup {
  const now = sweep(values);
  return html`
<div class="figure" id="figure-${name}" data-figure="${name}"><figure class="sweep">${sweepPictures(now)}
<figcaption>${now.panels.map(({ title, label, note }) => html`<p><strong>${title}.</strong> <span data-label>${tied(label)}</span>${note && html` ${tied(note)}`}</p>`)}<p>${how}</p></figcaption></figure>
<details><summary>The numbers of these curves</summary><div data-numbers>${sweepTables(now)}</div></details>
</div>`;
}
