import { type Fault, InputError, refuse } from '../fault/index.js';
import { readInto } from './read.js';

declare const checked: unique symbol;

/** Frequencies in Hz, all positive, finite and rising: checked once, so that kernels need not. */
export type FrequencyGrid = Float64Array & { readonly [checked]: true };

/**
 * Checks a list of frequencies in Hz.
 *
 * @throws InputError `empty`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`
 * @example frequencyGrid([20, 40, 80]) // a FrequencyGrid of 3
 */
export function frequencyGrid(frequencies: ArrayLike<number>, path = 'frequencies'): FrequencyGrid {
  const faults: Fault[] = [];
  const at = (i: number) => `${path}[${i}]`;
  if (frequencies.length === 0) {
    faults.push({ code: 'empty', path, got: frequencies, expected: 'at least one frequency', remedy: 'Give one.' });
  }
  for (let i = 0; i < frequencies.length; i++) {
    const f = frequencies[i]!;
    const expected = 'a frequency of 0.0001 to 10000000 Hz';
    if (!Number.isFinite(f)) faults.push({ code: 'not-finite', path: at(i), got: f, expected, remedy: 'Remove it.' });
    else if (f <= 0) faults.push({ code: 'not-positive', path: at(i), got: f, expected, remedy: 'Remove it.' });
    else if (f < 1e-4 || f > 1e7)
      faults.push({ code: 'out-of-range', path: at(i), got: f, expected, remedy: 'Check the unit.' });
    else if (i > 0 && f <= frequencies[i - 1]!) {
      faults.push({
        code: 'unsorted',
        path: at(i),
        got: f,
        expected: `more than ${frequencies[i - 1]}`,
        remedy: 'Sort.',
      });
    }
  }
  if (faults.length > 0) throw new InputError(faults);
  return Float64Array.from(frequencies) as FrequencyGrid;
}

/**
 * Frequencies spaced evenly in the logarithm, both ends included.
 *
 * @throws InputError
 * @example logarithmicGrid(10, 1000, 3) // 10, 100, 1000 Hz
 */
export function logarithmicGrid(from: number, to: number, points: number): FrequencyGrid {
  const faults: Fault[] = [];
  if (!Number.isInteger(points) || points < 2 || points > 1e7) {
    const expected = 'a whole number from 2 to 10000000';
    const remedy = 'Give the number of points.';
    faults.push({ code: 'out-of-range', path: 'points', got: points, expected, remedy });
  }
  const [low, high] = [readInto(faults, 'frequency', from, 'from'), readInto(faults, 'frequency', to, 'to')];
  if (low !== undefined && high !== undefined && high <= low) {
    const remedy = 'Swap the two, or correct one.';
    faults.push({ code: 'unsorted', path: 'to', got: to, expected: `more than from, ${from} Hz`, remedy });
  }
  refuse(faults);
  const ratio = Math.log(to / from) / (points - 1);
  const grid = Float64Array.from({ length: points }, (_, i) => from * Math.exp(ratio * i));
  grid[points - 1] = to;
  return grid as FrequencyGrid;
}
