import { type Fault, InputError, refuse } from '../fault/index.js';
import type { FrequencyInput } from './quantity.js';
import { readInto } from './read.js';

declare const checked: unique symbol;

/** Frequencies in Hz: positive, finite and increasing. They are checked once, so that kernels need not check them again. */
export type FrequencyGrid = Float64Array & { readonly [checked]: true };

const isList = (value: unknown): value is ArrayLike<unknown> =>
  Array.isArray(value) || (ArrayBuffer.isView(value) && !(value instanceof DataView));

/**
 * Checks a list of frequencies in Hz.
 *
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`
 * @example frequencyGrid([20, 40, 80]) // a FrequencyGrid of 3
 */
export function frequencyGrid(frequencies: ArrayLike<number>, path = 'frequencies'): FrequencyGrid {
  const faults: Fault[] = [];
  if (!isList(frequencies) || frequencies.length === 0) {
    const remedy = 'Give a list of numbers in Hz.';
    faults.push({ code: 'empty', path, got: frequencies, expected: 'a list of at least one frequency', remedy });
    throw new InputError(faults);
  }
  for (let i = 0; i < frequencies.length; i++) {
    const f: number = frequencies[i]!;
    const fault = (code: Fault['code'], remedy: string, expected = 'a frequency of 0.0001 to 10000000 Hz') =>
      faults.push({ code, path: `${path}[${i}]`, got: f, expected, remedy });
    if (typeof f !== 'number') fault('unit', 'Give a plain number in Hz.');
    else if (!Number.isFinite(f)) fault('not-finite', 'Remove it.');
    else if (f <= 0) fault('not-positive', 'Remove it.');
    else if (f < 1e-4 || f > 1e7) fault('out-of-range', 'Check the unit.');
    else if (i > 0 && f <= frequencies[i - 1]!) fault('unsorted', 'Sort the list.', `more than ${frequencies[i - 1]}`);
  }
  refuse(faults);
  return Float64Array.from(frequencies) as FrequencyGrid;
}

/**
 * Frequencies in equal ratios, both ends included. The ends are texts, or numbers in Hz.
 *
 * @throws InputError
 * @example logarithmicGrid('10 Hz', '1 kHz', 3) // 10, 100, 1000 Hz
 */
export function logarithmicGrid(
  from: number | FrequencyInput,
  to: number | FrequencyInput,
  points: number,
): FrequencyGrid {
  const faults: Fault[] = [];
  if (!Number.isInteger(points) || points < 2 || points > 1e7) {
    const expected = 'a whole number from 2 to 10000000';
    const remedy = 'Give the number of points.';
    faults.push({ code: 'out-of-range', path: 'points', got: points, expected, remedy });
  }
  const low = readInto(faults, 'frequency', from, 'from');
  const high = readInto(faults, 'frequency', to, 'to');
  if (low !== undefined && high !== undefined && high <= low) {
    const remedy = 'Swap the two ends, or correct one of them.';
    faults.push({ code: 'unsorted', path: 'to', got: to, expected: `more than from, ${low} Hz`, remedy });
  }
  if (low === undefined || high === undefined || faults.length > 0) throw new InputError(faults);
  const ratio = Math.log(high / low) / (points - 1);
  const grid = new Float64Array(points);
  for (let i = 0; i < points; i++) grid[i] = low * Math.exp(ratio * i);
  grid[points - 1] = high;
  return grid as FrequencyGrid;
}
