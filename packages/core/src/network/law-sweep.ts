import { type ComplexColumn, complexColumn, polynomialColumnOnImaginaryAxis } from '../numeric/index.js';
import { addScaled, assign, multiply } from './column-arithmetic.js';
import type { CompiledNetwork, Polynomials } from './compiled.js';
import type { Element, Topology } from './element.js';
import { fillLaw, fillLawSlope } from './listed-columns.js';
import type { Part } from './polynomial-parts.js';
import { type ProbeRow, turnByDelay } from './reading.js';
import type { Slots } from './slots.js';
import { invertColumn } from './sweep.js';

/** What a sweep with elements over frequency, or with delays, works on. */
export interface LawSweepInput {
  readonly topology: Topology;
  readonly slots: Slots;
  /** Places of the elements over frequency. */
  readonly laws: readonly number[];
  readonly parts: readonly Part[];
  readonly rows: readonly ProbeRow[];
  readonly values: Float64Array;
  readonly numbers: Float64Array;
  readonly polynomials: Polynomials;
}

/** Frequencies at once: columns of them stay in the cache. */
const BLOCK = 256;
/** What is left of a denominator this much smaller than its terms is rounding. */
const ROUNDING = 8 * Number.EPSILON;

/** Sweep and slope of a network whose polynomials are multiplied by elements over frequency, and turned by delays. */
export function lawSweep(input: LawSweepInput): Pick<CompiledNetwork, 'sweep' | 'slope'> {
  const { topology, slots, laws, parts, rows, values, numbers, polynomials } = input;
  const { coefficients, width, scale } = polynomials;
  const unit = (2 * Math.PI) / scale;
  const masks = [...new Set(parts.map((part) => part.laws))].filter((mask) => mask > 0);
  const lawColumns = laws.map(() => complexColumn(BLOCK));
  const lawSlopes = laws.map(() => complexColumn(BLOCK));
  const products = new Map(masks.map((mask) => [mask, complexColumn(BLOCK)]));
  const changes = new Map(masks.map((mask) => [mask, complexColumn(BLOCK)]));
  const [part, change, turned, inverse, denominatorSlope] = [0, 0, 0, 0, 0].map(() => complexColumn(BLOCK)) as [
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
  ];
  const sizes = new Float64Array(BLOCK);
  const derived = new Float64Array(width);
  const own = parts.map((_, k) => coefficients.subarray(k * width, (k + 1) * width));
  const partsOf = Array.from({ length: rows.length + 1 }, (_, row) =>
    [...parts.keys()].filter((k) => (parts[k] as Part).row === row),
  );

  /** Laws and their products at these frequencies. */
  const loadLaws = (frequencies: Float64Array) => {
    const count = frequencies.length;
    laws.forEach((law, k) => {
      const column = lawColumns[k] as ComplexColumn;
      if (numbers[law] === 0) assign(column, 0, count);
      else fillLaw(topology.elements[law] as Element, values, slots, frequencies, column);
    });
    for (const [mask, product] of products) {
      assign(product, 1, count);
      laws.forEach((_, k) => {
        if (mask & (1 << k)) multiply(product, product, lawColumns[k] as ComplexColumn, count);
      });
    }
  };
  /** d/dln f of the products: each law differentiated in turn. */
  const loadLawSlopes = (frequencies: Float64Array) => {
    const count = frequencies.length;
    laws.forEach((law, k) => {
      const column = lawSlopes[k] as ComplexColumn;
      if (numbers[law] === 0) assign(column, 0, count);
      else fillLawSlope(topology.elements[law] as Element, values, slots, frequencies, column);
    });
    for (const [mask, product] of changes) {
      assign(product, 0, count);
      laws.forEach((_, k) => {
        if (!(mask & (1 << k))) return;
        assign(turned, lawSlopes[k] as ComplexColumn, count);
        laws.forEach((_, other) => {
          if (other !== k && mask & (1 << other)) multiply(turned, turned, lawColumns[other] as ComplexColumn, count);
        });
        addScaled(product, turned, 1, count, 0);
      });
    }
  };
  /** A part at these frequencies, its laws and its delay included, into `part`. */
  const fillPart = (k: number, frequencies: Float64Array) => {
    const { laws: mask, delay } = parts[k] as Part;
    polynomialColumnOnImaginaryAxis(own[k] as Float64Array, frequencies, part.re, part.im, unit);
    if (mask > 0) multiply(part, part, products.get(mask) as ComplexColumn, frequencies.length);
    if (delay >= 0) turnByDelay(part, frequencies, values[delay]!);
  };
  /** The same differentiated by ln f, into `change`. */
  const fillPartSlope = (k: number, frequencies: Float64Array) => {
    const { laws: mask, delay } = parts[k] as Part;
    const polynomial = own[k] as Float64Array;
    const count = frequencies.length;
    for (let n = 0; n < width; n++) derived[n] = n * polynomial[n]!;
    polynomialColumnOnImaginaryAxis(derived, frequencies, change.re, change.im, unit);
    if (mask > 0) {
      multiply(change, change, products.get(mask) as ComplexColumn, count);
      polynomialColumnOnImaginaryAxis(polynomial, frequencies, turned.re, turned.im, unit);
      multiply(turned, turned, changes.get(mask) as ComplexColumn, count);
      addScaled(change, turned, 1, count, 0);
    }
    if (delay < 0) return;
    turnByDelay(change, frequencies, values[delay]!);
    fillPart(k, frequencies);
    for (let i = 0; i < count; i++) {
      const angle = 2 * Math.PI * frequencies[i]! * values[delay]!;
      change.re[i]! += angle * part.im[i]!;
      change.im[i]! -= angle * part.re[i]!;
    }
  };
  const sumOf = (row: number, frequencies: Float64Array, out: ComplexColumn) => {
    assign(out, 0, frequencies.length);
    for (const k of partsOf[row] as number[]) {
      fillPart(k, frequencies);
      addScaled(out, part, 1, frequencies.length, 0);
    }
  };
  const slopeOf = (row: number, frequencies: Float64Array, out: ComplexColumn) => {
    assign(out, 0, frequencies.length);
    for (const k of partsOf[row] as number[]) {
      fillPartSlope(k, frequencies);
      addScaled(out, change, 1, frequencies.length, 0);
    }
  };
  /** The inverse of the denominator; the first place at which its terms cancel to the last bits, or −1. */
  const invert = (frequencies: Float64Array): number => {
    const count = frequencies.length;
    assign(inverse, 0, count);
    sizes.fill(0);
    for (const k of partsOf[0] as number[]) {
      fillPart(k, frequencies);
      const polynomial = own[k] as Float64Array;
      const product = products.get((parts[k] as Part).laws);
      for (let i = 0; i < count; i++) {
        const w = frequencies[i]! * unit;
        let size = 0;
        for (let n = width - 1; n >= 0; n--) size = size * w + Math.abs(polynomial[n]!);
        const by = product === undefined ? 1 : Math.abs(product.re[i]!) + Math.abs(product.im[i]!);
        sizes[i]! += size * by;
        inverse.re[i]! += part.re[i]!;
        inverse.im[i]! += part.im[i]!;
      }
    }
    for (let i = 0; i < count; i++) {
      const size = Math.abs(inverse.re[i]!) + Math.abs(inverse.im[i]!);
      if (!(size > ROUNDING * sizes[i]!)) return i;
    }
    invertColumn(inverse, count);
    return -1;
  };

  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const block = frequencies.subarray(offset, offset + BLOCK);
      loadLaws(block);
      const stopped = invert(block);
      if (stopped >= 0) return offset + stopped;
      for (let row = 1; row <= out.length; row++) {
        const { re, im } = out[row - 1] as ComplexColumn;
        const column = { re: re.subarray(offset), im: im.subarray(offset) };
        sumOf(row, block, column);
        multiply(column, column, inverse, block.length);
      }
    }
    return -1;
  };

  const slope = (probe: number, frequencies: Float64Array, out: ComplexColumn): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const block = frequencies.subarray(offset, offset + BLOCK);
      const column = { re: out.re.subarray(offset), im: out.im.subarray(offset) };
      const count = block.length;
      loadLaws(block);
      loadLawSlopes(block);
      const stopped = invert(block);
      if (stopped >= 0) return offset + stopped;
      slopeOf(0, block, denominatorSlope);
      multiply(denominatorSlope, denominatorSlope, inverse, count);
      // N′/N − D′/D, with the inverse of N where that of D was.
      sumOf(1 + probe, block, inverse);
      invertColumn(inverse, count);
      slopeOf(1 + probe, block, column);
      multiply(column, column, inverse, count);
      addScaled(column, denominatorSlope, -1, count, 0);
    }
    return -1;
  };
  return { sweep, slope };
}
