import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import { addScaled } from './column-arithmetic.js';
import type { CompiledNetwork } from './compiled.js';
import { type LawNetwork, type LawRow, lawRows } from './law-rows.js';
import { invertColumn, ROUNDING } from './sweep.js';

/** Most frequencies at once. What does not depend on the probe is kept for the last of them. */
const BLOCK = 1024;

type LawSweep = Pick<CompiledNetwork, 'sweep' | 'slope'>;

/** Sweep and slope of a network whose polynomials are multiplied by elements over frequency, and turned by delays. */
export function lawSweep(network: LawNetwork): LawSweep {
  // A root finder asks for single frequencies between the sweeps of a grid. Each of the two keeps its own results.
  let one: LawSweep | undefined;
  let many: LawSweep | undefined;
  let room = 0;
  const by = ({ length }: Float64Array): LawSweep => {
    if (length === 1) {
      one ??= blockSweep(network, 1);
      return one;
    }
    const wanted = Math.min(length, BLOCK);
    if (many === undefined || room < wanted) {
      room = wanted;
      many = blockSweep(network, room);
    }
    return many;
  };
  return {
    sweep: (frequencies, out) => by(frequencies).sweep(frequencies, out),
    slope: (probe, frequencies, out) => by(frequencies).slope(probe, frequencies, out),
  };
}

/** The same, by blocks of at most `room` frequencies. */
function blockSweep(network: LawNetwork, room: number): LawSweep {
  const { values, polynomials } = network;
  const { rows, columns, fill, fillSlopes, fillRow, fillRowSlope } = lawRows(network, room);
  const denominator = rows[0] as LawRow;
  const [inverse, change, value, unit] = complexColumns(4, room) as readonly [
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
  ];
  unit.re.fill(1);

  const keptFrequencies = new Float64Array(room);
  const keptValues = new Float64Array(values.length);
  let kept = 0;
  let areSlopesKept = false;
  /** Products and the inverse of the denominator; made anew where a number or a frequency is another. Returns a place, or −1. */
  const prepare = (frequencies: Float64Array): number => {
    const count = frequencies.length;
    if (kept === count && beginsWith(keptFrequencies, frequencies) && beginsWith(keptValues, values)) return -1;
    kept = 0;
    areSlopesKept = false;
    fill(frequencies);
    fillRow(inverse, unit, denominator, frequencies);
    const stopped = cancelledAt(inverse, denominator, columns, polynomials, frequencies);
    if (stopped >= 0) return stopped;
    invertColumn(inverse, count);
    keptFrequencies.set(frequencies);
    keptValues.set(values);
    kept = count;
    return -1;
  };
  /** The slopes of the products, and of the logarithm of the denominator. */
  const prepareSlopes = (frequencies: Float64Array) => {
    if (areSlopesKept) return;
    fillSlopes(frequencies);
    fillRowSlope(change, inverse, denominator, frequencies);
    areSlopesKept = true;
  };

  const inBlocks = (frequencies: Float64Array, each: (block: Float64Array, offset: number) => void): number => {
    for (let offset = 0; offset < frequencies.length; offset += room) {
      const block = frequencies.length > room ? frequencies.subarray(offset, offset + room) : frequencies;
      const stopped = prepare(block);
      if (stopped >= 0) return offset + stopped;
      each(block, offset);
    }
    return -1;
  };
  const from = (column: ComplexColumn, offset: number): ComplexColumn =>
    offset === 0 ? column : { re: column.re.subarray(offset), im: column.im.subarray(offset) };
  return {
    sweep: (frequencies, out) =>
      inBlocks(frequencies, (block, offset) => {
        for (let k = 0; k < out.length; k++) {
          fillRow(from(out[k] as ComplexColumn, offset), inverse, rows[1 + k] as LawRow, block);
        }
      }),
    slope: (probe, frequencies, out) =>
      inBlocks(frequencies, (block, offset) => {
        const column = from(out, offset);
        const row = rows[1 + probe] as LawRow;
        prepareSlopes(block);
        // N′/N − D′/D
        fillRow(value, unit, row, block);
        invertColumn(value, block.length);
        fillRowSlope(column, value, row, block);
        addScaled(column, change, -1, block.length, 0);
      }),
  };
}

/** Whether a list begins with the numbers of another. */
function beginsWith(list: Float64Array, other: Float64Array): boolean {
  for (let i = 0; i < other.length; i++) if (list[i] !== other[i]) return false;
  return true;
}

/** The first frequency at which the terms of a row cancel to the last bits, or −1. */
function cancelledAt(
  column: ComplexColumn,
  { plain, multiplied }: LawRow,
  products: readonly ComplexColumn[],
  { coefficients, width, scale }: LawNetwork['polynomials'],
  frequencies: Float64Array,
): number {
  const sizeAt = ({ re, im }: ComplexColumn, i: number) => Math.abs(re[i]!) + Math.abs(im[i]!);
  for (let i = 0; i < frequencies.length; i++) {
    const w = (2 * Math.PI * frequencies[i]!) / scale;
    const sizeOf = (place: number) => {
      let size = 0;
      for (let k = width - 1; k >= 0; k--) size = size * w + Math.abs(coefficients[place + k]!);
      return size;
    };
    let terms = sizeOf(plain);
    for (const { place, product } of multiplied) terms += sizeOf(place) * sizeAt(products[product] as ComplexColumn, i);
    if (!(sizeAt(column, i) > ROUNDING * terms)) return i;
  }
  return -1;
}
