import type { ComplexColumn } from '../numeric/index.js';
import { solveComplexFactored } from '../numeric/index.js';
import { invert, multiply, negate, subtractProduct } from './column-arithmetic.js';
import { dense, factorDense } from './dense.js';
import type { Network } from './element.js';
import { elimination } from './elimination.js';
import { equations, type Listed, type Stamp, symbolValue } from './equations.js';
import { fillListed, type ListedColumns, listedColumns } from './listed-columns.js';
import { readingOf } from './reading.js';
import { contradiction, refuseBadNetwork } from './refusals.js';

/**
 * Elimination plan: any network, solved over frequency with guarded pivots.
 *
 * Fills a column for each probe, per volt of drive. Where no pivot is left, at a resonance that nothing damps,
 * it stops and returns that index; else −1. Writes into columns handed in and allocates nothing per frequency.
 */
export interface Plan {
  readonly probes: readonly string[];
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => number;
}

/** Frequencies solved at once: their matrices stay in the cache, and each operation is a loop over them. */
const BLOCK = 64;
/** A guarded pivot this much smaller than what it was summed from has lost too many digits. */
const LOST = 1e-4;
/** Below this relative pivot a dense solution has no digit left: nothing damps the network there. */
const SINGULAR = 1e-14;

/**
 * Prepares the elimination of a network, distributed and frequency-dependent elements included. The order of pivots is
 * fixed once; all operations run over blocks of frequencies. Where a pivot that is a sum nearly vanishes (the node of a
 * lossless box at its tuning), that frequency alone is solved again with row exchanges. A second road to the same numbers
 * as `compileTopology`.
 *
 * @validity any network with a way to ground for each node
 * @neglects nothing
 * @throws InputError for a network without meaning, or whose equations cannot be solved whatever its values are
 * @returns the plan
 * @source desoer1969 (nodal analysis)
 * @check network.plan
 * @example compilePlan(network).sweep(frequencies, columns) // -1: solved at all of them
 */
export function compilePlan(network: Network): Plan {
  refuseBadNetwork(network);
  const { elements } = network;
  const system = equations(network);
  const { size, stamps, driven } = system;
  const order = elimination(size, stamps);
  if (order === undefined) throw contradiction(network);
  const { entries, place, steps } = order;
  const values = Float64Array.from(elements, symbolValue);
  const probes = Object.entries(network.probes).map(([name, probe]) => ({
    name,
    ...readingOf(network, system, probe),
  }));

  const re = new Float64Array(entries.length * BLOCK);
  const im = new Float64Array(entries.length * BLOCK);
  const xr = new Float64Array(size * BLOCK);
  const xi = new Float64Array(size * BLOCK);
  /** What a guarded pivot was summed from, and the frequencies at which it lost too much. */
  const guards = new Map(steps.filter((step) => step.guarded).map((step) => [step.pivot, new Float64Array(BLOCK)]));
  const summed = entries.map((_, entry) => guards.get(entry));
  const lost = new Uint8Array(BLOCK);
  const part = new Float64Array(BLOCK);
  const listed = elements.map((element) => listedColumns(element, BLOCK));
  const one = dense(size);
  const bRe = new Float64Array(size);
  const bIm = new Float64Array(size);

  const lumped = lumpedEntries(entries.length, stamps, place, values);
  const tabled = stamps.flatMap((stamp, k) =>
    stamp.listed === undefined ? [] : [{ ...stamp, entry: place[k] as number }],
  );
  const omega = new Float64Array(BLOCK);
  const inverse = new Float64Array(BLOCK);

  const fill = (frequencies: Float64Array, count: number) => {
    re.fill(0);
    im.fill(0);
    xr.fill(0);
    xi.fill(0);
    lost.fill(0);
    for (let i = 0; i < count; i++) {
      omega[i] = 2 * Math.PI * (frequencies[i] as number);
      inverse[i] = 1 / (omega[i] as number);
    }
    for (const sum of guards.values()) sum.fill(0);
    for (const { entry, constant, rising, falling, sizes } of lumped) {
      const at = entry * BLOCK;
      for (let i = 0; i < count; i++) {
        re[at + i] = constant;
        im[at + i] = rising * (omega[i] as number) - falling * (inverse[i] as number);
      }
      const sum = summed[entry];
      if (sum === undefined) continue;
      const [a, b, c] = sizes;
      for (let i = 0; i < count; i++) sum[i] = a + b * (omega[i] as number) + c * (inverse[i] as number);
    }
    for (const { entry, sign, symbol, listed: corner } of tabled) {
      const at = entry * BLOCK;
      const table = (listed[symbol] as ListedColumns)[corner as Listed] as ComplexColumn;
      const sum = summed[entry];
      for (let i = 0; i < count; i++) {
        const a = table.re[i] as number;
        const b = table.im[i] as number;
        (re[at + i] as number) += sign * a;
        (im[at + i] as number) += sign * b;
        if (sum !== undefined) (sum[i] as number) += Math.abs(a) + Math.abs(b);
      }
    }
    for (const row of driven) xr.fill(1, row * BLOCK, row * BLOCK + count);
  };

  // Where the right side is still nothing it stays so: only rows below a driven one take part.
  const reached = new Set(driven);
  const carries = steps.map(({ row, rows }) => {
    if (reached.has(row)) for (const { row: other } of rows) reached.add(other);
    return reached.has(row);
  });

  const eliminate = (count: number) => {
    for (let k = 0; k < steps.length; k++) {
      const { row, pivot, guarded, unit, rows } = steps[k] as (typeof steps)[number];
      const p = pivot * BLOCK;
      if (guarded) guard(pivot, count);
      if (unit === 0) invert(re, im, p, count);
      for (const { factor, row: other, updates } of rows) {
        const f = factor * BLOCK;
        if (unit === 0) multiply(re, im, f, re, im, p, count);
        else if (unit === -1) negate(re, im, f, count);
        for (const [target, source] of updates) subtract(target, f, source * BLOCK, count);
        if (carries[k]) subtractProduct(xr, xi, other * BLOCK, re, im, f, xr, xi, row * BLOCK, count);
      }
    }
  };
  /** Marks the frequencies at which a pivot lost too many digits; they go on with a 1 and are solved again. */
  const guard = (pivot: number, count: number) => {
    const at = pivot * BLOCK;
    const sum = summed[pivot] as Float64Array;
    for (let i = 0; i < count; i++) {
      const left = Math.abs(re[at + i] as number) + Math.abs(im[at + i] as number);
      if (left > LOST * (sum[i] as number)) continue;
      lost[i] = 1;
      re[at + i] = 1;
      im[at + i] = 0;
    }
  };
  const subtract = (target: number, f: number, source: number, count: number) => {
    const sum = summed[target];
    const t = target * BLOCK;
    if (sum !== undefined) {
      for (let i = 0; i < count; i++) {
        const size = Math.abs(re[f + i] as number) + Math.abs(im[f + i] as number);
        part[i] = size * (Math.abs(re[source + i] as number) + Math.abs(im[source + i] as number));
      }
      for (let i = 0; i < count; i++) (sum[i] as number) += part[i] as number;
    }
    subtractProduct(re, im, t, re, im, f, re, im, source, count);
  };

  /** The right side becomes the solution: the unknown of a step stands where its row stood, and moves to its column. */
  const substitute = (count: number) => {
    for (let k = steps.length - 1; k >= 0; k--) {
      const { row, pivot, unit, rest } = steps[k] as (typeof steps)[number];
      for (const { entry, column } of rest) {
        const solved = (rowOf[column] as number) * BLOCK;
        subtractProduct(xr, xi, row * BLOCK, re, im, entry * BLOCK, xr, xi, solved, count);
      }
      if (unit === 0) multiply(xr, xi, row * BLOCK, re, im, pivot * BLOCK, count);
      else if (unit === -1) negate(xr, xi, row * BLOCK, count);
    }
  };
  const rowOf = new Int32Array(size);
  for (const { row, column } of steps) rowOf[column] = row;

  /** Solves the frequencies that lost digits again, with row exchanges. Returns the first that has no solution, or −1. */
  const again = (frequencies: Float64Array, count: number): number => {
    for (let i = 0; i < count; i++) {
      if (lost[i] === 0) continue;
      if (factorDense(system, values, listed, i, frequencies[i] as number, one) < SINGULAR) return i;
      bRe.fill(0);
      bIm.fill(0);
      for (const row of driven) bRe[row] = one.rowScale[row] as number;
      solveComplexFactored(size, one.re, one.im, one.exchanges, bRe, bIm, 1);
      for (let unknown = 0; unknown < size; unknown++) {
        xr[(rowOf[unknown] as number) * BLOCK + i] = bRe[unknown] as number;
        xi[(rowOf[unknown] as number) * BLOCK + i] = bIm[unknown] as number;
      }
    }
    return -1;
  };

  const read = (frequencies: Float64Array, count: number, out: readonly ComplexColumn[], offset: number) => {
    for (let p = 0; p < probes.length; p++) {
      const { plus, minus, symbol, power, factor } = probes[p] as (typeof probes)[number];
      const table = symbol < 0 ? undefined : listed[symbol]?.Y;
      const weight = symbol < 0 || table !== undefined ? factor : factor * (values[symbol] as number);
      const u = plus < 0 ? -1 : (rowOf[plus] as number) * BLOCK;
      const v = minus < 0 ? -1 : (rowOf[minus] as number) * BLOCK;
      const { re: toRe, im: toIm } = out[p] as ComplexColumn;
      for (let i = 0; i < count; i++) {
        const a = weight * ((u < 0 ? 0 : (xr[u + i] as number)) - (v < 0 ? 0 : (xr[v + i] as number)));
        const b = weight * ((u < 0 ? 0 : (xi[u + i] as number)) - (v < 0 ? 0 : (xi[v + i] as number)));
        const w = 2 * Math.PI * (frequencies[i] as number);
        const c = table !== undefined ? (table.re[i] as number) : power === 0 ? 1 : 0;
        const d = table !== undefined ? (table.im[i] as number) : power === 0 ? 0 : power === 1 ? w : -1 / w;
        toRe[offset + i] = a * c - b * d;
        toIm[offset + i] = a * d + b * c;
      }
    }
  };

  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const block = frequencies.subarray(offset, offset + BLOCK);
      const count = block.length;
      elements.forEach((element, symbol) => {
        const columns = listed[symbol];
        if (columns !== undefined) fillListed(element, block, columns);
      });
      fill(block, count);
      eliminate(count);
      substitute(count);
      const stopped = again(block, count);
      read(block, stopped < 0 ? count : stopped, out, offset);
      if (stopped >= 0) return offset + stopped;
    }
    return -1;
  };
  return { probes: probes.map((probe) => probe.name), sweep };
}

/** What the lumped stamps of an entry add up to: constant + rising ω j − falling j/ω, and the sizes of what was summed. */
function lumpedEntries(count: number, stamps: readonly Stamp[], place: readonly number[], values: Float64Array) {
  const sums = Array.from({ length: count }, (_, entry) => ({
    entry,
    constant: 0,
    rising: 0,
    falling: 0,
    sizes: [0, 0, 0] as [number, number, number],
  }));
  stamps.forEach(({ sign, symbol, power, listed }, k) => {
    if (listed !== undefined) return;
    const sum = sums[place[k] as number] as (typeof sums)[number];
    const value = symbol < 0 ? sign : sign * (values[symbol] as number);
    sum[power === 0 ? 'constant' : power === 1 ? 'rising' : 'falling'] += value;
    (sum.sizes[power === -1 ? 2 : power] as number) += Math.abs(value);
  });
  return sums.filter(({ sizes }) => sizes.some((size) => size > 0));
}
