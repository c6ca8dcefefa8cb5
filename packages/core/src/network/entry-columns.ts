import type { ComplexColumn } from '../numeric/index.js';
import type { Factor } from './column-arithmetic.js';
import type { TakeColumn } from './column-room.js';
import { type Entry, isConstant } from './entry.js';
import type { ListedColumns } from './listed-columns.js';

/** The entries of an elimination as factors: those that are asked for, over a block of frequencies. */
export interface EntryColumns {
  /** An entry: one number where it is that at every frequency, else its column. */
  readonly factorOf: (index: number) => Factor;
  /** Room for the sizes of what an entry is summed from. */
  readonly sizesOf: (index: number) => Float64Array;
  /** Fills all columns and sizes that were asked for. */
  readonly fill: (frequencies: Float64Array, listed: readonly (ListedColumns | undefined)[]) => void;
}

export function entryColumns(entries: readonly Entry[], block: number, take: TakeColumn): EntryColumns {
  const columns = new Map<number, ComplexColumn>();
  const sizes = new Map<number, Float64Array>();
  const omega = new Float64Array(block);
  const inverse = new Float64Array(block);

  const factorOf = (index: number): Factor => {
    const entry = entries[index] as Entry;
    if (!entry.swept && isConstant(entry)) return entry.constant;
    const column = columns.get(index) ?? take();
    columns.set(index, column);
    return column;
  };
  const sizesOf = (index: number): Float64Array => {
    const column = sizes.get(index) ?? take().re;
    sizes.set(index, column);
    return column;
  };

  const fill = (frequencies: Float64Array, listed: readonly (ListedColumns | undefined)[]) => {
    const count = frequencies.length;
    for (let i = 0; i < count; i++) {
      omega[i] = 2 * Math.PI * frequencies[i]!;
      inverse[i] = 1 / omega[i]!;
    }
    for (const [index, { re, im }] of columns) {
      const { constant, rising, falling, listed: terms } = entries[index] as Entry;
      re.fill(constant, 0, count);
      if (rising === 0 && falling === 0) im.fill(0, 0, count);
      else for (let i = 0; i < count; i++) im[i] = rising * omega[i]! - falling * inverse[i]!;
      for (const { weight, symbol, corner } of terms) {
        const table = (listed[symbol] as ListedColumns)[corner] as ComplexColumn;
        for (let i = 0; i < count; i++) {
          re[i]! += weight * table.re[i]!;
          im[i]! += weight * table.im[i]!;
        }
      }
    }
    for (const [index, sum] of sizes) {
      const [a, b, c] = (entries[index] as Entry).sizes;
      for (let i = 0; i < count; i++) sum[i] = a + b * omega[i]! + c * inverse[i]!;
      for (const { weight, symbol, corner } of (entries[index] as Entry).listed) {
        const table = (listed[symbol] as ListedColumns)[corner] as ComplexColumn;
        for (let i = 0; i < count; i++) sum[i]! += Math.abs(weight) * (Math.abs(table.re[i]!) + Math.abs(table.im[i]!));
      }
    }
  };
  return { factorOf, sizesOf, fill };
}
