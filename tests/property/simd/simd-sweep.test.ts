/** The kernel in WebAssembly gives the numbers of the kernel in TypeScript, to the last bit. */
import { compilePolynomials, type SweepRows, sweepRows, valuesOf } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { simdSweep } from '@airspring/core/simd';
import { expect } from 'vitest';
import { absurdSystemArbitrary, systemArbitrary } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { anyNetworkArbitrary } from '../../arbitrary/network.js';
import { fc, test } from '../../arbitrary/property.js';
import { answered } from '../answered.js';

const simd = simdSweep();

test('it runs here: else the kernel in TypeScript would be held against itself', () => {
  expect(simd.ok).toBe(true);
});

/** Every number of some columns; −0 and 0 differ, one NaN is like another. */
const bitsOf = (columns: readonly ComplexColumn[]): string =>
  columns.map(({ re, im }) => [...re, ...im].map((x) => (Object.is(x, -0) ? '-0' : String(x))).join()).join(';');

/** What a kernel returns, and the columns if it did not stop. */
function outcome(
  kernel: SweepRows,
  coefficients: Float64Array,
  width: number,
  scale: number,
  frequencies: Float64Array,
): readonly [stopped: number, bits: string] {
  const rows = coefficients.length / width - 1;
  const columns = Array.from({ length: rows + 1 }, () => complexColumn(frequencies.length));
  const [work, ...out] = columns as [ComplexColumn, ...ComplexColumn[]];
  const stopped = kernel(coefficients, width, scale, frequencies, out, work);
  return [stopped, stopped < 0 ? bitsOf(columns) : ''];
}

/** Numbers from the smallest subnormal numbers to those whose squares overflow, and zeros of both signs. */
const coefficient = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: -2, max: 2, noNaN: true }) },
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, Number.MIN_VALUE, 1e-310, -1e300, Number.MAX_VALUE),
);
const frequency = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: 1, max: 1e4, noNaN: true }) },
  fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }),
);

test.prop(
  [
    // Both sides of six, eight and 32 terms; none to five rows.
    fc.integer({ min: 1, max: 34 }),
    fc.integer({ min: 0, max: 5 }),
    fc.infiniteStream(coefficient),
    fc.array(frequency, { minLength: 31, maxLength: 70 }),
    fc.constantFrom(0.1, 1, 200 * Math.PI),
    // Where squares of sums leave double precision at one end or the other.
    fc.constantFrom(1, 1e-320, 1e-160, 1e-150, 1e140, 1e154),
  ],
  { numRuns: 2 * fuzzRuns },
)('of any polynomials at any frequencies', (width, rows, stream, list, scale, size) => {
  const coefficients = Float64Array.from([...stream.take((1 + rows) * width)], (c) => c * size);
  const frequencies = Float64Array.from(list);
  const ours = outcome(sweepRows, coefficients, width, scale, frequencies);
  expect(outcome(simd.sweepRows, coefficients, width, scale, frequencies)).toEqual(ours);
});

test.each([32, 33, 1023, 1024, 1025, 2048, 3001])('over %i frequencies, in blocks of 1024', (count) => {
  const frequencies = Float64Array.from({ length: count }, (_, i) => 10 * 1.002 ** i);
  for (const width of [3, 6, 8, 11]) {
    const coefficients = Float64Array.from({ length: 4 * width }, (_, k) => 1 + ((k * Math.E) % 1));
    const ours = outcome(sweepRows, coefficients, width, 628, frequencies);
    expect(ours[0]).toBe(-1);
    expect(outcome(simd.sweepRows, coefficients, width, 628, frequencies)).toEqual(ours);
  }
});

test.each([0, 1, 31, 1023, 1024, 1500, 2047])('it stops where nothing damps the network: at place %i', (place) => {
  // 1 + s² vanishes at ω = 1.
  const frequencies = Float64Array.from({ length: 2048 }, (_, i) => (1 + (i - place) * 1e-4) / (2 * Math.PI));
  for (const width of [3, 9]) {
    const coefficients = new Float64Array(2 * width);
    coefficients.set([1, 0, 1]);
    expect(outcome(sweepRows, coefficients, width, 1, frequencies)[0]).toBe(place);
    expect(outcome(simd.sweepRows, coefficients, width, 1, frequencies)[0]).toBe(place);
  }
});

test('an odd number of frequencies after an even one: what stood in memory does not count', () => {
  const coefficients = Float64Array.of(1, 0, 1, 1, 1, 1);
  const frequencies = Float64Array.from({ length: 34 }, (_, i) => (34 - i) / (2 * Math.PI));
  expect(outcome(simd.sweepRows, coefficients, 3, 1, frequencies)[0]).toBe(33);
  const fewer = frequencies.subarray(0, 33);
  expect(outcome(simd.sweepRows, coefficients, 3, 1, fewer)).toEqual(outcome(sweepRows, coefficients, 3, 1, fewer));
});

const grid = Float64Array.from({ length: 81 }, (_, i) => 5 * 1.09 ** i);

test.prop([fc.oneof(systemArbitrary, absurdSystemArbitrary)], { numRuns: fuzzRuns })(
  'of closed and vented boxes, by the way in which they compile their networks',
  ({ network, compile }) => {
    const [ours, theirs] = [sweepRows, simd.sweepRows].map((kernel) => {
      const compiled = compile(network.topology, kernel)!;
      const columns = compiled.probes.map(() => complexColumn(grid.length));
      const stopped = compiled.network(valuesOf(compiled.slots, network.values)).sweep(grid, columns);
      return [stopped, stopped < 0 ? bitsOf(columns) : ''];
    });
    expect(theirs).toEqual(ours);
  },
);

test.prop([anyNetworkArbitrary], { numRuns: fuzzRuns })('of any network that has polynomials', (network) => {
  answered(() => {
    const [ours, theirs] = [sweepRows, simd.sweepRows].map((kernel) => {
      const compiled = compilePolynomials(network.topology, kernel);
      if (compiled === undefined) return undefined;
      const columns = compiled.probes.map(() => complexColumn(grid.length));
      const stopped = compiled.network(valuesOf(compiled.slots, network.values)).sweep(grid, columns);
      return [stopped, stopped < 0 ? bitsOf(columns) : ''];
    });
    expect(theirs).toEqual(ours);
  });
});
