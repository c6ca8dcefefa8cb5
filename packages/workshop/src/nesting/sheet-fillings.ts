import { NANOMETRE } from '@airspring/core/quantity';
import {
  bestPlace,
  type Choice,
  choices,
  cutOff,
  type Filling,
  orders,
  type Rectangle,
  type Split,
  scrapOf,
  splits,
} from './guillotine.js';
import type { Nest, Part, Sheet } from './nest-input.js';

/** The inner rectangle of a sheet, and the cuts that make it. */
function trimmed({ length, width }: Sheet, size: number, trim: number, kerf: number): Filling {
  const inner = { x: trim, y: trim, length: length - 2 * trim, width: width - 2 * trim };
  const cuts: Filling['cuts'] =
    trim > 0
      ? [
          { across: 'y', at: Math.max(0, trim - kerf), from: 0, to: length },
          { across: 'y', at: width - trim, from: 0, to: length },
          { across: 'x', at: Math.max(0, trim - kerf), from: trim, to: width - trim },
          { across: 'x', at: length - trim, from: trim, to: width - trim },
        ]
      : [];
  return { size, placed: [], free: [inner], scrap: [], cuts };
}

/** Whether a part fits a sheet. */
export const isInside = ({ length, width, grained }: Part, sheet: Sheet, trim: number): boolean => {
  const fits = (along: number, across: number) =>
    along <= sheet.length - 2 * trim + NANOMETRE && across <= sheet.width - 2 * trim + NANOMETRE;
  return fits(length, width) || (!grained && fits(width, length));
};

/** All parts on sheets, in one order and by one rule; nothing where the sheets run out, or cost more than a layout that is known. */
function filled(
  nest: Nest,
  list: readonly number[],
  preference: readonly number[],
  choice: Choice,
  split: Split,
  isScrap: (rectangle: Rectangle) => boolean,
  known: number,
): Filling[] | undefined {
  const { parts, sheets, kerf, trim } = nest;
  let [opened, largest] = [0, 0];
  const fillings: Filling[] = [];
  const left = sheets.map(({ count = Number.POSITIVE_INFINITY }) => count);
  for (const index of list) {
    const part = parts[index]!;
    let found: { filling: Filling; at: number; turned: boolean; value: number } | undefined;
    for (const filling of fillings) {
      const place = bestPlace(filling, part, choice, found?.value);
      if (place) found = { filling, ...place };
    }
    if (found === undefined) {
      const size = preference.find((one) => left[one]! > 0 && isInside(part, sheets[one]!, trim));
      if (size === undefined) return undefined;
      left[size]!--;
      const area = areaOf(sheets[size]!);
      opened += area;
      largest = Math.max(largest, area);
      // The credit for what is left of one sheet is at most that of the largest.
      if (opened - OFFCUT * largest >= known) return undefined;
      const filling = trimmed(sheets[size]!, size, trim, kerf);
      fillings.push(filling);
      found = { filling, ...bestPlace(filling, part, choice)! };
    }
    const [length, width] = found.turned ? [part.width, part.length] : [part.length, part.width];
    cutOff(found.filling, found.at, index, length, width, found.turned, kerf, split, isScrap);
  }
  return fillings;
}

export const areaOf = ({ length, width }: { readonly length: number; readonly width: number }): number =>
  length * width;

/** What the offcut of a sheet counts: fewer sheets first, then the larger remainder. */
const OFFCUT = 1e-3;

/** The area of the sheets that are cut, and of the emptiest of them only what is filled: what is left of it can be used later. */
function costOf({ parts, sheets }: Nest, fillings: readonly Filling[]): number {
  const shares = fillings.map(({ size, placed }) => {
    const whole = areaOf(sheets[size]!);
    return { whole, full: placed.reduce((sum, { part }) => sum + areaOf(parts[part]!), 0) / whole };
  });
  const emptiest = shares.reduce((least, one) => (one.full < least.full ? one : least));
  const total = shares.reduce((sum, { whole }) => sum + whole, 0);
  return total - OFFCUT * (1 - emptiest.full) * emptiest.whole;
}

/** Orders in which sizes of sheets are opened: what there is little of first, the large ones first, the small ones first. */
function preferences(sheets: readonly Sheet[]): readonly (readonly number[])[] {
  const all = sheets.map((_, i) => i);
  const byArea = [...all].sort((a, b) => areaOf(sheets[b]!) - areaOf(sheets[a]!));
  const counted = (one: number) => Number(sheets[one]!.count === undefined);
  const found = [byArea, [...byArea].reverse()].flatMap((list) => [
    list,
    [...list].sort((a, b) => counted(a) - counted(b)),
  ]);
  return [...new Map(found.map((list) => [list.join(), list])).values()];
}

/** The cheapest of all layouts that are tried; nothing where the sheets run out. */
export function bestFillings(nest: Nest): readonly Filling[] | undefined {
  const { parts, sheets } = nest;
  const isScrap = scrapOf(parts);
  let best: { readonly fillings: Filling[]; readonly cost: number } | undefined;
  for (const preference of preferences(sheets)) {
    for (const order of orders) {
      const list = parts.map((_, i) => i).sort((a, b) => order(parts[b]!) - order(parts[a]!));
      for (const choice of choices) {
        for (const split of splits) {
          const fillings = filled(
            nest,
            list,
            preference,
            choice,
            split,
            isScrap,
            best?.cost ?? Number.POSITIVE_INFINITY,
          );
          const cost = fillings && costOf(nest, fillings);
          if (fillings && cost !== undefined && (best === undefined || cost < best.cost)) best = { fillings, cost };
        }
      }
    }
  }
  return best?.fillings;
}
