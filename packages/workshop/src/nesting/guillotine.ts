import { NANOMETRE } from '@airspring/core/quantity';
import type { Part } from './nest-input.js';

/** A rectangle on a sheet, from its corner: x along the length, y along the width. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** One cut from edge to edge of what is being cut: at `at`, across x or y; the saw takes `at` to `at` plus the kerf. */
export interface Cut {
  readonly across: 'x' | 'y';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export interface Placed extends Rectangle {
  readonly part: number;
  readonly turned: boolean;
}

/** A sheet as it is filled: what lies on it, what is free, and the cuts in their order. */
export interface Filling {
  /** Which size of sheet. */
  readonly size: number;
  readonly placed: Placed[];
  readonly free: Rectangle[];
  /** Free too, but smaller than every part. */
  readonly scrap: Rectangle[];
  readonly cuts: Cut[];
}

/** The order in which parts are placed: the largest value first. */
export type Order = (part: Part) => number;
/** How well a part suits a free rectangle, from what is left along both edges: the least value is taken. */
export type Choice = (free: Rectangle, leftLength: number, leftWidth: number) => number;
/** Whether the first cut runs across x, so that what is left beside the part keeps the whole width. */
export type Split = (free: Rectangle, leftLength: number, leftWidth: number) => boolean;

export const orders: readonly Order[] = [
  ({ length, width }) => length * width,
  ({ length, width }) => Math.max(length, width),
  ({ length, width }) => Math.min(length, width),
  ({ length, width }) => length + width,
  ({ length, width }) => width + length / 1e3,
];

export const choices: readonly Choice[] = [
  (free, leftLength, leftWidth) => free.length * free.width - (free.length - leftLength) * (free.width - leftWidth),
  (_, leftLength, leftWidth) => Math.min(leftLength, leftWidth),
  (_, leftLength, leftWidth) => Math.max(leftLength, leftWidth),
];

export const splits: readonly Split[] = [
  (_, leftLength, leftWidth) => leftLength > leftWidth,
  (_, leftLength, leftWidth) => leftLength <= leftWidth,
  ({ length, width }, leftLength, leftWidth) => leftLength * width > length * leftWidth,
  () => true,
  () => false,
];

/** Cuts a part from the corner of a free rectangle, by at most two cuts, and returns what is left. */
export function cutOff(
  filling: Filling,
  at: number,
  part: number,
  length: number,
  width: number,
  turned: boolean,
  kerf: number,
  split: Split,
  isScrap: (rectangle: Rectangle) => boolean,
): void {
  const free = filling.free[at]!;
  const { x, y } = free;
  const [leftLength, leftWidth] = [free.length - length, free.width - width];
  filling.free.splice(at, 1);
  filling.placed.push({ part, x, y, length, width, turned });
  const keep = (rectangle: Rectangle) => {
    if (rectangle.length > NANOMETRE && rectangle.width > NANOMETRE)
      (isScrap(rectangle) ? filling.scrap : filling.free).push(rectangle);
  };
  const acrossX = (to: number) => {
    if (leftLength > NANOMETRE) filling.cuts.push({ across: 'x', at: x + length, from: y, to: y + to });
  };
  const acrossY = (to: number) => {
    if (leftWidth > NANOMETRE) filling.cuts.push({ across: 'y', at: y + width, from: x, to: x + to });
  };
  const beside = { x: x + length + kerf, length: leftLength - kerf };
  const above = { y: y + width + kerf, width: leftWidth - kerf };
  if (split(free, leftLength, leftWidth)) {
    acrossX(free.width);
    acrossY(length);
    keep({ ...beside, y, width: free.width });
    keep({ x, length, ...above });
  } else {
    acrossY(free.length);
    acrossX(width);
    keep({ ...beside, y, width });
    keep({ x, length: free.length, ...above });
  }
}

/** Whether a rectangle is too small for every one of some parts. */
export function scrapOf(parts: readonly Part[]): (rectangle: Rectangle) => boolean {
  const short = Math.min(...parts.map(({ length, width }) => Math.min(length, width))) - NANOMETRE;
  const long = Math.min(...parts.map(({ length, width }) => Math.max(length, width))) - NANOMETRE;
  return ({ length, width }) => Math.min(length, width) < short || Math.max(length, width) < long;
}

/** The best free rectangle of a filling for a part: its index, whether the part is turned, and how well it suits; nothing where none is better than `most`. */
export function bestPlace(
  { free }: Filling,
  { length, width, grained }: Part,
  choice: Choice,
  most = Number.POSITIVE_INFINITY,
): { readonly at: number; readonly turned: boolean; readonly value: number } | undefined {
  const turns = grained || length === width ? 1 : 2;
  let found = -1;
  let turned = false;
  let least = most;
  for (let at = 0; at < free.length; at++) {
    const place = free[at]!;
    for (let turn = 0; turn < turns; turn++) {
      const leftLength = place.length - (turn === 0 ? length : width);
      const leftWidth = place.width - (turn === 0 ? width : length);
      if (leftLength < -NANOMETRE || leftWidth < -NANOMETRE) continue;
      const value = choice(place, Math.max(0, leftLength), Math.max(0, leftWidth));
      if (value >= least) continue;
      found = at;
      turned = turn === 1;
      least = value;
    }
  }
  return found < 0 ? undefined : { at: found, turned, value: least };
}
