import type { TubeOption, TubeSet } from 'airspring';
import { axis } from '../figures/axis.js';
import { pathOf } from '../figures/chart.js';
import { html, type Markup, table, trusted } from '../html.js';
import { limitInWords, tied } from '../say.js';
import type { Facts } from './facts.js';
import { proposedTubes } from './proposed.js';

const edge = { left: 8, right: 40, bottom: 40 };
const ROW = 17;
const GAP = 30;
const STRIP = 20;
const MM = 1e3;
const px = (value: number): string => value.toFixed(1);

const COLOURS: Readonly<Record<string, string>> = {
  travel: 'var(--travel)',
  vent: 'var(--speed)',
  heat: 'var(--heat)',
};
const colourOf = (binding: string): string => COLOURS[binding] ?? 'var(--amplifier)';

/** Neighbours of which something is the same, as stretches that meet half-way. */
function stretches(options: readonly TubeOption[], of: (option: TubeOption) => string) {
  const found: { from: number; to: number; first: number; last: number; what: string }[] = [];
  options.forEach((option, i) => {
    const what = of(option);
    const open = found.at(-1);
    const half = i === 0 ? option.length : Math.sqrt(option.length * options[i - 1]!.length);
    if (open?.what === what) [open.to, open.last] = [option.length, option.length];
    else {
      if (open) open.to = half;
      found.push({ from: half, to: option.length, first: option.length, last: option.length, what });
    }
  });
  return found;
}

const standing = ({ fitting, bent }: TubeOption): string =>
  fitting === 'does not fit' ? 'does not fit' : fitting === 'measure' ? 'measure' : bent ? 'fits with a bend' : 'fits';
const FILLS: Readonly<Record<string, string>> = {
  fits: 'var(--length)',
  'fits with a bend': 'var(--length)',
  measure: 'var(--soft)',
  'does not fit': 'var(--heat)',
};

interface Panel {
  readonly title: string;
  readonly unit: string;
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  readonly rule?: { readonly at: number; readonly words: string };
  readonly lines: readonly {
    readonly name?: string;
    readonly colour: string;
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly thin?: boolean;
  }[];
}

function panelsOf({ answer: { asked }, say }: Facts, { options }: TubeSet): Panel[] {
  const x = options.map(({ length }) => length);
  const tuning = options.map(({ account }) => account.fb ?? 0);
  const deep = options.filter(({ account }) => account.reach !== undefined);
  const reach = deep.map(({ account }) => account.reach ?? 0);
  const level = options.map(({ account }) => account.loudest.level);
  const speed = options.map(({ account }) => account.wanted.airSpeed?.value ?? 0);
  const tones = axis([Math.min(...tuning, ...reach, asked.lowest), Math.max(...tuning, ...reach)], 10);
  const levels = axis([Math.min(...level), Math.max(...level, asked.level)], 5);
  // Short tubes are so fast that nothing else could be seen.
  const speeds = axis([0, Math.min(Math.max(...speed, asked.airSpeedPeak), 3 * asked.airSpeedPeak)], 10);
  const binding = stretches(options, ({ account }) => account.loudest.binding);
  return [
    {
      title: 'Tuning and reach',
      unit: 'Hz',
      ...tones,
      rule: { at: asked.lowest, words: `wanted: reach ${say.edge(asked.lowest)} or lower` },
      lines: [
        { name: 'tuning', colour: 'var(--soft)', x, y: tuning, thin: true },
        { name: 'reach', colour: 'var(--level)', x: deep.map(({ length }) => length), y: reach },
      ],
    },
    {
      title: 'Greatest level of a steady tone',
      unit: 'dB',
      ...levels,
      rule: { at: asked.level, words: `wanted: ${say.decibels(asked.level)}` },
      lines: binding.map(({ from, to, what }) => {
        // Each part ends where the next begins.
        const inside = x.flatMap((length, i) => (length >= from && length <= to ? [i] : []));
        const at = [...inside, (inside.at(-1) ?? 0) + 1].filter((i) => i < x.length);
        return { colour: colourOf(what), x: at.map((i) => x[i]!), y: at.map((i) => level[i]!) };
      }),
    },
    {
      title: `Air in the vent at ${say.decibels(asked.level)}`,
      unit: 'm/s',
      ...speeds,
      rule: { at: asked.airSpeedPeak, words: `your limit: ${say.speed(asked.airSpeedPeak)}` },
      lines: [{ colour: 'var(--speed)', x, y: speed }],
    },
  ];
}

interface Scale {
  readonly x: (length: number) => number;
  readonly y: (value: number) => number;
  readonly width: number;
}

/** Where the words of a rule are farthest from every line: at either end, over it or under it. */
function placeOfRule(words: string, at: number, lines: Panel['lines'], { x, y, width }: Scale) {
  const long = words.length * 6.4;
  const free = (from: number, top: number): number =>
    Math.min(
      ...lines.flatMap((line) =>
        line.x.flatMap((length, i) => {
          const across = x(length);
          if (across < from - 8 || across > from + long + 8) return [];
          const down = y(line.y[i]!);
          return [Math.max(top - down, down - top - 14, 0)];
        }),
      ),
      99,
    );
  const places = [true, false].flatMap((left) =>
    [true, false].map((over) => ({
      x: left ? 4 : width - 4,
      y: at + (over ? -5 : 15),
      anchor: left ? 'start' : 'end',
      free: free(left ? 4 : width - 4 - long, at + (over ? -17 : 3)),
    })),
  );
  return places.reduce((best, place) => (place.free > best.free + 1 ? place : best));
}

/** The picture as SVG, `total` pixels wide. */
export function drawTubes(facts: Facts, tubes: TubeSet, total: number): string {
  const { answer, say } = facts;
  const { options } = tubes;
  const width = total - edge.left - edge.right;
  const narrow = total < 500;
  const height = narrow ? 104 : 128;
  const [least, most] = [options[0]!.length, options.at(-1)!.length];
  const x = (length: number) => (width * Math.log(length / least)) / Math.log(most / least);
  const own = answer.now.box.tubes.find(({ diameter }) => Math.abs(diameter - tubes.diameter) < 1e-6);
  const events = [
    ...(own && own.length >= least && own.length <= most
      ? [{ at: own.length, words: `now ${say.length(own.length)}` }]
      : []),
    ...proposedTubes(tubes).map(({ name, option }) => ({
      at: option.length,
      words: `${name} ${say.length(option.length)}`,
    })),
  ];
  const top = ROW * events.length + GAP;
  const panels = panelsOf(facts, tubes);
  const strips = [
    {
      title: narrow ? 'Does it fit?' : 'Does it fit behind the hole?',
      parts: stretches(options, standing),
      fill: (what: string) => FILLS[what] ?? 'var(--soft)',
      words: (what: string) => (what === 'measure' ? 'measure first' : what),
    },
    {
      title: 'What gives out first',
      parts: stretches(options, ({ account }) => account.loudest.binding),
      fill: colourOf,
      words: limitInWords,
    },
  ];
  const stripTop = (i: number) => top + panels.length * (height + GAP) + i * (STRIP + GAP);
  const bottom = stripTop(strips.length) - GAP;
  const tall = bottom + edge.bottom;
  const ticks = [20, 30, 50, 100, 200, 300, 500, 1000].filter(
    (at) => at / MM >= least * 0.999 && at / MM <= most * 1.001,
  );
  const panel = ({ title, unit, domain, ticks: steps, rule, lines }: Panel): Markup => {
    const y = (value: number) => height * (1 - (value - domain[0]) / (domain[1] - domain[0]));
    const told = rule && placeOfRule(tied(rule.words), y(rule.at), lines, { x, y, width });
    return html`<text class="panel-title" y="-8">${tied(title)}, ${unit}</text>
${steps.map((at) => html`<path class="grid" d="M0 ${px(y(at))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(y(at) + 4)}">${at}</text>`)}
${rule && html`<path class="rule" d="M0 ${px(y(rule.at))}H${px(width)}"/>`}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden">${lines.map((line) => html`<path d="${pathOf(line, { width, height, x, y })}" stroke="${line.colour}" stroke-width="${line.thin ? 1.4 : 2.8}"/>`)}</svg>
${rule && told && html`<text class="soft halo" x="${px(told.x)}" y="${px(told.y)}" text-anchor="${told.anchor}">${tied(rule.words)}</text>`}
${lines.map(({ name, colour, x: across, y: up }) => {
  if (name === undefined) return '';
  // Where the names have room: near the short end, over their line.
  const i = Math.floor(up.length * 0.12);
  return html`<text class="halo words" x="${px(x(across[i]!) + 4)}" y="${px(y(up[i]!) - 7)}" fill="${colour}">${name}</text>`;
})}`;
  };
  const label = tied(labelOf(facts, tubes));
  return html`<svg class="plot sweep tubes" role="img" aria-label="${label}" width="${total}" height="${tall}" viewBox="0 0 ${total} ${tall}" xmlns="http://www.w3.org/2000/svg"><g transform="translate(${edge.left} 0)">
${ticks.map((at) => html`<path class="grid" d="M${px(x(at / MM))} ${top}V${bottom}"/><text class="soft" x="${px(x(at / MM))}" y="${bottom + 17}" text-anchor="middle">${at}</text>`)}
<text class="soft" x="${px(width + edge.right - 2)}" y="${bottom + 35}" text-anchor="end">length of the tube, mm</text>
${panels.map((each, i) => html`<g transform="translate(0 ${top + i * (height + GAP)})">${panel(each)}</g>`)}
${strips.map(
  ({ title, parts, fill, words }, i) =>
    html`<g transform="translate(0 ${stripTop(i)})"><text class="panel-title" y="-8">${title}</text>${parts.map(
      ({ from, to, what }) => {
        const [left, right] = [x(from), x(to)];
        const wide = (text: string) => right - left > text.length * 6.2;
        const said = wide(words(what)) ? words(what) : what;
        return html`<rect x="${px(left)}" width="${px(right - left)}" height="${STRIP}" fill="${fill(what)}" fill-opacity="0.16"/><path d="M${px(left)} ${STRIP}H${px(right)}" stroke="${fill(what)}" stroke-width="2"/>${wide(said) && html`<text class="words" x="${px((left + right) / 2)}" y="14" text-anchor="middle" fill="${fill(what)}">${said}</text>`}`;
      },
    )}</g>`,
)}
${events.map(({ at, words }, i) => {
  const [across, down] = [x(at), ROW * (i + 1)];
  const left = across > 0.75 * width;
  return html`<path class="event" d="M${px(across)} ${down - 10}V${bottom}"/><text class="halo ${words.startsWith('now') ? 'words' : 'letter'}" x="${px(across + (left ? -5 : 5))}" y="${down}" text-anchor="${left ? 'end' : 'start'}" fill="var(--ink)">${tied(words)}</text>`;
})}</g></svg>`.markup;
}

/** What the figure shows, in sentences. */
function labelOf({ answer: { asked }, say }: Facts, tubes: TubeSet): string {
  const { options } = tubes;
  const [short, long] = [options[0]!, options.at(-1)!];
  const of = (list: readonly TubeOption[], value: (option: TubeOption) => number) =>
    list.reduce((best, each) => (value(each) > value(best) ? each : best));
  const deepest = of(options, ({ account }) => -(account.reach ?? Number.POSITIVE_INFINITY));
  const loudest = of(options, ({ account }) => account.loudest.level);
  const loud = options.filter(({ account }) => account.loudest.level >= asked.level);
  const calm = options.filter(({ account }) => (account.wanted.airSpeed?.value ?? 0) <= asked.airSpeedPeak);
  const between = (list: readonly TubeOption[]) =>
    list.length === 0
      ? 'at no length'
      : list.at(-1) === long
        ? `from ${say.length(list[0]!.length)} on`
        : `from ${say.length(list[0]!.length)} to ${say.length(list.at(-1)!.length)}`;
  const binding = stretches(options, ({ account }) => account.loudest.binding).map(
    ({ first, last, what }, i, all) =>
      `${limitInWords(what)}${all.length === 1 ? ' at every length' : i === all.length - 1 ? ` from ${say.length(first)} on` : ` up to ${say.length(last)}`}`,
  );
  const fit = stretches(options, standing).map(({ first, last, what }) => {
    const range = `from ${say.length(first)} to ${say.length(last)}`;
    return what === 'measure' ? `${range} you have to measure the free way` : `${range} it ${what}`;
  });
  return [
    `From ${say.length(short.length)} to ${say.length(long.length)} the tuning falls from ${say.hertz(short.account.fb ?? 0)} to ${say.hertz(long.account.fb ?? 0)}.`,
    `The reach is deepest, ${say.hertz(deepest.account.reach ?? 0)}, at ${say.length(deepest.length)}.`,
    `The loudest steady tone is greatest, ${say.decibels(loudest.account.loudest.level)}, at ${say.length(loudest.length)}, and as loud as you want ${between(loud)}.`,
    `The air keeps to your limit ${between(calm)}.`,
    `First to give out is ${binding.join(', and ')}.`,
    `Does it fit: ${fit.join('; ')}.`,
  ].join(' ');
}

const widths = { wide: 648, narrow: 350 } as const;

/** Tuning, reach, level, air speed and limits over the length of the tube, below each other on one axis. */
export function tubeFigure(facts: Facts, tubes: TubeSet): Markup {
  const { say } = facts;
  const rows = tubes.options.map((option) => [
    say.bareLength(option.length),
    (option.account.fb ?? 0).toFixed(1),
    option.account.reach?.toFixed(1) ?? '–',
    option.account.loudest.level.toFixed(1),
    option.account.wanted.airSpeed?.value.toFixed(1) ?? '–',
    option.account.loudest.binding,
    standing(option),
  ]);
  const heads = [`length, ${say.lengthUnit}`, 'tuned, Hz', 'reach, Hz', 'level, dB', 'air, m/s', 'gives out', 'fits'];
  return html`
<div class="figure" id="tube-lengths"><figure>
<div class="wide">${trusted(drawTubes(facts, tubes, widths.wide))}</div>
<div class="narrow">${trusted(drawTubes(facts, tubes, widths.narrow))}</div>
<figcaption><strong>What a tube of each length would do.</strong> ${tied(labelOf(facts, tubes))}</figcaption>
</figure>
<details><summary>The numbers of this figure</summary>${table('What a tube of each length would do', heads, rows)}</details>
</div>`;
}
