/** Ties the numbers of a page to its one model: text and pictures follow within a frame. */

import { chartOf, dataTable, widths } from '../example/figure-markup.js';
import { type AnyValues, startsOf, textOf } from '../example/input.js';
import type { SlowPart, Worked, WorkedFigure, WorkedSweep } from '../example/worked.js';
import { type Chart, drawChart, markAt, pathOf, scales } from '../figures/chart.js';
import { drawSweep, type Sweep, sweepTables } from '../figures/sweep.js';
import { tied } from '../say.js';
import './scrub-number.js';
import type { Scrubbed } from './scrub-number.js';

const models = import.meta.glob<Worked>('../worked/*.ts', { import: 'default' });
/** As in the style sheet: which of the two pictures is seen. */
const telephone = matchMedia('(max-width: 700px)');
/** Of a frame, for the parts of a model's work, ms; the rest is for the picture and for the hand. */
const SPENT = 3;
/** After the last change, before the page says aloud what it did, ms. */
const REST = 500;

/** A picture on the page, and the axes it was last drawn with. */
class Picture {
  readonly #figure: WorkedFigure;
  readonly #element: HTMLElement;
  readonly #author: Chart;
  #drawn: Chart;
  #ghosts = false;

  constructor(element: HTMLElement, figure: WorkedFigure, values: AnyValues) {
    [this.#element, this.#figure] = [element, figure];
    this.#author = this.#drawn = chartOf(figure, values);
  }

  /** Moves lines and marks of the picture that is seen; the axes stay. */
  move(values: AnyValues): void {
    const chart = chartOf(this.#figure, values);
    if (chart.traces.length !== this.#drawn.traces.length) {
      this.#redraw({ ...chart, x: this.#drawn.x, y: this.#drawn.y });
      return;
    }
    if (!this.#ghosts) this.#leaveGhosts();
    const place = telephone.matches ? 'narrow' : 'wide';
    const svg = this.#element.querySelector(`.${place} > svg`) as SVGElement;
    const scale = scales(this.#drawn, widths[place]);
    for (const trace of chart.traces) {
      svg.querySelector(`[data-trace="${trace.name}"]`)?.setAttribute('d', pathOf(trace, scale));
      const end = svg.querySelector(`[data-end="${trace.name}"]`);
      end?.setAttribute('y', String(scale.y(trace.y[trace.y.length - 1]!) - 8));
      if (end) end.textContent = trace.words ?? '';
    }
    for (const mark of chart.marks ?? []) {
      const group = svg.querySelector(`[data-mark="${mark.name}"]`);
      group?.setAttribute('transform', markAt(mark, scale));
      const words = group?.querySelector('text');
      if (words) words.textContent = mark.words;
    }
  }

  /** Draws axes, sentence and table, once the hand rests; returns the sentence. */
  rest(values: AnyValues): string {
    const chart = chartOf(this.#figure, values);
    this.#redraw(chart);
    const label = this.#element.querySelector('[data-label]');
    if (label) label.textContent = chart.label;
    const numbers = this.#element.querySelector('[data-numbers]');
    if (numbers) numbers.innerHTML = dataTable(this.#figure, values).markup;
    return chart.label;
  }

  /** The author's lines stay, grey: copies of what is there cost less than a new picture. */
  #leaveGhosts(): void {
    this.#ghosts = true;
    for (const line of [...this.#element.querySelectorAll('[data-trace]:not(.area)')].reverse()) {
      const ghost = line.cloneNode() as SVGElement;
      ghost.removeAttribute('data-trace');
      ghost.setAttribute('class', 'ghost');
      ghost.setAttribute('stroke', 'var(--ghost)');
      line.parentElement?.prepend(ghost);
    }
  }

  #redraw(chart: Chart): void {
    this.#ghosts = true;
    this.#drawn = chart;
    for (const [place, width] of Object.entries(widths)) {
      const holder = this.#element.querySelector(`.${place}`) as HTMLElement;
      holder.innerHTML = drawChart(chart, width, this.#author.traces);
    }
  }
}

/** Panels over one axis: the picture that is seen is drawn anew in its axes, which follow when the hand rests. */
class Panels {
  readonly #sweep: WorkedSweep['sweep'];
  readonly #element: HTMLElement;
  readonly #author: Sweep;
  #axes: Sweep;

  constructor(element: HTMLElement, { sweep }: WorkedSweep, values: AnyValues) {
    [this.#element, this.#sweep] = [element, sweep];
    this.#author = this.#axes = sweep(values);
  }

  move(values: AnyValues): void {
    const now = this.#sweep(values);
    const panels = now.panels.map((panel, i) => {
      const { domain, ticks } = this.#axes.panels[i] ?? panel;
      return { ...panel, domain, ticks };
    });
    this.#draw({ ...now, panels }, telephone.matches ? 'narrow' : 'wide');
  }

  rest(values: AnyValues): string {
    const now = this.#sweep(values);
    this.#axes = now;
    this.#draw(now, 'wide', 'narrow');
    const labels = now.panels.map(({ label }) => tied(label));
    this.#element.querySelectorAll('[data-label]').forEach((place, i) => {
      place.textContent = labels[i] ?? '';
    });
    const numbers = this.#element.querySelector('[data-numbers]');
    if (numbers)
      numbers.innerHTML = sweepTables(now)
        .map(({ markup }) => markup)
        .join('');
    return labels.join(' ');
  }

  #draw(sweep: Sweep, ...places: readonly (keyof typeof widths)[]): void {
    for (const place of places) {
      const holder = this.#element.querySelector(`.${place}`) as HTMLElement;
      holder.innerHTML = drawSweep(sweep, widths[place], this.#author);
    }
    this.#element.querySelector('sweep-figure')?.dispatchEvent(new Event('redrawn'));
  }
}

/** Settles when a hand or the focus first comes to a number. */
const touched = (article: HTMLElement): Promise<void> =>
  new Promise((resolve) => {
    for (const number of article.querySelectorAll('scrub-number'))
      for (const type of ['pointerenter', 'pointerdown', 'focus'])
        number.addEventListener(type, () => resolve(), { once: true });
  });

async function enliven(article: HTMLElement): Promise<void> {
  const load = models[`../worked/${article.dataset.model}.ts`];
  if (!load || !article.querySelector('scrub-number')) return;
  for (const part of article.querySelectorAll<HTMLElement>('[data-scripted]')) part.hidden = false;
  // Keeps the changes that are made before the model is loaded.
  let changed: AnyValues = {};
  let ask = () => {};
  let say = () => {};
  article.addEventListener('scrub-input', (event) => {
    const { name, value } = (event as CustomEvent<Scrubbed>).detail;
    changed = { ...changed, [name]: value };
    ask();
  });
  article.addEventListener('scrub-change', () => say());
  if (article.dataset.later !== undefined) {
    article.dataset.live = '';
    await touched(article);
  }
  const model = await load();
  const author = startsOf(model.inputs);
  let values = author;
  const outputs = [...article.querySelectorAll<HTMLOutputElement>('output[data-answer]')];
  const figureOf = (name: string) => article.querySelector<HTMLElement>(`[data-figure="${name}"]`);
  const pictures = [
    ...Object.entries(model.figures).flatMap(([name, figure]) => {
      const element = figureOf(name);
      return element ? [new Picture(element, figure, values)] : [];
    }),
    ...Object.entries(model.sweeps ?? {}).flatMap(([name, sweep]) => {
      const element = figureOf(name);
      return element ? [new Panels(element, sweep, values)] : [];
    }),
  ];
  const pictureOf = (name: string) => article.querySelector<HTMLElement>(`[data-picture="${name}"]`);
  const drawings = Object.entries(model.pictures ?? {}).flatMap(([name, draw]) => {
    const element = pictureOf(name);
    return element ? [{ element, draw }] : [];
  });
  const said = document.querySelector('[data-said]');
  let asked = 0;
  let timer = 0;

  /** The work that is left before the current values can be shown. */
  let parts: readonly (() => unknown)[] | undefined;
  let isStale = false;

  /** Does part of the work, and shows the result when all of it is done. Changes made meanwhile come next, so that answers appear even while the hand moves. */
  const frame = () => {
    if (parts === undefined) {
      values = { ...author, ...changed };
      isStale = false;
      parts = model.parts?.(values) ?? [];
    }
    const begun = performance.now();
    let done = 0;
    while (done < parts.length && performance.now() - begun < SPENT) parts[done++]?.();
    const isDone = done === parts.length && performance.now() - begun < SPENT;
    parts = isDone ? undefined : parts.slice(done);
    if (isDone) paint();
    asked = isDone && !isStale ? 0 : requestAnimationFrame(frame);
  };
  const write = (answers: SlowPart['answers']) => {
    for (const output of outputs) {
      const name = output.dataset.answer as string;
      const input = model.inputs[name];
      const text = answers[name] ?? (input && textOf(input, values[name]!));
      if (text !== undefined && output.textContent !== tied(text)) output.textContent = tied(text);
    }
  };
  const later =
    model.slow || model.files ? (await import('./slow-part.js')).slowPart(article, model, write) : undefined;
  const paint = () => {
    write(model.answers(values));
    later?.(values);
    for (const picture of pictures) picture.move(values);
    for (const { element, draw } of drawings) element.innerHTML = draw(values);
  };
  const rest = () => {
    if (asked !== 0) {
      say();
      return;
    }
    const labels = pictures.map((picture) => picture.rest(values));
    if (said) said.textContent = model.answers(values).said ?? labels[0] ?? '';
  };
  ask = () => {
    isStale = true;
    if (asked === 0) asked = requestAnimationFrame(frame);
    clearTimeout(timer);
  };
  say = () => {
    clearTimeout(timer);
    timer = window.setTimeout(rest, REST);
  };
  if (Object.keys(changed).length > 0) {
    ask();
    say();
  }
  article.dataset.live = '';
}

for (const article of document.querySelectorAll<HTMLElement>('article[data-model]')) void enliven(article);
