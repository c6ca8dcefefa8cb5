import * as Plot from '@observablehq/plot';
import { documentOf } from '../document.js';
import { spread } from './axis.js';

/** One line of a figure; `stretches` colour parts of it. */
export interface Line {
  readonly name: string;
  readonly values: readonly number[];
  readonly stretches?: readonly { readonly from: number; readonly to: number; readonly colour: string }[];
}

export interface Frame {
  readonly label: string;
  readonly colour: string;
  readonly unit: string;
  readonly frequencies: readonly number[];
  readonly lines: readonly Line[];
  /** Of the vertical axis. */
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Frequencies that the brief speaks of. */
  readonly band: readonly [number, number];
  /** A level line with its words. */
  readonly rule?: { readonly at: number; readonly words: string; readonly under?: boolean };
  /** Words beside the curve. */
  readonly words?: readonly {
    readonly f: number;
    readonly y: number;
    readonly text: string;
    readonly colour: string;
    readonly before: boolean;
  }[];
}

const dashes = ['none', '9 4', '2 3', '9 3 2 3', '4 3', '14 4'];
const margin = { top: 26, right: 40, bottom: 40, left: 34 };
const LETTER = 15;

/** Curves over a logarithmic frequency axis, each named at its low end, where curves of boxes differ most. */
export function drawFrame(frame: Frame, width: number): string {
  const { frequencies, lines, domain, band, rule, words = [] } = frame;
  const height = Math.round(width * (width < 500 ? 0.8 : 0.56));
  const [first, last] = [frequencies[0] as number, frequencies.at(-1) as number];
  const inner = { width: width - margin.left - margin.right, height: height - margin.top - margin.bottom };
  const perPixel = (domain[1] - domain[0]) / inner.height;
  const leftBy = (pixels: number) => first * (last / first) ** (-pixels / inner.width);
  const starts = lines.map(({ values }) => Math.min(domain[1], Math.max(domain[0], values[0] as number)));
  const letters = spread(starts, LETTER * perPixel, domain[0] + 4 * perPixel);

  const curves = lines.flatMap(({ values, stretches }, i) => {
    const style = { strokeWidth: i === 0 ? 2.6 : 1.6, strokeDasharray: dashes[i % dashes.length] as string };
    const parts = stretches ?? [{ from: first, to: last, colour: frame.colour }];
    return parts.map(({ from, to, colour }) => {
      const at = frequencies.flatMap((f, k) => (f >= from * (1 - 1e-9) && f <= to * (1 + 1e-9) ? [k] : []));
      const point = { x: (k: number) => frequencies[k] as number, y: (k: number) => values[k] as number };
      return Plot.line(at, { ...point, stroke: colour, ...style, strokeLinejoin: 'round', clip: true });
    });
  });
  const ticks = [10, 20, 30, 50, 100, 200, 500].filter((f) => f >= first * 0.999 && f <= last * 1.001);
  const named = lines.map(({ name, stretches }, i) => ({
    name,
    start: starts[i] as number,
    letter: letters[i] as number,
    colour: stretches?.[0]?.colour ?? frame.colour,
  }));

  const document = documentOf('<!doctype html><html><body></body></html>');
  const svg = Plot.plot({
    document,
    width,
    height,
    marginTop: margin.top,
    marginRight: margin.right,
    marginBottom: margin.bottom,
    marginLeft: margin.left,
    className: 'plot',
    style: { background: 'transparent', fontSize: '13px', fontFamily: 'inherit' },
    x: { type: 'log', domain: [first, last] },
    y: { domain: [...domain] },
    marks: [
      Plot.rect([0], { x1: band[0], x2: band[1], y1: domain[0], y2: domain[1], fill: 'var(--band)' }),
      Plot.text([0], {
        x: Math.sqrt(band[0] * band[1]),
        y: domain[1],
        dy: -12,
        text: () => `${band[0]} to ${band[1]} Hz: the brief`,
        fill: 'var(--soft)',
      }),
      Plot.gridX(ticks, { stroke: 'var(--rule)', strokeOpacity: 1 }),
      Plot.gridY([...frame.ticks], { stroke: 'var(--rule)', strokeOpacity: 1 }),
      // Not an axis mark: that one drops labels of a logarithmic scale as it sees fit.
      Plot.text(ticks, { x: (f: number) => f, frameAnchor: 'bottom', dy: 14, text: String, fill: 'var(--soft)' }),
      Plot.text([0], {
        frameAnchor: 'bottom-right',
        dx: margin.right,
        dy: 33,
        text: () => 'frequency, Hz',
        fill: 'var(--soft)',
      }),
      Plot.axisX([], { label: null }),
      Plot.axisY([...frame.ticks], {
        anchor: 'right',
        label: null,
        tickSize: 0,
        tickFormat: (y: number) => String(y).replace('-', '−'),
        fill: 'var(--soft)',
      }),
      Plot.text([0], {
        frameAnchor: 'top-right',
        dx: 6,
        dy: -19,
        textAnchor: 'start',
        text: () => frame.unit,
        fill: 'var(--soft)',
      }),
      ...(rule
        ? [
            Plot.ruleY([rule.at], { stroke: 'var(--soft)', strokeWidth: 1.2, strokeDasharray: '1 3' }),
            Plot.text([rule.at], {
              x: last,
              y: (y: number) => y,
              dx: -4,
              dy: rule.under ? 10 : -9,
              textAnchor: 'end',
              text: () => rule.words,
              fill: 'var(--soft)',
              stroke: 'var(--paper)',
              strokeWidth: 4,
            }),
          ]
        : []),
      ...curves,
      Plot.link(named, {
        x1: () => first,
        x2: () => leftBy(9),
        y1: 'start',
        y2: 'letter',
        stroke: 'colour',
        strokeWidth: 1,
      }),
      Plot.text(named, {
        x: () => leftBy(13),
        y: 'letter',
        text: 'name',
        textAnchor: 'end',
        fill: 'colour',
        fontWeight: 'bold',
        fontSize: 14,
      }),
      ...words.map(({ f, y, text, colour, before }) =>
        Plot.text([0], {
          x: f,
          y,
          text: () => text,
          textAnchor: before ? 'end' : 'middle',
          dx: before ? -8 : 0,
          dy: -9,
          fill: colour,
          stroke: 'var(--paper)',
          strokeWidth: 4,
          fontStyle: 'italic',
        }),
      ),
    ],
    // Colours are names of the style sheet, so that one picture follows light, dark and print.
    color: { type: 'identity' },
  });
  for (const group of svg.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  for (const style of svg.querySelectorAll('style')) style.remove();
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', frame.label);
  return svg.outerHTML;
}
