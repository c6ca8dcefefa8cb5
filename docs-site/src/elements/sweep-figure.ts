import { pointsOf } from '../figures/line-path.js';
import { clock } from '../music/clock.js';

/** Curves over one axis, of frequency or of length: a line follows the pointer through all of them, and each says its value there. */
interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A line that changes its colour is drawn in parts, one path each. */
function curveOf(paths: readonly Element[]): Curve {
  const parts = paths.map((path) => pointsOf(path.getAttribute('d') ?? ''));
  return { x: parts.flatMap(({ x }) => x), y: parts.flatMap(({ y }) => y) };
}

/** Straight between the points of a line as it is drawn; they are close together. Not a number where there is no line. */
function heightAt({ x, y }: Curve, at: number): number {
  if (at < x[0]! - 0.5 || at > (x.at(-1) ?? 0) + 0.5) return Number.NaN;
  let [low, high] = [0, x.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  const part = (at - x[low]!) / (x[high]! - x[low]! || 1);
  return y[low]! + part * (y[high]! - y[low]!);
}

const minus = (text: string): string => text.replace('-', '−');

class Picture {
  readonly #svg: SVGSVGElement;
  readonly #pointer: SVGElement;
  readonly #panels: { value: (x: number) => string; read: Element }[];
  readonly width: number;
  readonly left: number;

  constructor(svg: SVGSVGElement) {
    this.#svg = svg;
    this.#pointer = svg.querySelector('.pointer') as SVGElement;
    [this.width, this.left] = [Number(svg.dataset.width), Number(svg.dataset.left)];
    this.#panels = [...svg.querySelectorAll<SVGGElement>('[data-panel]')].map((panel) => {
      const { low, high, height, unit } = panel.dataset;
      const [bottom, top, tall] = [Number(low), Number(high), Number(height)];
      // On a telephone there is room for the first curve alone.
      const names = (panel.dataset.names ?? '').split('|').slice(0, svg.dataset.short ? 1 : undefined);
      const curves = names.map((name) => curveOf([...panel.querySelectorAll(`[data-line="${name}"]`)]));
      const digits = top - bottom >= 20 ? 1 : 2;
      const reading = (curve: Curve, x: number) => {
        const height = heightAt(curve, x);
        return Number.isNaN(height) ? '–' : minus((bottom + (1 - height / tall) * (top - bottom)).toFixed(digits));
      };
      const value = (x: number) =>
        `${curves.map((curve, i) => `${names[i]} ${reading(curve, x)}`.trim()).join(' · ')} ${unit}`;
      return { value, read: panel.querySelector('[data-read]') as Element };
    });
    for (const strip of svg.querySelectorAll<SVGGElement>('[data-strip]')) {
      const parts = [...strip.querySelectorAll<SVGElement>('[data-to]')];
      const value = (x: number) =>
        (parts.find(({ dataset }) => x <= Number(dataset.to)) ?? parts.at(-1))?.dataset.words ?? '';
      this.#panels.push({ value, read: strip.querySelector('[data-read]') as Element });
    }
  }

  /** The place in the field under a point of the window, from 0 to 1. */
  shareAt(clientX: number): number {
    const box = this.#svg.getBoundingClientRect();
    const scale = box.width / this.#svg.viewBox.baseVal.width;
    return Math.min(1, Math.max(0, ((clientX - box.left) / scale - this.left) / this.width));
  }

  /** The value of the axis there, with its unit. */
  toneAt(share: number): string {
    const [first, last] = [Number(this.#svg.dataset.first), Number(this.#svg.dataset.last)];
    // Frequencies and lengths stand by ratio; times, which begin at none, by difference.
    if (first === 0) return clock(share * last);
    return `${(first * (last / first) ** share).toPrecision(3)} ${this.#svg.dataset.unit}`;
  }

  /** Draws the line there; returns what the panels read. */
  point(share: number, tone: string): string {
    const x = share * this.width;
    (this.#pointer.querySelector('[data-tone]') as Element).textContent = tone;
    this.#pointer.setAttribute('transform', `translate(${x.toFixed(1)} 0)`);
    this.#svg.classList.add('pointed');
    const words = this.#panels.map(({ value }) => value(x));
    this.#panels.forEach(({ read }, i) => {
      read.textContent = words[i] as string;
    });
    return words.join('; ');
  }
}

class SweepFigure extends HTMLElement {
  connectedCallback(): void {
    const pictures = new Map<Element, Picture>();
    const picture = (svg: SVGSVGElement): Picture => {
      const known = pictures.get(svg) ?? new Picture(svg);
      pictures.set(svg, known);
      return known;
    };
    const seen = () =>
      [...this.querySelectorAll<SVGSVGElement>('svg.sweep')].find((svg) => svg.getClientRects().length > 0);
    const slider = document.createElement('input');
    Object.assign(slider, { type: 'range', min: '0', max: '1', step: '0.002', value: '0.3' });
    slider.setAttribute('aria-label', this.dataset.what ?? '');
    let asked = 0;
    let last: number | undefined;
    const point = (share: number) => {
      last = share;
      cancelAnimationFrame(asked);
      asked = requestAnimationFrame(() => {
        const svg = seen();
        if (!svg) return;
        const now = picture(svg);
        const tone = now.toneAt(share);
        slider.value = String(share);
        slider.setAttribute('aria-valuetext', `${tone}: ${now.point(share, tone)}`);
      });
    };
    const row = document.createElement('div');
    row.className = 'sweep-row';
    row.append(slider);
    this.append(row);
    // A new picture is read at the place where the last one was.
    this.addEventListener('redrawn', () => last !== undefined && point(last));
    slider.addEventListener('input', () => point(Number(slider.value)));
    this.addEventListener('pointermove', ({ target, clientX }) => {
      const svg = (target as Element).closest<SVGSVGElement>('svg.sweep');
      if (svg) point(picture(svg).shareAt(clientX));
    });
  }
}

customElements.define('sweep-figure', SweepFigure);
