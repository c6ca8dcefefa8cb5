import type { Impossible, Reason } from '@airspring/core/fault';
import { type Area, format, type Length, NANOMETRE, si } from '@airspring/core/quantity';
import { joined, reasonOf, told } from '../words/told.js';
import type { Filling } from './guillotine.js';
import { type Nest, type NestInput, type Part, readNest, type Sheet } from './nest-input.js';
import { areaOf, bestFillings, isInside } from './sheet-fillings.js';

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
  const fillings = bestFillings(read);
  const used = parts.reduce((sum, part) => sum + areaOf(part), 0);
  if (fillings === undefined) {
    const text = `The parts have ${format('area', used, 'm²')} and do not all find a place on the sheets that there are. Get more sheets.`;
    return { ok: false, because: [{ code: 'sheets-run-out', text }] };
  }
  const area = fillings.reduce((sum, { size }) => sum + areaOf(sheets[size]!), 0);
  const largest = Math.max(...sheets.map((sheet) => (sheet.length - 2 * trim) * (sheet.width - 2 * trim)));
  return {
    ok: true,
    sheets: fillings.map((filling) => nestedSheet(read, filling)),
    kerf,
    trim,
    usedArea: si('area', used),
    sheetArea: si('area', area),
    waste: 1 - used / area,
    sheetsAtLeast: Math.ceil(used / largest - 1e-9),
  };
}

function reasonsOf(tooLarge: readonly Part[], sheets: readonly Sheet[], trim: number): Reason[] {
  // Equal parts are told together.
  const alike = new Map<string, { readonly part: Part; readonly names: Set<string> }>();
  for (const part of tooLarge) {
    const key = JSON.stringify([Math.round(part.length / NANOMETRE), Math.round(part.width / NANOMETRE), part.grained]);
    const same = alike.get(key) ?? { part, names: new Set() };
    alike.set(key, { ...same, names: same.names.add(part.name) });
  }
  return [...alike.values()].map(({ part: { length, width, grained }, names }) => {
    const name = [...names].join(', ').replace(/, (?=[^,]*$)/, ' and ');
    const could = !grained || sheets.every((sheet) => !isInside({ name, length, width, grained: false }, sheet, trim));
    const list = sheets.map((sheet) => told`${sheet.length - 2 * trim} by ${sheet.width - 2 * trim}`);
    const [are, fit] = names.size > 1 ? ['are each', 'fit'] : ['is', 'fits'];
    const why = could ? `and ${fit} no sheet` : 'and would fit a sheet only across the grain';
    const words = told`${name} ${are} ${length} by ${width} ${why} (${trim > 0 ? 'trimmed to ' : ''}${joined(list, ', ')}).`;
    return reasonOf('part-larger-than-sheet', words, 4);
  });
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
