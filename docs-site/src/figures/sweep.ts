import { html, type Markup, table, trusted } from '../html.js';
import { frequencyAxis, spread } from './axis.js';
import { pathOf } from './chart.js';

/** A curve of one box; `stretches` colour parts of it. */
interface Line {
  readonly name: string;
  readonly values: readonly number[];
  readonly stretches?: readonly { readonly from: number; readonly to: number; readonly colour: string }[];
}

/** One quantity over frequency: the first line is the box that the page is about, the others are compared with it. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  /** Computed; said to who does not see the picture. */
  readonly label: string;
  readonly note?: string | undefined;
  readonly colour: string;
  readonly unit: string;
  readonly lines: readonly Line[];
  /** Of the vertical axis. */
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  readonly rule?: { readonly at: number; readonly words: string };
  /** A dotted curve over all frequencies, which the note explains. */
  readonly guide?: readonly number[] | undefined;
  /** Words at the bold curve. */
  readonly words?: readonly {
    readonly f: number;
    readonly y: number;
    readonly text: string;
    readonly colour: string;
  }[];
  readonly data: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

/** Panels below each other over one axis of frequency. */
export interface Sweep {
  readonly id: string;
  readonly title: string;
  readonly frequencies: readonly number[];
  readonly panels: readonly Panel[];
  readonly band: readonly [number, number];
  /** What happens where, told at the top of one line through all panels. */
  readonly events: readonly { readonly f: number; readonly words: string }[];
}

const edge = { left: 8, right: 40, bottom: 40 };
const ROW = 17;
const GAP = 30;
const LETTER = 15;
const LETTER_WIDTH = 6.4;
const px = (value: number): string => value.toFixed(1);
const minus = (value: number | string): string => String(value).replace('-', '−');

/** A difference with its sign, as fine as the axis bears. */
const difference = (value: number, { domain: [low, high] }: Panel): string => {
  const digits = high - low >= 20 ? 1 : 2;
  const text = Math.abs(value).toFixed(digits);
  return Number(text) === 0 ? '±0' : `${value < 0 ? '−' : '+'}${text}`;
};

/** Where the lines of a panel stand farthest apart, as a place among the frequencies. */
export function farthestApart(lines: readonly Line[], from: number, to: number): number {
  const gap = (i: number) => {
    const at = lines.map(({ values }) => values[i]!).sort((a, b) => a - b);
    return Math.min(...at.slice(1).map((value, k) => value - at[k]!));
  };
  let best = from;
  for (let i = from; i <= to; i++) if (gap(i) > gap(best)) best = i;
  return best;
}

function drawPanel(
  panel: Panel,
  { frequencies, band }: Sweep,
  x: (f: number) => number,
  width: number,
  height: number,
  ghosts: readonly Line[] = [],
): Markup {
  const { lines, domain, ticks, rule, guide, words = [], colour, unit } = panel;
  const y = (value: number) => height * (1 - (value - domain[0]) / (domain[1] - domain[0]));
  const scale = { width, height, x, y };
  const [bold, ...others] = lines;
  if (!bold) return html``;
  const parts = bold.stretches ?? [{ from: 0, to: Number.POSITIVE_INFINITY, colour }];
  const boldPath = ({ from, to, colour: ink }: (typeof parts)[number]) => {
    const at = frequencies.flatMap((f, k) => (f >= from * (1 - 1e-9) && f <= to * (1 + 1e-9) ? [k] : []));
    const d = pathOf({ x: at.map((k) => frequencies[k]!), y: at.map((k) => bold.values[k]!) }, scale);
    return html`<path data-line="${bold.name}" d="${d}" stroke="${ink}" stroke-width="2.8"/>`;
  };
  // Names stand between the edges of the field, where there is room to their right.
  const long = 20 + LETTER_WIDTH * (6 + Math.max(...lines.map(({ name: each }) => each.length)));
  const inside = frequencies.flatMap((f, i) => (x(f) > 0.05 * width && x(f) < width - long ? [i] : []));
  const at = farthestApart(lines, inside[0] ?? 0, inside.at(-1) ?? 0);
  const across = x(frequencies[at]!);
  const heights = lines.map(({ values }) => Math.min(height, Math.max(0, y(values[at]!))));
  const places = spread(heights, LETTER, 4);
  const name = (line: Line, i: number) => {
    const told = i === 0 ? line.name : `${line.name} ${difference(line.values[at]! - bold.values[at]!, panel)}`;
    const ink = i === 0 ? (bold.stretches?.find(({ to }) => to >= frequencies[at]!)?.colour ?? colour) : 'var(--soft)';
    return html`<circle cx="${px(across)}" cy="${px(heights[i]!)}" r="2.4" fill="${ink}"/><path d="M${px(across)} ${px(heights[i]!)}L${px(across + 12)} ${px(places[i]!)}" stroke="${ink}" stroke-width="0.8"/><text class="halo ${i === 0 ? 'letter' : 'words'}" x="${px(across + 15)}" y="${px(places[i]! + 4)}" fill="${ink}">${told}</text>`;
  };
  // Of words that would cover each other or a name, the first stays.
  const taken = lines.length > 1 ? places.map((down) => ({ from: across, to: across + long, down: down + 4 })) : [];
  const said = words.flatMap(({ f, y: value, ...word }) => {
    const [middle, down] = [x(f), Math.max(12, y(value) - 9)];
    const half = (LETTER_WIDTH * word.text.length) / 2;
    const box = { from: Math.max(middle, half) - half, to: Math.max(middle, half) + half, down };
    if (taken.some((other) => box.from < other.to && other.from < box.to && Math.abs(box.down - other.down) < LETTER))
      return [];
    taken.push(box);
    return [{ ...word, across: Math.max(middle, half), down }];
  });
  return html`<g data-panel="${panel.id}" data-height="${px(height)}" data-low="${domain[0]}" data-high="${domain[1]}" data-unit="${unit}" data-names="${lines.map(({ name: each }) => each).join('|')}">
<rect class="band" x="${px(x(band[0]))}" width="${px(x(band[1]) - x(band[0]))}" height="${px(height)}"/>
<text class="panel-title" y="-8" fill="${colour}">${panel.title}, ${unit}</text><text class="read halo" data-read x="${px(width)}" y="-8" text-anchor="end" fill="${colour}"></text>
${ticks.map((tick) => html`<path class="grid" d="M0 ${px(y(tick))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(y(tick) + 4)}">${minus(tick)}</text>`)}
${rule && html`<path class="rule" d="M0 ${px(y(rule.at))}H${px(width)}"/><text class="soft halo" x="${px(width - 4)}" y="${px(y(rule.at) + (y(rule.at) < 20 ? 15 : -5))}" text-anchor="end">${rule.words}</text>`}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden">${guide && html`<path class="rule" data-guide d="${pathOf({ x: frequencies, y: guide }, scale)}"/>`}${ghosts.map((line) => html`<path class="ghost" d="${pathOf({ x: frequencies, y: line.values }, scale)}" stroke="var(--ghost)" stroke-width="1.4"/>`)}${others.map((line) => html`<path data-line="${line.name}" d="${pathOf({ x: frequencies, y: line.values }, scale)}" stroke="var(--soft)" stroke-width="1"/>`)}${parts.map(boldPath)}</svg>
${said.map(({ text, colour: ink, across: middle, down }) => html`<text class="halo words" x="${px(middle)}" y="${px(down)}" text-anchor="middle" fill="${ink}">${text}</text>`)}
${lines.length > 1 && lines.map(name)}
</g>`;
}

/** The picture as SVG, `total` pixels wide; the curves of `ghosts` lie grey under its own. */
export function drawSweep(sweep: Sweep, total: number, ghosts?: Sweep): string {
  const { frequencies, panels, events, title } = sweep;
  const [first, last] = [frequencies[0]!, frequencies.at(-1)!];
  const width = total - edge.left - edge.right;
  const x = (f: number) => (width * Math.log(f / first)) / Math.log(last / first);
  const [tallest, taller, usual] = total < 500 ? [190, 150, 120] : [270, 200, 150];
  const height = panels.length === 1 ? tallest : panels.length === 2 ? taller : usual;
  const top = ROW * events.length + GAP + 4;
  const bottom = top + panels.length * height + (panels.length - 1) * GAP;
  const tall = bottom + edge.bottom;
  const sorted = [...events].sort((a, b) => a.f - b.f);
  const label = `${title}: ${panels.map((panel) => panel.label).join(' ')}`;
  const { ticks, between } = frequencyAxis(first, last);
  return html`<svg class="plot sweep" role="img" aria-label="${label}" width="${total}" height="${tall}" viewBox="0 0 ${total} ${tall}" data-first="${first}" data-last="${last}" data-left="${edge.left}" data-width="${width}" data-unit="Hz"${total < 500 && html` data-short="true"`} xmlns="http://www.w3.org/2000/svg"><g transform="translate(${edge.left} 0)">
${ticks.map((f) => html`<path class="grid" d="M${px(x(f))} ${top}V${bottom}"/><text class="soft" x="${px(x(f))}" y="${bottom + 17}" text-anchor="middle">${f}</text>`)}
${between.map((f) => html`<path class="grid" d="M${px(x(f))} ${bottom}v5"/>`)}
<text class="soft axis-words" x="${px(width + edge.right - 2)}" y="${bottom + 35}" text-anchor="end">frequency, Hz</text>
${panels.map((panel, i) => html`<g transform="translate(0 ${top + i * (height + GAP)})">${drawPanel(panel, sweep, x, width, height, ghosts?.panels[i]?.lines)}</g>`)}
${sorted.map(({ f, words }, i) => {
  const [at, down] = [x(f), ROW * (i + 1)];
  const left = at > 0.6 * width;
  return html`<path class="event" d="M${px(at)} ${down - 10}V${bottom}"/><text class="halo words" x="${px(at + (left ? -5 : 5))}" y="${down}" text-anchor="${left ? 'end' : 'start'}" fill="var(--ink)">${words}</text>`;
})}
<g class="pointer"><path d="M0 ${top}V${bottom}"/><text class="halo" data-tone y="${bottom + 35}" text-anchor="middle" fill="var(--ink)"></text></g></g></svg>`
    .markup;
}

const widths = { wide: 648, narrow: 350 } as const;

/** The picture at both widths, with what follows the pointer. */
export const sweepPictures = (sweep: Sweep): Markup => html`
<sweep-figure data-what="Tone at which the curves are read">
<div class="wide">${trusted(drawSweep(sweep, widths.wide))}</div>
<div class="narrow">${trusted(drawSweep(sweep, widths.narrow))}</div>
</sweep-figure>`;

export const sweepTables = ({ panels }: Sweep): Markup[] =>
  panels.map(({ title, data }) => table(title, data.heads, data.rows));

/** Curves of boxes, quantity below quantity, with what each shows in a sentence, and the numbers beneath. */
export function sweepMarkup(sweep: Sweep): Markup {
  const { id, panels } = sweep;
  const names = panels[0]?.lines.map(({ name }) => name) ?? [];
  const how =
    names.length > 1
      ? `The bold curve is box ${names[0]}; a thin curve carries its letter and, at its dot, its difference from ${names[0]}.`
      : '';
  return html`
<figure id="${id}" class="sweep">${sweepPictures(sweep)}
<figcaption>${how && html`<p>${how}</p>`}${panels.map(({ title: head, label, note }) => html`<p><strong>${head}.</strong> ${label}${note && html` ${note}`}</p>`)}</figcaption>
</figure>
<details><summary>The numbers of ${panels.length > 1 ? 'these curves' : 'this curve'}</summary>${sweepTables(sweep)}</details>`;
}
