import { html, type Markup } from '../html.js';
import { linePath } from './line-path.js';

export interface Axis {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Lines without a number, between those that have one. */
  readonly between?: readonly number[];
  readonly log?: boolean;
  /** Said at the end of the axis: 'frequency, Hz'. */
  readonly words: string;
}

/** One line, in the units of its axes. */
export interface Trace {
  /** Unique in its chart. */
  readonly name: string;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly colour: string;
  readonly dash?: string;
  readonly thick?: boolean;
  /** The line goes round an area, which is tinted. */
  readonly area?: boolean;
  /** Said at the right end of the line. */
  readonly words?: string;
}

/** Words at a point, with a dot or without. */
export interface Mark {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly colour: string;
  readonly dot?: boolean;
  readonly side?: 'left' | 'right' | 'middle';
  readonly under?: boolean;
}

/** A picture as data: axes, lines, words. Draws the same in a build, a worker and a page. */
export interface Chart {
  /** What it shows, in one computed sentence. */
  readonly label: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly traces: readonly Trace[];
  readonly marks?: readonly Mark[];
  readonly band?: { readonly from: number; readonly to: number; readonly words: string };
  readonly rules?: readonly { readonly at: number; readonly words: string; readonly under?: boolean }[];
}

const margin = { top: 26, right: 40, bottom: 40, left: 34 };

export interface Scales {
  readonly width: number;
  readonly height: number;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

const heightOf = (width: number): number => Math.round(width * (width < 500 ? 0.8 : 0.56));

/** From the units of the axes to pixels of the field between them. */
export function scales({ x, y }: Pick<Chart, 'x' | 'y'>, total: number): Scales {
  const [width, height] = [total - margin.left - margin.right, heightOf(total) - margin.top - margin.bottom];
  const part = ({ domain: [low, high], log }: Axis) =>
    log
      ? (value: number) => Math.log(value / low) / Math.log(high / low)
      : (value: number) => (value - low) / (high - low);
  const [across, up] = [part(x), part(y)];
  return { width, height, x: (value) => width * across(value), y: (value) => height * (1 - up(value)) };
}

/** The `d` of a line. A point far outside is held near the field: the picture cuts it off there anyway. */
export const pathOf = ({ x, y }: Pick<Trace, 'x' | 'y'>, scale: Scales): string =>
  linePath(
    Array.from(x, scale.x),
    Array.from(y, (value) => Math.max(-9999, Math.min(9999, scale.y(value)))),
  );

const px = (value: number): string => value.toFixed(1);
const minus = (value: number): string => String(value).replace('-', '−');

export const markAt = ({ x, y }: Pick<Mark, 'x' | 'y'>, scale: Scales): string =>
  `translate(${px(scale.x(x))} ${px(Math.max(-999, Math.min(9999, scale.y(y))))})`;

function markMarkup(mark: Mark, scale: Scales): Markup {
  const { side = 'middle', colour, dot, name, words, under } = mark;
  const anchor = { left: 'end', right: 'start', middle: 'middle' }[side];
  const dx = { left: -9, right: 9, middle: 0 }[side];
  return html`<g data-mark="${name}" transform="${markAt(mark, scale)}">${dot && html`<circle r="5" fill="${colour}"/>`}<text class="halo words" x="${dx}" y="${under ? 17 : -9}" text-anchor="${anchor}" fill="${colour}">${words}</text></g>`;
}

/** The picture as SVG, `total` pixels wide; `ghosts` lie grey under the lines. */
export function drawChart(chart: Chart, total: number, ghosts: readonly Trace[] = []): string {
  const { x, y, traces, band, rules = [], marks = [] } = chart;
  const scale = scales(chart, total);
  const { width, height } = scale;
  const line = ({ name, colour, dash = 'none', thick, area, ...points }: Trace, ghost: boolean) => {
    const d = pathOf(points, scale);
    if (area) return !ghost && html`<path class="area" data-trace="${name}" d="${d}" color="${colour}"/>`;
    return html`<path ${ghost ? html`class="ghost"` : html`data-trace="${name}"`} d="${d}" stroke="${ghost ? 'var(--ghost)' : colour}" stroke-width="${thick ? 2.6 : 1.6}" stroke-dasharray="${dash}"/>`;
  };
  const ended = traces.flatMap((trace) => {
    const last = (trace.y.length ?? 0) - 1;
    return trace.words === undefined ? [] : [{ trace, at: scale.y(trace.y[last]!) }];
  });
  return html`<svg class="plot" role="img" aria-label="${chart.label}" width="${total}" height="${heightOf(total)}" viewBox="0 0 ${total} ${heightOf(total)}" xmlns="http://www.w3.org/2000/svg"><g transform="translate(${margin.left} ${margin.top})">
${band && html`<rect class="band" x="${px(scale.x(band.from))}" width="${px(scale.x(band.to) - scale.x(band.from))}" height="${px(height)}"/><text class="soft" x="${px((scale.x(band.from) + scale.x(band.to)) / 2)}" y="-8" text-anchor="middle">${band.words}</text>`}
${(x.between ?? []).map((at) => html`<path class="grid between" d="M${px(scale.x(at))} 0V${px(height)}"/>`)}
${x.ticks.map((at) => html`<path class="grid" d="M${px(scale.x(at))} 0V${px(height)}"/><text class="soft" x="${px(scale.x(at))}" y="${px(height + 17)}" text-anchor="middle">${minus(at)}</text>`)}
${y.ticks.map((at) => html`<path class="grid" d="M0 ${px(scale.y(at))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(scale.y(at) + 4)}">${minus(at)}</text>`)}
<text class="soft" x="${px(width + margin.right - 2)}" y="${px(height + 36)}" text-anchor="end">${x.words}</text>
<text class="soft" x="${px(width + 6)}" y="-14">${y.words}</text>
${rules.map(({ at, words, under }) => html`<path class="rule" d="M0 ${px(scale.y(at))}H${px(width)}"/><text class="soft halo" x="${px(width - 4)}" y="${px(scale.y(at) + (under ? 15 : -6))}" text-anchor="end">${words}</text>`)}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden">${ghosts.map((trace) => line(trace, true))}${traces.map((trace) => line(trace, false))}</svg>
${ended.map(({ trace, at }) => html`<text class="halo words" data-end="${trace.name}" x="${px(width - 4)}" y="${px(at - 8)}" text-anchor="end" fill="${trace.colour}">${trace.words}</text>`)}
${marks.map((mark) => markMarkup(mark, scale))}</g></svg>`.markup;
}
