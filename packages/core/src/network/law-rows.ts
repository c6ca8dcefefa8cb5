import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { assign } from './column-arithmetic.js';
import type { Polynomials } from './compiled.js';
import { type LawProduct, lawProducts, type NumberedLaws } from './law-products.js';
import type { Part } from './polynomial-parts.js';
import { TERMS, timesSixthPower, weightedSum } from './weighted-sum.js';

/** What a sweep with elements over frequency, or with delays, works on. */
export interface LawNetwork extends NumberedLaws {
  readonly parts: readonly Part[];
  /** Those of the parts, followed by one polynomial that is zero. */
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
  // A law across the source is in no row. It is filled nevertheless, so that a bad number in it is told.
  if (products.length === 0) products.push({ laws: 0, delay: -1 });
  const { columns, slopes, fill, fillSlopes } = lawProducts(network, products, block);

  const lifted = complexColumn(width > TERMS ? block : 0);
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
    const none = { place: nothing, product: 0 };
    if (!added) assign(out, 0, frequencies.length);
    let factor = by;
    for (let first = 0; first < width; first += TERMS) {
      if (first > 0) {
        timesSixthPower(lifted, factor, frequencies, toUnit);
        factor = lifted;
      }
      for (let k = 0; k === 0 || k < multiplied.length; k += 2) {
        const [a, b] = [multiplied[k] ?? none, multiplied[k + 1] ?? none];
        const [x, y] = [columns[a.product], columns[b.product]] as [ComplexColumn, ComplexColumn];
        const p = k === 0 ? plain : nothing;
        weightedSum(out, factor, c, width, first, p, a.place, x, b.place, y, frequencies, toUnit);
      }
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
