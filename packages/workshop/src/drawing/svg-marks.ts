import type { Callout, Dimension, Drawing, Label } from './drawing.js';
import { millimetres } from './drawing.js';
import { letters, linesOf, n, type Paper, put } from './svg-paper.js';

/** How far from its edge a row of lengths stands, mm. */
const FIRST = 6;
const ROW = 16;

export function drawDimension(paper: Paper, { kind, along, ends, beside, side, row }: Dimension): void {
  const out = FIRST + row * ROW;
  const isX = along === 'x';
  const sign = side === 'below' || side === 'right' ? 1 : -1;
  const at = (isX ? paper.y(beside) : paper.x(beside)) + sign * out;
  const edge = isX ? paper.y(beside) : paper.x(beside);
  const places = ends.map((end) => (isX ? paper.x(end) : paper.y(end)));
  const point = (place: number, across: number): readonly [number, number] => (isX ? [place, across] : [across, place]);
  const stroke = (from: readonly [number, number], to: readonly [number, number], width = 0.15) =>
    paper.put(`<path d="M${n(from[0])} ${n(from[1])}L${n(to[0])} ${n(to[1])}" stroke-width="${width}"/>`, from, to);
  for (const place of places) {
    stroke(point(place, edge + sign * 1), point(place, at + sign * 1.2), 0.1);
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
    const text = millimetres(ends[1]! - ends[0]!);
    put(paper, text, isX ? [middle, at - 2.2] : [at - 2.2, middle], 'normal', 'middle', !isX);
    return;
  }
  // Counted from the first edge; near neighbours are moved apart so that no number covers another.
  const size = letters.normal;
  const spots = apart(places, size * 1.15);
  spots.forEach((spot, i) => {
    const text = millimetres(ends[i]! - ends[0]!);
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

export function drawLabel(paper: Paper, { at, text, size, within, above, clear, ringed }: Label): void {
  const [x, y] = [paper.x(at[0]), paper.y(at[1])];
  if (ringed) {
    const radius = letters[size] * 0.85;
    paper.put(`<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}" stroke-width="0.2" fill="var(--paper, Canvas)"/>`);
  }
  const inset = letters[size] * 0.95;
  const upright = within === 'left' || within === 'right';
  const dx = within === 'left' ? inset : within === 'right' ? -inset : 0;
  const dy = within === 'top' ? inset : within === 'bottom' || above ? -inset : 0;
  put(paper, text, [x + dx, y + dy], size, 'middle', upright, clear);
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
    put(paper, text, [to[0] + 3, to[1]], 'normal', 'start');
  });
}

/** An arrow beside the lower right corner. */
export function drawGrain(paper: Paper, along: 'x' | 'y', right: number, foot: number): void {
  const [x, y] = along === 'x' ? [right + 12, foot - 2] : [right + 8, foot - 8];
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
    [`${subtitle}; ${scaleOf(divisor)}`, 'normal'],
    [title, 'title'],
  ] as const) {
    for (const line of linesOf(text, size, room!).toReversed()) {
      put(paper, line, [left!, y], size, 'start');
      y -= 1.4 * letters[size];
    }
    y -= 1;
  }
}
