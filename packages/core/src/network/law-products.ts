import { type ComplexColumn, complexColumn, complexColumns } from '../numeric/index.js';
import { addScaled, assign, multiply } from './column-arithmetic.js';
import type { Law, Topology } from './element.js';
import { fillLaw, fillLawSlope } from './law-column.js';
import { turnByDelay } from './reading.js';
import type { Slots } from './slots.js';

/** The elements over frequency of a network, with its numbers. */
export interface NumberedLaws {
  readonly topology: Topology;
  readonly slots: Slots;
  /** Places of the elements over frequency. */
  readonly laws: readonly number[];
  readonly values: Float64Array;
  readonly numbers: Float64Array;
}

/** A product of laws, given as bits, and of the phase of a delay, whose slot may be −1 for none. */
export interface LawProduct {
  readonly laws: number;
  readonly delay: number;
}

/** Columns of products of laws and delays, one for each product, and of their slopes by ln f. */
export interface LawProducts {
  readonly columns: readonly ComplexColumn[];
  /** Room for the slopes is made when they are first filled. */
  readonly slopes: () => readonly ComplexColumn[];
  readonly fill: (frequencies: Float64Array) => void;
  /** Fills the slopes, at frequencies for which the products are filled. */
  readonly fillSlopes: (frequencies: Float64Array) => void;
}

export function lawProducts(
  { topology, slots, laws, values, numbers }: NumberedLaws,
  products: readonly LawProduct[],
  block: number,
): LawProducts {
  const room = (list: readonly unknown[]) => complexColumns(list.length, block);
  const [own, columns] = [room(laws), room(products)];
  let ownSlopes: readonly ComplexColumn[] = [];
  let slopes: readonly ComplexColumn[] = [];
  const turned = complexColumn(block);

  /** The laws themselves, or their slopes; nothing of a law that the reference leaves out. */
  const fillEach = (fillOne: typeof fillLaw, out: readonly ComplexColumn[], frequencies: Float64Array) => {
    laws.forEach((law, k) => {
      const column = out[k] as ComplexColumn;
      if (numbers[law] === 0) assign(column, 0, frequencies.length);
      else fillOne(topology.elements[law] as Law, values, slots, frequencies, column);
    });
  };
  /** column ← column × each law of a product but one, and turned by its delay. */
  const timesLaws = (
    column: ComplexColumn,
    { laws: bits, delay }: LawProduct,
    but: number,
    frequencies: Float64Array,
  ) => {
    own.forEach((law, k) => {
      if (k !== but && bits & (1 << k)) multiply(column, column, law, frequencies.length);
    });
    if (delay >= 0) turnByDelay(column, frequencies, values[delay]!);
  };

  const fill = (frequencies: Float64Array) => {
    fillEach(fillLaw, own, frequencies);
    products.forEach((product, p) => {
      const column = columns[p] as ComplexColumn;
      assign(column, 1, frequencies.length);
      timesLaws(column, product, -1, frequencies);
    });
  };
  /** Each law is differentiated in turn, then the phase. */
  const fillSlopes = (frequencies: Float64Array) => {
    const count = frequencies.length;
    if (slopes.length === 0) [ownSlopes, slopes] = [room(laws), room(products)];
    fillEach(fillLawSlope, ownSlopes, frequencies);
    products.forEach((product, p) => {
      const { re, im } = columns[p] as ComplexColumn;
      const slope = slopes[p] as ComplexColumn;
      assign(slope, 0, count);
      ownSlopes.forEach((change, k) => {
        if (!(product.laws & (1 << k))) return;
        assign(turned, change, count);
        timesLaws(turned, product, k, frequencies);
        addScaled(slope, turned, 1, count, 0);
      });
      if (product.delay < 0) return;
      for (let i = 0; i < count; i++) {
        const angle = 2 * Math.PI * frequencies[i]! * values[product.delay]!;
        slope.re[i]! += angle * im[i]!;
        slope.im[i]! -= angle * re[i]!;
      }
    });
  };
  return { columns, slopes: () => slopes, fill, fillSlopes };
}
