import { type Chart, drawChart } from '../figures/chart.js';
import { html, type Markup, table, trusted } from '../html.js';
import { tied } from '../say.js';
import type { AnyValues } from './input.js';
import type { WorkedFigure } from './worked.js';

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
