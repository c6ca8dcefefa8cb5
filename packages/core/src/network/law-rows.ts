import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { addScaled } from './column-arithmetic.js';
import type { Polynomials } from './compiled.js';
import { type LawProduct, lawProducts, type NumberedLaws } from './law-products.js';
import type { Part } from './polynomial-parts.js';
import { sumOfThree, sumOfTwo } from './weighted-sum.js';

/** What a sweep with elements over frequency, or with delays, works on. */
export interface LawNetwork extends NumberedLaws {
  readonly parts: readonly Part[];
  /** After those of the parts stands one polynomial that is nothing. */
  readonly polynomials: Polynomials;
}

/** One polynomial of a row, by the place of its coefficients, and what it is multiplied by. */
export interface Multiplied {
  readonly place: number;
  readonly product: number;
}

/** A row: its plain polynomial, and those that are multiplied. */
export interface LawRow {
  readonly plain: number;
  readonly multiplied: readonly Multiplied[];
}

/** Rows as sums of polynomials times products of laws, over at most `block` frequencies. */
export function lawRows(network: LawNetwork, block: number) {
  const { parts, polynomials } = network;
  const { coefficients, width, scale } = polynomials;
  const toUnit = (2 * Math.PI) / scale;
  const nothing = parts.length * width;
  const products: LawProduct[] = [];
  const rows: { plain: number; multiplied: Multiplied[] }[] = [];
  parts.forEach(({ row, laws, delay }, k) => {
    rows[row] ??= { plain: nothing, multiplied: [] };
    const place = k * width;
    if (laws === 0 && delay < 0) {
      rows[row].plain = place;
      return;
    }
    const known = products.findIndex((product) => product.laws === laws && product.delay === delay);
    const product = known < 0 ? products.push({ laws, delay }) - 1 : known;
    rows[row].multiplied.push({ place, product });
  });
  const { columns, slopes, fill, fillSlopes } = lawProducts(network, products, block);
  const piece = complexColumn(block);

  /** out ← by × the sum of a row, with these coefficients and columns of products; or added to it. */
  const sum = (
    out: ComplexColumn,
    by: ComplexColumn,
    c: Float64Array,
    plain: number,
    multiplied: readonly Multiplied[],
    columns: readonly ComplexColumn[],
    frequencies: Float64Array,
    added: boolean,
  ) => {
    for (let at = 0; at === 0 || at < multiplied.length; at += 3) {
      const target = added || at > 0 ? piece : out;
      const places = [at > 0 ? nothing : plain];
      const factors: ComplexColumn[] = [];
      for (let k = at; k < at + 3; k++) {
        const { place, product } = multiplied[k] ?? { place: nothing, product: 0 };
        places.push(place);
        factors.push(columns[product] as ComplexColumn);
      }
      const kernel = width <= 6 && multiplied.length - at <= 2 ? sumOfTwo : sumOfThree;
      kernel(target, by, c, width, places, factors, frequencies, toUnit);
      if (target !== out) addScaled(out, target, 1, frequencies.length, 0);
    }
  };
  /** out ← by × a row. */
  const fillRow = (out: ComplexColumn, by: ComplexColumn, { plain, multiplied }: LawRow, frequencies: Float64Array) =>
    sum(out, by, coefficients, plain, multiplied, columns, frequencies, false);
  /** out ← by × a row differentiated by ln f: the polynomials, then what they are multiplied by. */
  const derived = new Float64Array(coefficients.length);
  const fillRowSlope = (
    out: ComplexColumn,
    by: ComplexColumn,
    { plain, multiplied }: LawRow,
    frequencies: Float64Array,
  ) => {
    const derive = (place: number) => {
      for (let k = 0; k < width; k++) derived[place + k] = k * coefficients[place + k]!;
    };
    derive(plain);
    for (const { place } of multiplied) derive(place);
    sum(out, by, derived, plain, multiplied, columns, frequencies, false);
    sum(out, by, coefficients, nothing, multiplied, slopes(), frequencies, true);
  };
  return { rows: rows as readonly LawRow[], columns, fill, fillSlopes, fillRow, fillRowSlope };
}
