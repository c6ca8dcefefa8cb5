import type { Impossible, Reason } from '@airspring/core/fault';
import { type Area, format, type Length, si } from '@airspring/core/quantity';
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
import { type Nest, type NestInput, type Part, readNest, type Sheet } from './nest-input.js';

/** A part on a sheet, from the corner of the sheet: x along its length, y along its width. */
export interface NestedPart {
  readonly name: string;
  readonly x: Length;
  readonly y: Length;
  /** Along x and along y. */
  readonly length: Length;
  readonly width: Length;
  /** Whether its own length lies along y. */
  readonly turned: boolean;
  /** Whether its length must lie along the grain. */
  readonly grained: boolean;
}

/** A cut from edge to edge of the rectangle that is left at that moment; the saw takes `at` to `at` plus the kerf. */
export interface SawCut {
  readonly across: 'x' | 'y';
  readonly at: Length;
  readonly from: Length;
  readonly to: Length;
}

export interface NestedSheet {
  readonly name: string;
  readonly length: Length;
  readonly width: Length;
  readonly parts: readonly NestedPart[];
  /** In the order of sawing. */
  readonly cuts: readonly SawCut[];
  /** What is left whole, the largest first. */
  readonly offcuts: readonly {
    readonly x: Length;
    readonly y: Length;
    readonly length: Length;
    readonly width: Length;
  }[];
}

export interface Nesting {
  readonly ok: true;
  readonly sheets: readonly NestedSheet[];
  readonly kerf: Length;
  readonly trim: Length;
  /** Of all parts, and of the sheets that are cut. */
  readonly usedArea: Area;
  readonly sheetArea: Area;
  /** Part of the area of the sheets that becomes no part of the box: kerf, trim and offcuts. */
  readonly waste: number;
  /** How many sheets are needed at least, by the area of the parts over that of the largest sheet. No layout can need fewer. */
  readonly sheetsAtLeast: number;
}

const mm = (length: number) => format('length', length, 'mm', 4);

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

const isInside = ({ length, width, grained }: Part, sheet: Sheet, trim: number): boolean => {
  const fits = (along: number, across: number) =>
    along <= sheet.length - 2 * trim + 1e-9 && across <= sheet.width - 2 * trim + 1e-9;
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

const areaOf = ({ length, width }: { readonly length: number; readonly width: number }): number => length * width;

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

/**
 * Nests rectangular parts on sheets so that a panel saw can cut them: each cut runs from edge to edge of what is left. Orders of the
 * parts, ways to choose a free rectangle and ways to split it are tried in all combinations, and the best layout is kept.
 *
 * $$ n \ge \frac{\sum \ell_i w_i}{L\,W} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $n$ | 1 | sheets of one size |
 * | $\ell_i$, $w_i$ | m | length and width of the parts |
 * | $L$, $W$ | m | length and width of the largest sheet without its trim |
 *
 * @validity up to 2,000 parts; a good layout, not a proof that none is better
 * @neglects defects of a sheet, the order in which heavy sheets are handled
 * @returns sheets with parts, cuts in their order and offcuts, or which part fits no sheet
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent`
 * @source own derivation: guillotine cutting with several orders, choices and splits, a common method; own tree of cuts
 * @example nest({ parts: [{ name: 'side', length: '400 mm', width: '300 mm', count: 2 }], sheets: [{ length: '2500 mm', width: '1250 mm' }], kerf: '3 mm' })
 */
export function nest(input: NestInput): Nesting | Impossible {
  const read = readNest(input);
  const { parts, sheets, kerf, trim } = read;
  const tooLarge = parts.filter((part) => !sheets.some((sheet) => isInside(part, sheet, trim)));
  if (tooLarge.length > 0) return { ok: false, because: reasonsOf(tooLarge, sheets, trim) };
  const isScrap = scrapOf(parts);
  let best: { readonly fillings: Filling[]; readonly cost: number } | undefined;
  for (const preference of preferences(sheets)) {
    for (const order of orders) {
      const list = parts.map((_, i) => i).sort((a, b) => order(parts[b]!) - order(parts[a]!));
      for (const choice of choices) {
        for (const split of splits) {
          const fillings = filled(
            read,
            list,
            preference,
            choice,
            split,
            isScrap,
            best?.cost ?? Number.POSITIVE_INFINITY,
          );
          const cost = fillings && costOf(read, fillings);
          if (fillings && cost !== undefined && (best === undefined || cost < best.cost)) best = { fillings, cost };
        }
      }
    }
  }
  const used = parts.reduce((sum, part) => sum + areaOf(part), 0);
  if (best === undefined) {
    const text = `The parts have ${format('area', used, 'm²')} and do not all find a place on the sheets that there are. Get more sheets.`;
    return { ok: false, because: [{ code: 'sheets-run-out', text }] };
  }
  const area = best.fillings.reduce((sum, { size }) => sum + areaOf(sheets[size]!), 0);
  const largest = Math.max(...sheets.map((sheet) => (sheet.length - 2 * trim) * (sheet.width - 2 * trim)));
  return {
    ok: true,
    sheets: best.fillings.map((filling) => nestedSheet(read, filling)),
    kerf,
    trim,
    usedArea: si('area', used),
    sheetArea: si('area', area),
    waste: 1 - used / area,
    sheetsAtLeast: Math.ceil(used / largest - 1e-9),
  };
}

function reasonsOf(tooLarge: readonly Part[], sheets: readonly Sheet[], trim: number): Reason[] {
  const texts = tooLarge.map(({ name, length, width, grained }) => {
    const could = !grained || sheets.every((sheet) => !isInside({ name, length, width, grained: false }, sheet, trim));
    const list = sheets.map((sheet) => `${mm(sheet.length - 2 * trim)} by ${mm(sheet.width - 2 * trim)}`).join(', ');
    const why = could ? 'and fits no sheet' : 'and would fit a sheet only across its grain';
    return `${name} is ${mm(length)} by ${mm(width)} ${why} (${trim > 0 ? 'trimmed to ' : ''}${list}).`;
  });
  return [...new Set(texts)].map((text) => ({ code: 'part-larger-than-sheet', text }));
}

const length = (value: number): Length => si('length', value);

function nestedSheet({ parts, sheets }: Nest, { size, placed, free, scrap, cuts }: Filling): NestedSheet {
  const { name, length: long, width: wide } = sheets[size]!;
  return {
    name,
    length: long,
    width: wide,
    parts: placed.map(({ part, x, y, length: along, width, turned }) => ({
      name: parts[part]!.name,
      grained: parts[part]!.grained,
      x: length(x),
      y: length(y),
      length: length(along),
      width: length(width),
      turned,
    })),
    cuts: cuts.map(({ across, at, from, to }) => ({ across, at: length(at), from: length(from), to: length(to) })),
    offcuts: [...free, ...scrap]
      .sort((a, b) => areaOf(b) - areaOf(a))
      .map(({ x, y, length: along, width }) => ({
        x: length(x),
        y: length(y),
        length: length(along),
        width: length(width),
      })),
  };
}
