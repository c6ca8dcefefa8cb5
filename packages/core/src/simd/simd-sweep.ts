import { type Impossible, impossible } from '../fault/index.js';
import { type SweepRows, sweepRows } from '../network/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { kernelColumns } from './columns.js';
import { instance, type Kernel } from './instance.js';

/** A kernel to pass on, and whether it runs in WebAssembly. */
export type SimdSweep = { readonly sweepRows: SweepRows } & ({ readonly ok: true } | Impossible);

/** Fewer frequencies are swept sooner than they are copied. */
const LEAST = 32;
/** Polynomials of more terms are swept in TypeScript. */
const MOST_TERMS = 32;

/**
 * A kernel in WebAssembly SIMD that sweeps the polynomials of networks, two frequencies at a time. Pass it to what compiles a
 * network. It takes its products and sums in the order of `sweepRows`, so its results are equal to the last bit. Each call
 * makes a kernel with 64 kB of memory of its own; make one, and keep it.
 *
 * Where WebAssembly or its SIMD is missing, or a page forbids it (its content security policy lacks `'wasm-unsafe-eval'`),
 * `ok` is false, `because` says so, and the kernel is `sweepRows` itself.
 *
 * @validity as `sweepRows`; polynomials of more than 32 terms and fewer than 32 frequencies are swept by `sweepRows`
 * @neglects nothing
 * @returns a kernel that may be passed on in any case, and whether it runs in WebAssembly
 * @source own (Horner's scheme)
 * @example compile(topology, simdSweep().sweepRows)
 */
export function simdSweep(): SimdSweep {
  try {
    return { ok: true, sweepRows: compileSweep(instance()) };
  } catch (error) {
    const text = `WebAssembly SIMD does not run here (${error}). Sweeps run in TypeScript, with the same results.`;
    return { ...impossible('no-webassembly', text), sweepRows };
  }
}

function compileSweep(kernel: Kernel): SweepRows {
  const most = kernel.MOST.value;
  const terms = new Float64Array(kernel.memory.buffer, 0, MOST_TERMS);
  /** Writes a row of coefficients from a place on, filled up with zeros. */
  const setTerms = (place: number, length: number, coefficients: Float64Array, row: number, width: number) => {
    for (let k = 0; k < length; k++) terms[place + k] = k < width ? coefficients[row * width + k]! : 0;
  };
  const whole = kernelColumns(kernel, most + 1);
  let columns = kernelColumns(kernel, 0);
  /** Copies a block of frequencies into memory. The last one stands there twice, as two are taken at a time. */
  const setFrequencies = (frequencies: Float64Array, first: number): void => {
    const count = Math.min(frequencies.length - first, most);
    if (columns.frequencies.length !== count) columns = kernelColumns(kernel, count);
    columns.frequencies.set(count === frequencies.length ? frequencies : frequencies.subarray(first, first + count));
    whole.frequencies[count] = frequencies[first + count - 1]!;
  };
  const copy = ({ re, im }: ComplexColumn, from: ComplexColumn, first: number): void => {
    re.set(from.re, first);
    im.set(from.im, first);
  };

  return (coefficients, width, scale, frequencies, out, work) => {
    const count = frequencies.length;
    if (count < LEAST || width > MOST_TERMS) return sweepRows(coefficients, width, scale, frequencies, out, work);
    const toUnit = (2 * Math.PI) / scale;
    const isShort = width <= 8;
    const room = Math.max(width, 8);
    setTerms(0, room, coefficients, 0, width);
    for (let first = 0; first < count; first += most) {
      setFrequencies(frequencies, first);
      const length = 8 * columns.frequencies.length;
      const stopped = isShort ? kernel.invertOfEight(length, toUnit) : kernel.invert(length, toUnit, width - 1);
      if (stopped >= 0) return first + stopped;
      copy(work, columns.inverse, first);
    }
    const pair = width <= 6 ? kernel.pairOfSix : kernel.pairOfEight;
    for (let first = 0; first < count; first += most) {
      if (count > most) {
        setFrequencies(frequencies, first);
        const end = first + columns.frequencies.length;
        copy(columns.inverse, { re: work.re.subarray(first, end), im: work.im.subarray(first, end) }, 0);
      }
      const length = 8 * columns.frequencies.length;
      const [one, two] = columns.results;
      for (let row = 0; row < out.length; row += isShort ? 2 : 1) {
        setTerms(0, room, coefficients, row + 1, width);
        if (!isShort) kernel.row(length, toUnit, width - 1);
        else {
          if (row + 1 < out.length) setTerms(8, 8, coefficients, row + 2, width);
          pair(length, toUnit);
        }
        copy(out[row] as ComplexColumn, one, first);
        if (isShort && row + 1 < out.length) copy(out[row + 1] as ComplexColumn, two, first);
      }
    }
    return -1;
  };
}
