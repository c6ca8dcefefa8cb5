import { widths } from '../example/figure-markup.js';
import type { Fineness } from '../figures/bench-map.js';
import { COARSE, FINE, middles, RANGE, shareOf, type VentGrid } from '../figures/vent-map.js';
import { table } from '../html.js';
import { tied } from '../say.js';
import type { Scrubbed } from './scrub-number.js';

/** Cells that are computed in one task: a few milliseconds of the page's thread. */
const CELLS = 12;
/** After the last change, before the fine map is computed, ms. */
const REST = 500;
/** As in the style sheet: which of the two pictures is seen. */
const telephone = matchMedia('(max-width: 700px)');
/** What computes: fetched when the page is first touched. */
const bench = () => import('../figures/bench-map.js');
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** A slider over the middles of the cells of the map. */
function slider(label: string, count: number, range: readonly [number, number], at: number) {
  const [row, field] = [document.createElement('label'), document.createElement('input')];
  const places = middles(count, range);
  const [first, second] = places as [number, number];
  const step = String(second - first);
  Object.assign(field, { type: 'range', min: String(first), max: String(places.at(-1)), step, value: String(at) });
  row.className = 'map-row';
  row.dataset.words = label;
  field.setAttribute('aria-label', label);
  row.append(field);
  return { row, field };
}

interface Wanted {
  readonly level: number;
  readonly fineness: Fineness;
}

/** The map follows the level in short tasks, coarse while the hand moves; pointer and sliders read one cell. */
class VentMap extends HTMLElement {
  #wanted: Wanted = { level: 0, fineness: FINE };
  #drawn: Wanted = this.#wanted;
  #busy = false;
  #timer = 0;
  #asked = 0;
  #told = false;
  readonly #volume = slider('Air in the box', FINE.columns, RANGE.volume, 35.5);
  readonly #tuning = slider('Tuning', FINE.rows, RANGE.tuning, 24);
  readonly #read = document.createElement('p');

  connectedCallback(): void {
    this.#wanted = this.#drawn = { level: Number(this.dataset.level), fineness: FINE };
    this.#read.className = 'map-reading';
    this.#read.dataset.hint = 'Point at the map, or move the sliders, to read one vent.';
    this.append(this.#read, this.#volume.row, this.#tuning.row);
    for (const { field } of [this.#volume, this.#tuning]) field.addEventListener('input', () => this.#ask());
    this.addEventListener('pointermove', ({ target, clientX, clientY }) => {
      const svg = (target as Element).closest<SVGSVGElement>('svg.vent-map');
      if (svg) this.#point(svg, clientX, clientY);
    });
    const page = this.closest('article');
    page?.addEventListener('scrub-input', (event) => {
      clearTimeout(this.#timer);
      this.#want((event as CustomEvent<Scrubbed>).detail.value, COARSE);
    });
    page?.addEventListener('scrub-change', () => {
      clearTimeout(this.#timer);
      this.#timer = window.setTimeout(() => this.#want(this.#wanted.level, FINE), REST);
    });
  }

  #want(level: number, fineness: Fineness): void {
    this.#wanted = { level, fineness };
    if (!this.#busy) void this.#follow();
  }

  async #follow(): Promise<void> {
    this.#busy = true;
    while (this.#drawn !== this.#wanted) {
      const now = this.#wanted;
      const grid = await this.#compute(now);
      if (grid) await this.#show(now, grid);
    }
    this.#busy = false;
  }

  /** Computes a map in slices. A coarse one is finished even if another level is wanted by then, so that the picture follows the hand. */
  async #compute(now: Wanted): Promise<VentGrid | undefined> {
    const { columns, rows } = now.fineness;
    const step = Math.max(1, Math.floor(CELLS / rows));
    const { columnsOf } = await bench();
    const cells = [];
    for (let from = 0; from < columns; from += step) {
      cells.push(...columnsOf(now.level, now.fineness, from, from + step));
      await pause();
      if (now.fineness === FINE && this.#wanted !== now) return undefined;
    }
    return { columns, rows, cells };
  }

  async #show(now: Wanted, grid: VentGrid): Promise<void> {
    this.#drawn = now;
    const resting = now.fineness === FINE;
    const seen = telephone.matches ? 'narrow' : 'wide';
    const { drawBenchMap, labelOf, numbersOf } = await bench();
    const draw = (place: keyof typeof widths) => {
      const holder = this.querySelector(`.${place}`);
      if (holder) holder.innerHTML = drawBenchMap(now.level, grid, widths[place]);
    };
    draw(seen);
    if (this.#told) this.#ask();
    if (!resting) return;
    await pause();
    draw(seen === 'wide' ? 'narrow' : 'wide');
    await pause();
    const figure = this.closest('.figure');
    const label = figure?.querySelector('[data-map-label]');
    if (label) label.textContent = tied(labelOf(now.level, grid));
    const numbers = figure?.querySelector('[data-map-numbers]');
    const { heads, rows } = numbersOf(now.level);
    if (numbers) numbers.innerHTML = table('Where a quiet vent fits', heads, rows, 'rows').markup;
  }

  /** The volume and tuning under a point of the window. */
  #point(svg: SVGSVGElement, clientX: number, clientY: number): void {
    const box = svg.getBoundingClientRect();
    const scale = box.width / svg.viewBox.baseVal.width;
    const { left, top, width, height } = svg.dataset;
    const across = ((clientX - box.left) / scale - Number(left)) / Number(width);
    const down = ((clientY - box.top) / scale - Number(top)) / Number(height);
    if (across < 0 || across > 1 || down < 0 || down > 1) return;
    const value = (share: number, [low, high]: readonly [number, number]) => String(low + share * (high - low));
    this.#volume.field.value = value(across, RANGE.volume);
    this.#tuning.field.value = value(1 - down, RANGE.tuning);
    this.#ask();
  }

  #ask(): void {
    cancelAnimationFrame(this.#asked);
    this.#asked = requestAnimationFrame(() => void this.#tell());
  }

  /** What the one cell says, and where it stands. */
  async #tell(): Promise<void> {
    this.#told = true;
    const { readingOf } = await bench();
    const [litres, hertz] = [this.#volume.field, this.#tuning.field].map(({ value }) => Number(value)) as [
      number,
      number,
    ];
    const words = tied(readingOf(this.#drawn.level, litres, hertz));
    this.#read.textContent = words;
    for (const { field } of [this.#volume, this.#tuning]) field.setAttribute('aria-valuetext', words);
    for (const svg of this.querySelectorAll<SVGSVGElement>('svg.vent-map')) {
      const [width, height] = [Number(svg.dataset.width), Number(svg.dataset.height)];
      const x = width * shareOf(litres, RANGE.volume);
      const y = height * (1 - shareOf(hertz, RANGE.tuning));
      svg.querySelector('.pointer')?.setAttribute('d', `M0 ${y.toFixed(1)}H${width}M${x.toFixed(1)} 0V${height}`);
    }
  }
}

customElements.define('vent-map', VentMap);
