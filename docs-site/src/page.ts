import type { Answer, Brief, Met, NotMet } from 'airspring';
import { type BriefFacts, briefFacts } from './brief-facts.js';
import { boxFigure } from './figures/box-drawing.js';
import { figureMarkup } from './figures/figure.js';
import { impedanceFigure } from './figures/impedance.js';
import { html, type Markup, table, trusted } from './html.js';
import { tied } from './say.js';
import { building } from './sections/building.js';
import { choice } from './sections/choice.js';
import { margins } from './sections/margins.js';
import { physics } from './sections/physics.js';
import { sound } from './sections/sound.js';
import { type Reference, sources } from './sections/sources.js';
import { refusal, verdict } from './verdict.js';

export interface PageInput {
  /** What the page asks; its answer is computed. */
  readonly question: string;
  /** Who asks and why, in two or three sentences. */
  readonly story: string;
  readonly brief: Brief;
  readonly answer: Answer;
  readonly references: readonly Reference[];
  readonly style: string;
}

/** A panel with a spring for the air behind it. */
const mark = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="6" fill="#17313d"/><path d="M6 5v22M6 16h3l2-6 4 12 4-12 4 12 2-6h2" fill="none" stroke="#9fd8cc" stroke-width="2.2" stroke-linejoin="round" stroke-linecap="round"/></svg>`;

/** One worked example as a whole document that asks nothing of any other host, and needs no script. */
export function page({ question, story, brief, answer, references, style }: PageInput): string {
  const [first, second] = answer.ok ? verdictOf(answer, briefFacts(brief)) : refusal(answer);
  const body = answer.ok
    ? boxes(answer, briefFacts(brief))
    : html`${why(answer)}${answer.nearest && boxes(answer.nearest.answer, briefFacts(answer.nearest.brief), true)}`;
  return `<!doctype html>\n${
    html`<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="description" content="${first}">
<title>${question} · Airspring</title>
<link rel="icon" href="data:image/svg+xml,${encodeURIComponent(mark)}">
<style>${trusted(style)}</style>
</head>
<body>
<a class="skip" href="#answer">To the answer</a>
<header><p class="home">Airspring <span>a worked example</span></p></header>
<main>
<h1>${question}</h1>
<p class="story">${story} ${brief.note}</p>
<div id="answer"><p class="answer">${first}</p><p class="answer">${second}</p></div>
${body}
${sources(references)}
</main>
<footer><p>Computed by Airspring from the brief <i>${brief.title}</i>. Lengths, levels and words are results of one run; nothing on this page was typed by hand but the story and the explanations.</p></footer>
</body>
</html>
`.markup
  }`;
}

const verdictOf = ({ designs }: Met, facts: BriefFacts): readonly [string, string] => {
  const [design] = designs;
  return design ? verdict(design, facts) : ['', ''];
};

function boxes({ designs }: Met, facts: BriefFacts, nearest = false): Markup {
  const [design] = designs;
  if (!design) return html``;
  return html`
${nearest && html`<p class="answer">${verdict(design, facts, true)[0]}</p>`}
${figureMarkup(boxFigure(design, facts))}
${choice(designs, facts)}
${physics(design, designs, facts)}
${sound(design, designs, facts)}
${building(design, designs, facts)}
${margins(design)}
<section aria-labelledby="measure"><h2 id="measure">Did you build what was computed?</h2>
<p>One measurement tells: the impedance at the terminals of the finished box. If the valley of a vented box lies too high, the vent is too short or the air too little; too low, the other way round. Look at the tuning first, then at the heights of the peaks, which show leaks.</p>
${figureMarkup(impedanceFigure(designs, facts))}
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
</section>`;
