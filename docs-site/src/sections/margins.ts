import { read } from '@airspring/core/quantity';
import type { Design, Margin } from 'airspring';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';

/** What is left before a limit, in words: decibels as a difference, all else as a share of the limit. */
export function room({ value, limit, sense, relative }: Margin): string {
  if (value.endsWith(' dB')) {
    const left =
      (read('level', value as `${number} dB`, 'value', 'any') -
        read('level', limit as `${number} dB`, 'limit', 'any')) *
      (sense === 'at least' ? 1 : -1);
    return left < 0.05 ? 'none' : `${left.toFixed(1)}\u00a0dB`;
  }
  const percent = -100 * relative;
  return percent < 0.05 ? 'none' : `${percent < 1 ? percent.toFixed(1) : percent.toFixed(0)}\u00a0%`;
}

/** Every limit of the brief, what the box makes of it, and what is left; the nearest first. */
export function margins(design: Design): Markup {
  const sorted = [...design.margins].sort((a, b) => b.relative - a.relative);
  const rows = sorted.map((margin) => [
    margin.what,
    `${margin.sense} ${tied(margin.limit)}`,
    tied(margin.value),
    room(margin),
  ]);
  const bound = sorted.filter((margin) => room(margin) === 'none').map(({ what }) => what);
  return html`
<section aria-labelledby="margins"><h2 id="margins">How near the limits</h2>
<p>${bound.length > 0 ? `Box ${design.name} is at the limit of the brief in ${bound.length === 1 ? 'one respect' : 'these respects'}: ${bound.join(', ')}.` : `Box ${design.name} leaves some room under every limit.`} Air speed, drive and current are those at the wanted level.</p>
${table(`What the brief asks and what box ${design.name} does`, ['limit', 'the brief', `box ${design.name}`, 'room left'], rows)}
${design.warnings.map((warning) => html`<p class="caution"><strong>Outside the range of a formula.</strong> ${'text' in warning ? warning.text : `${warning.path}: ${String(warning.got)}, expected ${warning.expected}.`}</p>`)}
</section>`;
}
