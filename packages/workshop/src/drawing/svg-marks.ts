import { lengthIn, wordsIn } from '../words/told.js';
import type { Callout, Dimension, Drawing, Label } from './drawing.js';
import { letters, linesOf, n, type Paper, put, textSize } from './svg-paper.js';

/** How far from its edge the first row of lengths stands, mm; how far the next one, which the numbers of the first must not reach. */
const FIRST = 7;
const ROW = { mm: 15, cm: 17, in: 19 } as const;

/** Where words along an edge end: a line to a length beside them begins there, mm. */
const WORDS = 4.4;
/** How far the line to a second row goes on before its end, where a number of the first row stands on its way, mm. */
const LAST = 3;

/** Whether words along an edge lie over a place, mm. */
function hasWords(paper: Paper, labels: readonly Label[], side: Dimension['side'], place: number): boolean {
  const edge = ({ below: 'bottom', above: 'top', left: 'left', right: 'right' } as const)[side];
  return labels.some(({ at, text, size, beside }) => {
    if (beside !== edge) return false;
    const middle = edge === 'bottom' || edge === 'top' ? paper.x(at[0]) : paper.y(at[1]);
    return Math.abs(place - middle) < textSize(wordsIn(paper.unit, text), size) / 2 + 0.6;
  });
}

export function drawDimension(
  paper: Paper,
  { kind, along, ends, beside, side, row }: Dimension,
  labels: readonly Label[] = [],
): void {
  const out = FIRST + row * ROW[paper.unit];
  const isX = along === 'x';
  const sign = side === 'below' || side === 'right' ? 1 : -1;
  const at = (isX ? paper.y(beside) : paper.x(beside)) + sign * out;
  const edge = isX ? paper.y(beside) : paper.x(beside);
  const places = ends.map((end) => (isX ? paper.x(end) : paper.y(end)));
  const point = (place: number, across: number): readonly [number, number] => (isX ? [place, across] : [across, place]);
  const stroke = (from: readonly [number, number], to: readonly [number, number], width = 0.15) =>
    paper.put(`<path d="M${n(from[0])} ${n(from[1])}L${n(to[0])} ${n(to[1])}" stroke-width="${width}"/>`, from, to);
  for (const [i, place] of places.entries()) {
    const start = edge + sign * (hasWords(paper, labels, side, place) ? WORDS : 1);
    const end = at + sign * 1.2;
    if (row > 0 && i === 0) {
      stroke(point(place, start), point(place, edge + sign * (FIRST + 1.2)), 0.1);
      stroke(point(place, at - sign * LAST), point(place, end), 0.1);
    } else stroke(point(place, start), point(place, end), 0.1);
    const tick = 0.9;
    stroke(
      isX ? [place - tick, at + tick] : [at - tick, place + tick],
      isX ? [place + tick, at - tick] : [at + tick, place - tick],
      0.3,
    );
  }
  const [first, last] = [places[0]!, places.at(-1)!];
  stroke(point(first, at), point(last, at));
  if (kind === 'overall') {
    const middle = (first + last) / 2;
    const text = lengthIn(paper.unit, ends[1]! - ends[0]!);
    put(paper, text, isX ? [middle, at - 2.2] : [at - 2.2, middle], 'normal', 'middle', !isX);
    return;
  }
  // Counted from the first edge; near neighbours are moved apart so that no number covers another.
  const size = letters.normal;
  const spots = apart(places, size * 1.15);
  spots.forEach((spot, i) => {
    const text = lengthIn(paper.unit, ends[i]! - ends[0]!);
    const from = at + sign * 2;
    if (isX) put(paper, text, [spot, from], 'normal', sign > 0 ? 'end' : 'start', true);
    else put(paper, text, [from, spot], 'normal', sign > 0 ? 'start' : 'end');
  });
}

/** Places that keep a distance, as near to the wanted ones as they can, in the same order. */
function apart(wanted: readonly number[], least: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = [...wanted];
  for (let pass = 0; pass < 60; pass++) {
    for (let k = 1; k < order.length; k++) {
      const [a, b] = [order[k - 1]!, order[k]!];
      const close = least - (placed[b]! - placed[a]!);
      if (close <= 1e-6) continue;
      placed[a] = placed[a]! - close / 2;
      placed[b] = placed[b]! + close / 2;
    }
  }
  return placed;
}

/** Height of a line over that of its letters. */
const LINE = 1.25;

/** The largest letters in which a text has room, across or upright. */
function fitting(text: string, [wide, high]: readonly [number, number]) {
  const air = 1;
  for (const size of ['normal', 'small', 'tiny'] as const) {
    for (const upright of wide >= high ? [false, true] : [true, false]) {
      const [along, across] = upright ? [high, wide] : [wide, high];
      const lines = linesOf(text, size, along - air);
      const long = Math.max(...lines.map((line) => textSize(line, size)));
      const tall = lines.length * LINE * letters[size];
      if (long <= along - air && tall <= across - air / 2) return { size, upright, lines, long, tall };
    }
  }
  return undefined;
}

/** A text in a rectangle around its middle; where it has no room it is left out or written small. */
function drawWithin(
  paper: Paper,
  { at, room, optional, ...label }: Label & { readonly room: readonly [number, number] },
): void {
  const text = wordsIn(paper.unit, label.text);
  const shorter = label.shorter && wordsIn(paper.unit, label.shorter);
  const [x, y] = [paper.x(at[0]), paper.y(at[1])];
  const [wide, high] = [room[0] * paper.scale, room[1] * paper.scale];
  const found = fitting(text, [wide, high]) ?? (shorter === undefined ? undefined : fitting(shorter, [wide, high]));
  if (found === undefined && optional) return;
  const upright = found?.upright ?? high > wide;
  const { size, lines, long, tall } = found ?? {
    size: 'tiny' as const,
    lines: [shorter ?? text],
    long: textSize(shorter ?? text, 'tiny'),
    tall: LINE * letters.tiny,
  };
  lines.forEach((line, i) => {
    const down = (i - (lines.length - 1) / 2) * LINE * letters[size];
    put(paper, line, upright ? [x + down, y] : [x, y + down], size, 'middle', upright, true);
  });
  paper.taken.push({ middle: [x, y], half: upright ? [tall / 2, long / 2] : [long / 2, tall / 2] });
}

/** The first place on the way from one to another where a circle covers nothing that was written. */
function clearPlace(paper: Paper, from: readonly [number, number], to: readonly [number, number], radius: number) {
  const way = Math.hypot(to[0] - from[0], to[1] - from[1]);
  for (let gone = 0; gone <= way; gone += radius / 4) {
    const at = [0, 1].map((k) => from[k]! + ((to[k]! - from[k]!) * gone) / (way || 1)) as [number, number];
    const free = paper.taken.every(({ middle, half }) =>
      [0, 1].some((k) => Math.abs(middle[k]! - at[k]!) >= half[k]! + radius),
    );
    if (free) return at;
  }
  return from;
}

export function drawLabel(paper: Paper, label: Label): void {
  const { at, text, size, beside, above, clear, ringed, room, towards } = label;
  if (room) {
    drawWithin(paper, { ...label, room });
    return;
  }
  let [x, y] = [paper.x(at[0]), paper.y(at[1])];
  if (ringed) {
    const radius = letters[size] * 0.85;
    if (towards) [x, y] = clearPlace(paper, [x, y], [paper.x(towards[0]), paper.y(towards[1])], radius);
    paper.taken.push({ middle: [x, y], half: [radius, radius] });
    paper.put(`<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}" stroke-width="0.2" fill="var(--paper, Canvas)"/>`);
  }
  const away = letters[size] * 0.95;
  const upright = beside === 'left' || beside === 'right';
  const dx = beside === 'left' ? -away : beside === 'right' ? away : 0;
  const dy = beside === 'top' || above ? -away : beside === 'bottom' ? away : 0;
  put(paper, wordsIn(paper.unit, text), [x + dx, y + dy], size, 'middle', upright, clear);
}

export function drawCallouts(paper: Paper, callouts: readonly Callout[], right: number): void {
  const wanted = callouts.map(({ at }) => paper.y(at[1]));
  const placed = apart(wanted, letters.normal * 1.6);
  callouts.forEach(({ at, text }, i) => {
    const [x, y] = [paper.x(at[0]), paper.y(at[1])];
    const to = [right + 5, placed[i]!] as const;
    paper.put(
      `<path d="M${n(x)} ${n(y)}L${n(to[0])} ${n(to[1])}h2" stroke-width="0.15"/><circle cx="${n(x)}" cy="${n(y)}" r="0.5" fill="currentColor" stroke="none"/>`,
      to,
    );
    put(paper, wordsIn(paper.unit, text), [to[0] + 3, to[1]], 'normal', 'start');
  });
}

/** An arrow below the lower right corner. */
export function drawGrain(paper: Paper, along: 'x' | 'y', right: number, foot: number): void {
  const [x, y] = along === 'x' ? [right + 12, foot + 8] : [right + 8, foot + 12];
  const half = 7;
  const turn = along === 'y' ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : '';
  paper.put(
    `<path d="M${n(x - half)} ${n(y)}h${2 * half}m-2 -1l2 1l-2 1M${n(x - half + 2)} ${n(y - 1)}l-2 1l2 1" stroke-width="0.25"${turn}/>`,
  );
  put(paper, 'grain', along === 'y' ? [x - 2.2, y] : [x, y - 2.2], 'small', 'middle', along === 'y', true);
}

/** The words of a scale, which stay in one line. */
const scaleOf = (divisor: number): string => `scale 1 : ${divisor}`.replaceAll(' ', '\u00a0');

/** What a drawing is and its scale, above everything else. */
export function drawHead(
  paper: Paper,
  { title, subtitle }: Drawing,
  divisor: number,
  [left, top, room]: readonly number[],
): void {
  let y = top! - 5.8;
  for (const [text, size] of [
    [`${wordsIn(paper.unit, subtitle)}; ${scaleOf(divisor)}`, 'normal'],
    [wordsIn(paper.unit, title), 'title'],
  ] as const) {
    for (const line of linesOf(text, size, room!).toReversed()) {
      put(paper, line, [left!, y], size, 'start');
      y -= 1.4 * letters[size];
    }
    y -= 1;
  }
}
