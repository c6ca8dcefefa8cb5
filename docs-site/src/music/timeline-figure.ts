import { axisOf } from '../figures/axis.js';
import { linePath } from '../figures/line-path.js';
import { html, type Markup } from '../html.js';
import { type BoxAccount, type Verdict, verdicts } from './account.js';
import { clock } from './clock.js';
import type { Heard, HeardBox } from './heard.js';
import { noteName, semitoneOf } from './notes.js';

/** A quantity over time, with a line for each box that has it: A is bold, B is thin. */
interface Panel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly colour: string;
  readonly lines: readonly { readonly name: string; readonly values: ArrayLike<number> }[];
  /** Greatest that a limit allows. */
  readonly rules: readonly { readonly at: number; readonly words: string }[];
  /** Of the bold line, where its colour says more. */
  readonly verdicts?: readonly Verdict[];
}

const edge = { left: 8, right: 40, bottom: 40, top: 26 };
const GAP = 30;
const STRIP = 16;
/** Points of a line at most: fewer than there are pixels. */
const COLUMNS = 240;
const px = (value: number): string => value.toFixed(1);

/** How loud a verdict is drawn: its height and its colour. */
const LOOKS: Readonly<Record<Verdict, { readonly tall: number; readonly colour: string; readonly words: string }>> = {
  quiet: { tall: 2, colour: 'var(--speed)', words: 'quiet' },
  doubtful: { tall: 8, colour: 'var(--impedance)', words: 'may be heard' },
  noisy: { tall: STRIP, colour: 'var(--heat)', words: 'noisy' },
};

/** The greatest of each column, where there are more slices than columns. */
function columnsOf(values: ArrayLike<number>): Float64Array {
  const count = Math.min(COLUMNS, values.length);
  const out = new Float64Array(count);
  for (let i = 0; i < values.length; i++) {
    const column = Math.floor((i * count) / values.length);
    out[column] = Math.max(out[column]!, values[i]!);
  }
  return out;
}

const RANK: readonly Verdict[] = ['quiet', 'doubtful', 'noisy'];
const worstOf = (each: readonly Verdict[]): readonly Verdict[] =>
  Array.from(columnsOf(each.map((verdict) => RANK.indexOf(verdict))), (rank) => RANK[rank]!);

/** Stretches of one verdict among columns, from the first on: each ends where the next begins. */
function stretchesOf(each: readonly Verdict[]) {
  const out: { from: number; to: number; verdict: Verdict }[] = [];
  each.forEach((verdict, i) => {
    const last = out.at(-1);
    if (last?.verdict === verdict) last.to = i + 1;
    else out.push({ from: i, to: i + 1, verdict });
  });
  return out;
}

const scaled = (values: ArrayLike<number>, by: number): Float64Array =>
  Float64Array.from(values, (value) => by * value);

/** What is drawn below the strips. */
function panelsOf({ boxes }: Heard, accounts: readonly BoxAccount[], drive: number): readonly Panel[] {
  const lines = (of: (box: HeardBox, i: number) => ArrayLike<number> | undefined) =>
    boxes.flatMap((box, i) => {
      const values = of(box, i);
      return values ? [{ name: 'AB'[i]!, values }] : [];
    });
  const peak = (name: string, unit: number) => lines((box) => box.peak[name] && scaled(box.peak[name], drive * unit));
  const rules = (name: string, unit: number, words: string) => {
    const all = boxes.flatMap(({ limits }, i) => {
      const { greatestRms } = limits.find((limit) => limit.name === name) ?? {};
      return greatestRms === undefined
        ? []
        : [{ at: Math.SQRT2 * unit * greatestRms, words: `${words} of ${'AB'[i]}` }];
    });
    const same = all.length === 2 && Math.abs(all[0]!.at / all[1]!.at - 1) < 1e-9;
    return same ? [{ at: all[0]!.at, words }] : all;
  };
  const first = boxes[0] && verdicts(boxes[0], drive);
  const all: readonly Panel[] = [
    {
      id: 'air',
      title: 'Air in the vent',
      unit: 'm/s',
      colour: 'var(--speed)',
      lines: peak('ventAirSpeed', 1),
      rules: [],
      ...(first && { verdicts: first }),
    },
    {
      id: 'travel',
      title: 'Cone travel',
      unit: 'mm',
      colour: 'var(--travel)',
      lines: peak('displacement', 1000),
      rules: rules('travel', 1000, 'Xmax'),
    },
    {
      id: 'voltage',
      title: 'Voltage',
      unit: 'V',
      colour: 'var(--amplifier)',
      lines: peak('voltage', 1),
      rules: rules('amplifier voltage', 1, 'amplifier'),
    },
    {
      id: 'warmth',
      title: 'Coil above the air',
      unit: 'K',
      colour: 'var(--heat)',
      lines: lines((_, i) => accounts[i]?.rise),
      rules: [],
    },
  ];
  return all.filter((panel) => panel.lines.length > 0);
}

function drawPanel(
  { id, title, unit, colour, lines, rules, verdicts: each }: Panel,
  width: number,
  height: number,
): Markup {
  const columns = lines.map(({ values }) => columnsOf(values));
  const most = Math.max(...columns.map((column) => Math.max(...column)), 1e-9);
  const near = rules.filter(({ at }) => at < 2.5 * most);
  const { domain, ticks } = axisOf(0, Math.max(most, ...near.map(({ at }) => at)), '');
  const high = domain[1];
  const x = (column: number, count: number) => (width * (column + 0.5)) / count;
  const y = (value: number) => height * (1 - value / high);
  const path = (column: Float64Array, from = 0, to = column.length - 1) => {
    const at = Array.from({ length: to - from + 1 }, (_, i) => from + i);
    return linePath(
      at.map((i) => x(i, column.length)),
      at.map((i) => y(column[i]!)),
    );
  };
  const [bold, thin] = columns as [Float64Array, Float64Array | undefined];
  const isFirst = lines[0]?.name === 'A';
  const stretches = isFirst && each ? stretchesOf(worstOf(each)) : [];
  // One path for each colour, over the whole line: a picture of many elements is slow to follow a hand.
  const over = (['doubtful', 'noisy'] as const).flatMap((verdict) => {
    const parts = stretches.filter((one) => one.verdict === verdict);
    if (parts.length === 0) return [];
    const d = parts.map(({ from, to }) => path(bold, from, Math.min(to, bold.length - 1))).join('');
    return [html`<path d="${d}" stroke="${LOOKS[verdict].colour}" stroke-width="1.8"/>`];
  });
  const shown = ticks.filter((_, i) => ticks.length <= 5 || i % 2 === 0);
  // What lies above the limit of A is drawn once more, in the colour of what is too much.
  const above = isFirst && near.find(({ at, words }) => at < Math.max(...bold) && !words.endsWith('of B'));
  const area = `${path(bold)}V${px(height)}H${px(x(0, bold.length))}Z`;
  return html`<g data-panel="${id}" data-height="${px(height)}" data-low="0" data-high="${high}" data-unit="${unit}" data-names="${lines.map(({ name }) => name).join('|')}">
<rect class="band" width="${px(width)}" height="${px(height)}"/>
<text class="panel-title" y="-8" fill="${colour}">${title}, ${unit}</text><text class="read halo" data-read x="${px(width)}" y="-8" text-anchor="end" fill="${colour}"></text>
${shown.map((tick) => html`<path class="grid" d="M0 ${px(y(tick))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(y(tick) + 4)}">${tick}</text>`)}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden"><path class="area" d="${area}" color="${colour}"/><path data-line="${lines[0]?.name ?? ''}" d="${path(bold)}" stroke="${colour}" stroke-width="1.8"/>${over}${above && html`<svg width="${px(width)}" height="${px(y(above.at))}" overflow="hidden"><path d="${path(bold)}" stroke="var(--heat)" stroke-width="2.4"/></svg>`}${thin && html`<path data-line="${lines[1]?.name ?? ''}" d="${path(thin)}" stroke="var(--ink)" stroke-width="0.9"/>`}</svg>
${near.map(({ at, words }) => html`<path class="rule" d="M0 ${px(y(at))}H${px(width)}"/><text class="soft halo" x="${px(width - 4)}" y="${px(y(at) + (y(at) < 20 ? 15 : -5))}" text-anchor="end">${words}</text>`)}
</g>`;
}

/** Whether a vent may be heard, over time: the taller, the noisier. */
function drawStrip(name: string, { short, noise }: BoxAccount, each: readonly Verdict[] = [], width: number): Markup {
  const columns = worstOf(each);
  const x = (column: number) => (width * column) / columns.length;
  const title = `${name}: ${short}${noise ? '' : ', no vent to be heard'}`;
  const bar = ({ from, to, verdict }: ReturnType<typeof stretchesOf>[number]) => {
    const { tall, colour, words } = LOOKS[verdict];
    return html`<rect data-to="${px(x(to))}" data-words="${words}" x="${px(x(from))}" y="${STRIP - tall}" width="${px(Math.max(0.4, x(to) - x(from)))}" height="${tall}" fill="${colour}"/>`;
  };
  return html`<g data-strip><text class="panel-title" y="-7" fill="var(--ink)">${title}</text><text class="read halo" data-read x="${px(width)}" y="-7" text-anchor="end" fill="var(--ink)"></text>${stretchesOf(columns).map(bar)}<path class="grid" d="M0 ${STRIP + 0.5}H${px(width)}"/></g>`;
}

/** Marks of the time: at most seven, or four on a telephone. */
function timesOf(duration: number, most: number): readonly number[] {
  const step =
    [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600].find((each) => duration / each <= most) ??
    600 * Math.ceil(duration / 600 / most);
  return Array.from({ length: Math.floor(duration / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** The picture as SVG, `total` pixels wide. */
export function drawTimeline(
  heard: Heard,
  accounts: readonly BoxAccount[],
  drive: number,
  total: number,
  label: string,
): string {
  const { duration } = heard;
  const width = total - edge.left - edge.right;
  const height = total < 500 ? 96 : 112;
  const panels = panelsOf(heard, accounts, drive);
  const noise = accounts[0]?.noise;
  const marked =
    noise && noise.worst > 0 && noise.quiet.mostUsed > 1 ? noise.quiet.mostAt + heard.slice / 2 : undefined;
  const stripTop = (i: number) => edge.top + (marked === undefined ? 0 : 12) + i * (STRIP + 26);
  const top = stripTop(accounts.length) + 10;
  const panelTop = (i: number) => top + i * (height + GAP);
  const bottom = panelTop(panels.length) - GAP;
  const tall = bottom + edge.bottom;
  const x = (seconds: number) => (width * seconds) / duration;
  const times = timesOf(duration, total < 500 ? 4 : 7);
  const fine = times.every((time) => Number.isInteger(time)) ? 0 : 1;
  const event =
    marked !== undefined && noise
      ? {
          at: x(marked),
          words: `${noise.noisy.times > 0 ? 'A is noisiest' : 'A is nearest to noise'}: ${noteName(semitoneOf(noise.worst))}, ${noise.worst.toFixed(1)} Hz`,
        }
      : undefined;
  const left = event !== undefined && event.at > 0.6 * width;
  return html`<svg class="plot sweep" role="img" aria-label="${label}" width="${total}" height="${tall}" viewBox="0 0 ${total} ${tall}" data-first="0" data-last="${duration}" data-left="${edge.left}" data-width="${width}" data-unit="s"${total < 500 && html` data-short="true"`} xmlns="http://www.w3.org/2000/svg"><g transform="translate(${edge.left} 0)">
${times.map((time) => html`<path class="grid" d="M${px(x(time))} ${top}V${bottom}"/><text class="soft" x="${px(x(time))}" y="${bottom + 17}" text-anchor="middle">${clock(time, fine)}</text>`)}
<text class="soft axis-words" x="${px(width + edge.right - 2)}" y="${bottom + 35}" text-anchor="end">time, min:s</text>
${accounts.map((account, i) => html`<g transform="translate(0 ${stripTop(i)})">${drawStrip('AB'[i]!, account, heard.boxes[i] && verdicts(heard.boxes[i], drive), width)}</g>`)}
${panels.map((panel, i) => html`<g transform="translate(0 ${panelTop(i)})">${drawPanel(panel, width, height)}</g>`)}
${event && html`<path class="event" d="M${px(event.at)} 4V${bottom}"/><text class="halo words" x="${px(event.at + (left ? -5 : 5))}" y="12" text-anchor="${left ? 'end' : 'start'}" fill="var(--ink)">${event.words}</text>`}
<g class="pointer"><path d="M0 ${edge.top}V${bottom}"/><text class="halo" data-tone y="${bottom + 35}" text-anchor="middle" fill="var(--ink)"></text></g></g></svg>`
    .markup;
}
