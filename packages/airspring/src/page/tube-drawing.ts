import type { MarkedSet } from '../standing/marked-tubes.js';
import type { TubeSet } from '../standing/tubes.js';
import { limitInWords } from '../words/limit-words.js';
import { tied } from '../words/tied.js';
import { axis } from './axis.js';
import { colourOf } from './limit-colours.js';
import { linePath } from './line-path.js';
import { escaped } from './markup.js';
import { labelOf, standing, stretches, type TubeFacts } from './tube-words.js';

const edge = { left: 8, right: 40, bottom: 40 };
const ROW = 17;
const GAP = 30;
const STRIP = 20;
const MM = 1e3;
const px = (value: number): string => value.toFixed(1);

/** The `d` of a line. A point far outside is held near the field: the picture cuts it off there anyway. */
const pathOf = (
  { x, y }: { readonly x: readonly number[]; readonly y: readonly number[] },
  scale: { readonly x: (value: number) => number; readonly y: (value: number) => number },
): string =>
  linePath(
    x.map(scale.x),
    y.map((value) => Math.max(-9999, Math.min(9999, scale.y(value)))),
  );

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

function panelsOf({ answer: { asked }, say }: TubeFacts, { options }: TubeSet): Panel[] {
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
  const heard = options.flatMap(({ length, account: { noise } }) => (noise ? [{ length, noise }] : []));
  const [quiet, noisy] = [heard.map(({ noise }) => noise.quiet.level), heard.map(({ noise }) => noise.noisy.level)];
  const onsets = axis([Math.min(...quiet, asked.level), Math.max(...noisy, asked.level)], 10);
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
      rule: { at: asked.airSpeedPeak, words: `your limit: ${say.speed(asked.airSpeedPeak)} peak` },
      lines: [{ colour: 'var(--speed)', x, y: speed }],
    },
    {
      title: 'Onsets of noise in the vent',
      unit: 'dB',
      ...onsets,
      rule: { at: asked.level, words: `wanted: ${say.decibels(asked.level)}` },
      lines: [
        { name: 'noisy above', colour: 'var(--soft)', x: heard.map(({ length }) => length), y: noisy, thin: true },
        { name: 'quiet up to', colour: 'var(--speed)', x: heard.map(({ length }) => length), y: quiet },
      ],
    },
  ];
}

interface Scale {
  readonly x: (length: number) => number;
  readonly y: (value: number) => number;
  readonly width: number;
}

/** A box that words or lines take, pixels. */
type Taken = readonly [left: number, top: number, right: number, bottom: number];
const LETTER = 6.4;
/** A name over a line that is nearer to the top of its panel than this would stand in the title. */
const ROOM_ABOVE = 24;

/** Where the words of a rule are farthest from all that is there: at either end, over it or under it. */
function placeOfRule(words: string, at: number, taken: readonly Taken[], width: number) {
  const long = words.length * LETTER;
  const free = (from: number, top: number): number =>
    Math.min(
      99,
      ...taken.map(([left, high, right, low]) =>
        Math.max(from - right, left - from - long, top - low, high - top - 14, 0),
      ),
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

/** The names of lines, each where they stand farthest apart and from a rule: over the upper one, under the lower one. */
function namesOf(lines: Panel['lines'], { x, y, width }: Scale, rule: number | undefined) {
  const named = lines.filter(({ name }) => name !== undefined);
  const [first, ...others] = named;
  if (!first) return [];
  const at = (line: Panel['lines'][number], length: number) => line.y[line.x.indexOf(length)];
  const gap = (length: number) => {
    const heights = named.map((line) => y(at(line, length) ?? Infinity));
    const [top, bottom] = [Math.min(...heights), Math.max(...heights)];
    const fromRule =
      rule === undefined ? 1e9 : Math.min(...[top - 14, bottom + 14].map((down) => Math.abs(down - rule)));
    return Math.min(...heights.slice(1).map((height) => Math.abs(height - heights[0]!)), fromRule, 1e9);
  };
  const inside = first.x.filter(
    (length) => x(length) > 4 && x(length) < 0.82 * width && others.every((line) => at(line, length) !== undefined),
  );
  const there = inside.reduce((best, each) => (gap(each) > gap(best) ? each : best), inside[0] ?? first.x[0]!);
  const heights = named.map((line) => y(at(line, there) ?? 0));
  const from = x(there) + 4;
  return named.map((line, i) => {
    const { name = '', colour } = line;
    // All of the line that its name stands over or under.
    const along = line.x.flatMap((length, k) =>
      x(length) >= from - 4 && x(length) <= from + name.length * LETTER + 4 ? [y(line.y[k]!)] : [],
    );
    const highest = Math.min(heights[i]!, ...along);
    const isOver = heights.every((other) => heights[i]! <= other) && highest > ROOM_ABOVE;
    return { name, colour, x: from, y: isOver ? highest - 8 : Math.max(heights[i]!, ...along) + 16 };
  });
}

/** Tuning, reach, level, air speed, onsets of noise and limits over the length of the tube, as SVG `total` pixels wide. */
export function drawTubes(
  facts: TubeFacts,
  { tubes, proposed }: Pick<MarkedSet, 'tubes' | 'proposed'>,
  total: number,
): string {
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
    ...proposed.map(({ mark, option }) => ({
      at: option.length,
      words: `${mark}, ${say.length(option.length)}`,
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
  const panel = ({ title, unit, domain, ticks: steps, rule, lines }: Panel): string => {
    const y = (value: number) => height * (1 - (value - domain[0]) / (domain[1] - domain[0]));
    const names = namesOf(lines, { x, y, width }, rule && y(rule.at));
    const taken: Taken[] = [
      ...lines.flatMap((line) =>
        line.x.map((length, i): Taken => [x(length), y(line.y[i]!), x(length), y(line.y[i]!)]),
      ),
      ...names.map((name): Taken => [name.x, name.y - 12, name.x + name.name.length * LETTER, name.y + 3]),
    ];
    const words = rule && tied(narrow ? rule.words.replace(/^(.*?): reach (.*?) or lower$/, '$1: $2') : rule.words);
    const told = rule && placeOfRule(words ?? '', y(rule.at), taken, width);
    const wholes = [...new Set(lines.map(({ name = '' }) => name))];
    const grid = steps.map(
      (at) =>
        `<path class="grid" d="M0 ${px(y(at))}H${px(width)}"/><text class="soft" x="${px(width + 6)}" y="${px(y(at) + 4)}">${at}</text>`,
    );
    const curves = lines.map(
      (line) =>
        `<path data-line="${line.name ?? ''}" d="${pathOf(line, { x, y })}" stroke="${line.colour}" stroke-width="${line.thin ? 1.4 : 2.8}"/>`,
    );
    const named = names.map(
      ({ name, colour, x: across, y: down }) =>
        `<text class="halo words" x="${px(across)}" y="${px(down)}" fill="${colour}">${name}</text>`,
    );
    return `<g data-panel="${title}" data-height="${height}" data-low="${domain[0]}" data-high="${domain[1]}" data-unit="${unit}" data-names="${wholes.join('|')}"><text class="panel-title" y="-8">${tied(title)}, ${unit}</text><text class="read halo" data-read x="${px(width)}" y="-8" text-anchor="end" fill="var(--ink)"></text>
${grid.join('')}
${rule ? `<path class="rule" d="M0 ${px(y(rule.at))}H${px(width)}"/>` : ''}
<svg class="field" width="${px(width)}" height="${px(height)}" overflow="hidden">${curves.join('')}</svg>
${told ? `<text class="soft halo" x="${px(told.x)}" y="${px(told.y)}" text-anchor="${told.anchor}">${escaped(words ?? '')}</text>` : ''}
${named.join('')}</g>`;
  };
  const strip = ({ title, parts, fill, words }: (typeof strips)[number], i: number): string => {
    const each = parts.map(({ from, to, what }) => {
      const [left, right] = [x(from), x(to)];
      const wide = (text: string) => right - left > text.length * 6.2;
      const said = wide(words(what)) ? words(what) : what;
      const text = wide(said)
        ? `<text class="words" x="${px((left + right) / 2)}" y="14" text-anchor="middle" fill="${fill(what)}">${escaped(said)}</text>`
        : '';
      return `<rect data-to="${px(right)}" data-words="${escaped(words(what))}" x="${px(left)}" width="${px(right - left)}" height="${STRIP}" fill="${fill(what)}" fill-opacity="0.16"/><path d="M${px(left)} ${STRIP}H${px(right)}" stroke="${fill(what)}" stroke-width="2"/>${text}`;
    });
    return `<g data-strip transform="translate(0 ${stripTop(i)})"><text class="panel-title" y="-8">${title}</text><text class="read halo" data-read x="${px(width)}" y="-8" text-anchor="end" fill="var(--ink)"></text>${each.join('')}</g>`;
  };
  const event = ({ at, words }: (typeof events)[number], i: number): string => {
    const [across, down] = [x(at), ROW * (i + 1)];
    // To the right of its line, where none of a greater length begins before the next row.
    const left = across + 5 + words.length * LETTER > width + edge.right;
    return `<path class="event" d="M${px(across)} ${down - 10}V${bottom}"/><text class="halo ${words.startsWith('now') ? 'words' : 'letter'}" x="${px(across + (left ? -5 : 5))}" y="${down}" text-anchor="${left ? 'end' : 'start'}" fill="var(--ink)">${escaped(tied(words))}</text>`;
  };
  const marks = ticks.map(
    (at) =>
      `<path class="grid" d="M${px(x(at / MM))} ${top}V${bottom}"/><text class="soft" x="${px(x(at / MM))}" y="${bottom + 17}" text-anchor="middle">${at}</text>`,
  );
  const label = escaped(tied(labelOf(facts, tubes)));
  return `<svg class="plot sweep tubes" role="img" aria-label="${label}" width="${total}" height="${tall}" viewBox="0 0 ${total} ${tall}" data-first="${least * MM}" data-last="${most * MM}" data-left="${edge.left}" data-width="${width}" data-unit="mm" xmlns="http://www.w3.org/2000/svg"><g transform="translate(${edge.left} 0)">
${marks.join('')}
<text class="soft axis-words" x="${px(width + edge.right - 2)}" y="${bottom + 35}" text-anchor="end">length of the tube, mm</text>
${panels.map((each, i) => `<g transform="translate(0 ${top + i * (height + GAP)})">${panel(each)}</g>`).join('')}
${strips.map(strip).join('')}
${events.map(event).join('')}
<g class="pointer"><path d="M0 ${top}V${bottom}"/><text class="halo" data-tone y="${bottom + 35}" text-anchor="middle" fill="var(--ink)"></text></g></g></svg>`;
}
