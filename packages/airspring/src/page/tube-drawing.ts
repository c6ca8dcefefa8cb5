import type { MarkedSet } from '../standing/marked-tubes.js';
import { limitInWords } from '../words/limit-words.js';
import { tied } from '../words/tied.js';
import { colourOf } from './limit-colours.js';
import { linePath } from './line-path.js';
import { escaped } from './markup.js';
import { LETTER, namesOf, placeOfRule, type Taken } from './tube-labels.js';
import { type Panel, panelsOf } from './tube-panels.js';
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
