import type { Answer, Brief, Met, NotMet } from 'airspring';
import { type BriefFacts, briefFacts } from './brief-facts.js';
import { boxFigure } from './figures/box-drawing.js';
import { figureMarkup } from './figures/figure.js';
import { impedancePanel } from './figures/impedance.js';
import { sweepMarkup } from './figures/sweep.js';
import { html, type Markup, table } from './html.js';
import { say, tied } from './say.js';
import { building } from './sections/building.js';
import { choice } from './sections/choice.js';
import { margins } from './sections/margins.js';
import { measured } from './sections/measured.js';
import { physics } from './sections/physics.js';
import { sheets } from './sections/sheets.js';
import { sound } from './sections/sound.js';
import { refusal, verdict, verdictLine } from './verdict.js';

/** What a page says of a brief: the answer in two sentences with the box drawn, and all that follows from it. */
export interface BriefAnswer {
  readonly sentences: readonly [string, string];
  readonly answer: Markup;
  readonly rest: Markup;
  /** The verdict in one line, to stand beside a brief that is being written. */
  readonly line: Markup;
  /** A sheet for each box, to take to the saw. */
  readonly sheets: Markup;
}

/** The text of a worked example that is a whole brief; the same in a build and in the worker of the page. */
export function briefAnswer(brief: Brief, answer: Answer): BriefAnswer {
  const met = answer.ok ? answer : answer.nearest?.answer;
  const facts = briefFacts(answer.ok ? brief : (answer.nearest?.brief ?? brief));
  const [design] = met?.designs ?? [];
  const near = !answer.ok && design && verdict(design, facts, true)[0];
  const sentences = answer.ok && design ? verdict(design, facts) : answer.ok ? (['', ''] as const) : refusal(answer);
  return {
    sentences,
    answer: html`
<p class="answer">${sentences[0]}</p><p class="answer">${sentences[1]}</p>
${!answer.ok && why(answer)}${near && html`<p class="answer">${near}</p>`}
${design && figureMarkup(boxFigure(design, facts))}`,
    rest: html`${met && boxes(met, facts)}`,
    line: html`${!answer.ok && 'No box meets this brief. '}${design && verdictLine(design, facts)}`,
    sheets: html`${met && sheets(met, brief)}`,
  };
}

function boxes({ designs }: Met, facts: BriefFacts): Markup {
  const [design] = designs;
  if (!design) return html``;
  return html`
${choice(designs, facts)}
${physics(design, designs, facts)}
${sound(design, designs, facts)}
${building(design, designs, facts)}
${margins(design)}
<section aria-labelledby="measure"><h2 id="measure">Did you build what was computed?</h2>
<p>Measure the impedance at the terminals of the finished box. In a vented box the dip between the peaks belongs to the tuning, and the report says how near to it the dip lies. If it lies higher than drawn, the vent is too short or the volume too small; if it lies lower, the vent is too long or the volume too large. A difference of a few per cent is usual (common practice). Look at the tuning first, then at the heights of the peaks, which show leaks.</p>
${measured(designs, facts)}
${sweepMarkup({ id: 'impedance', title: 'Input impedance', frequencies: design.curves.frequencies, band: [facts.lowest, facts.highest], panels: [impedancePanel(designs)], events: design.vent ? [{ f: design.vent.fb, words: `${design.name} is tuned to ${say('frequency', design.vent.fb, 'Hz')}` }] : [] })}
</section>`;
}

/** Which wishes stand against each other, and what the nearest brief changes. */
const why = ({ conflict, nearest }: NotMet): Markup => html`
<section aria-labelledby="conflict"><h2 id="conflict">What would have to give</h2>
${
  conflict.length > 0 &&
  html`<ul>${conflict.map(({ path, wish }) => html`<li>${tied(wish)} <code>${path}</code></li>`)}</ul>`
}
${
  nearest &&
  table(
    'The nearest brief that can be met',
    ['wish', 'asked', 'can be met'],
    nearest.changes.map(({ path, from, to }) => [html`<code>${path}</code>`, tied(from), tied(to)]),
  )
}
${nearest && html`<p data-scripted hidden><button type="button" class="word" data-do="nearest">Change the brief to this one</button>; the editor can take it back.</p>`}
</section>`;
