import type { ComplexColumn } from '../numeric/index.js';

/** Complex values at some frequencies, in any number of columns, that are tested for jumps and for memory. */
export type Curves = (frequencies: Float64Array) => readonly ComplexColumn[];

const size = ({ re, im }: ComplexColumn, i: number): number => Math.hypot(re[i]!, im[i]!);
const distance = (a: ComplexColumn, b: ComplexColumn, i: number, k = i): number =>
  Math.hypot(a.re[i]! - b.re[k]!, a.im[i]! - b.im[k]!);

/** The greatest value of a column near a place, which rounding there is compared with. */
const sizeNear = (column: ComplexColumn, i: number): number =>
  Math.max(...[i - 1, i, i + 1].map((k) => (k in column.re ? size(column, k) : 0)), Number.MIN_VALUE);

/** Says where a value is not a number; `undefined` when there is no such place. */
export function notFinite(columns: readonly ComplexColumn[], frequencies: Float64Array): string | undefined {
  for (const [k, { re, im }] of columns.entries()) {
    const i = frequencies.findIndex((_, at) => !Number.isFinite(re[at]! + im[at]!));
    if (i >= 0) return `column ${k} is not a number at ${frequencies[i]} Hz`;
  }
  return undefined;
}

/**
 * Finds a frequency whose numbers differ when it stands alone or in another order. A formula does not depend on neighbouring
 * frequencies, so half a sweep must give half of the numbers.
 */
export function memoryFault(curves: Curves, grid: Float64Array): string | undefined {
  const copies = (columns: readonly ComplexColumn[]) =>
    columns.map(({ re, im }) => ({ re: re.slice(), im: im.slice() }));
  const all = copies(curves(grid));
  const differs = (other: readonly ComplexColumn[], i: number, k: number) =>
    all.some((column, c) => !(distance(column, other[c] as ComplexColumn, i, k) <= 1e-9 * sizeNear(column, i)));
  const last = grid.length - 1;
  const reversed = copies(curves(grid.slice().reverse()));
  for (let i = 0; i <= last; i++) {
    if (differs(reversed, i, last - i)) return `the numbers change in reversed order at ${grid[i]} Hz`;
  }
  for (let i = 0; i <= last; i += 7) {
    if (differs(curves(grid.slice(i, i + 1)), i, 0))
      return `the numbers at a single frequency differ from those of the sweep at ${grid[i]} Hz`;
  }
  const again = copies(curves(grid));
  for (let i = 0; i <= last; i++)
    if (differs(again, i, i)) return `the numbers change when the sweep is repeated, at ${grid[i]} Hz`;
  return undefined;
}

const HALVINGS = 32;
/** Number of halvings over which a change must shrink, even at the sharpest resonance. */
const LAST = 6;
/** Changes below this part of the neighbouring values are rounding. */
const ROUNDING = 1e-6;

/**
 * Finds where a curve jumps. Every interval is halved again and again, always towards the half with the greater change. A linear
 * network and a law of physics are analytic in frequency, so their change shrinks with the interval; that of a jump does not.
 */
export function jumpFault(curves: Curves, grid: Float64Array): string | undefined {
  const ends = curves(grid).map(({ re, im }) => ({ re: re.slice(), im: im.slice() }));
  const count = grid.length - 1;
  const scale = ends.map((column) =>
    Float64Array.from({ length: count }, (_, i) => Math.max(sizeNear(column, i), sizeNear(column, i + 1))),
  );
  const from = (start: number) => ends.map(({ re, im }) => ({ re: re.slice(start), im: im.slice(start) }));
  const [low, high] = [from(0), from(1)];
  const [below, above] = [grid.slice(0, count), grid.slice(1)];
  const change = (a: readonly ComplexColumn[], b: readonly ComplexColumn[], i: number) =>
    a.reduce((sum, column, c) => sum + distance(column, b[c] as ComplexColumn, i) / scale[c]![i]!, 0);
  const earlier = new Float64Array(count);
  for (let step = 0; step < HALVINGS; step++) {
    if (step === HALVINGS - LAST) for (let i = 0; i < count; i++) earlier[i] = change(low, high, i);
    const middle = below.map((f, i) => (f + above[i]!) / 2);
    const between = curves(middle);
    for (let i = 0; i < count; i++) {
      const upper = change(between, high, i) > change(low, between, i);
      const moved = upper ? low : high;
      (upper ? below : above)[i] = middle[i]!;
      moved.forEach(({ re, im }, c) => {
        re[i] = between[c]!.re[i]!;
        im[i] = between[c]!.im[i]!;
      });
    }
  }
  for (let i = 0; i < count; i++) {
    const left = change(low, high, i);
    if (left > ROUNDING && left > 0.5 * earlier[i]!) return `jumps at ${below[i]} Hz`;
  }
  return undefined;
}
