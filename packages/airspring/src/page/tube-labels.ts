import type { Panel } from './tube-panels.js';

interface Scale {
  readonly x: (length: number) => number;
  readonly y: (value: number) => number;
  readonly width: number;
}

/** A box that words or lines take, pixels. */
export type Taken = readonly [left: number, top: number, right: number, bottom: number];
/** Width of a letter, pixels. */
export const LETTER = 6.4;
/** A name over a line that is nearer to the top of its panel than this would stand in the title. */
const ROOM_ABOVE = 24;

/** Where the words of a rule are farthest from all that is there: at either end, over it or under it. */
export function placeOfRule(words: string, at: number, taken: readonly Taken[], width: number) {
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
export function namesOf(lines: Panel['lines'], { x, y, width }: Scale, rule: number | undefined) {
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
