import { InputError } from '@airspring/core/fault';
import {
  decimalText,
  format,
  frequencyGrid,
  type Kind,
  type KindDefinition,
  kinds,
  logarithmicGrid,
  read,
} from '@airspring/core/quantity';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

const kind = fc.constantFrom(...(Object.keys(kinds) as Kind[]));
const unitOf = (name: Kind) => fc.constantFrom(...Object.keys((kinds[name] as KindDefinition).units));

test.prop([kind.chain((name) => fc.tuple(fc.constant(name), unitOf(name), fc.double()))], { numRuns: fuzzRuns })(
  'any number with any unit is read or refused, and what is read is finite',
  ([name, unit, value]) => {
    for (const sign of ['positive', 'not-negative', 'any'] as const) {
      try {
        const read1 = read(name, `${value} ${unit}`, 'x', sign);
        expect(Number.isFinite(read1)).toBe(true);
        if (sign === 'positive') expect(read1).toBeGreaterThan(0);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }
  },
);

test.prop([kind, fc.oneof(fc.string(), fc.double(), fc.anything())], { numRuns: fuzzRuns })(
  'anything at all is read or refused',
  (name, value) => {
    try {
      expect(Number.isFinite(read(name, value as string))).toBe(true);
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
    }
  },
);

test.prop([
  kind.chain((name) => fc.tuple(fc.constant(name), unitOf(name), fc.double({ min: 0, max: 1, noNaN: true }))),
])('what is written is read again', ([name, unit, place]) => {
  const { range } = kinds[name] as KindDefinition;
  const value = range[0] * 2 * (range[1] / range[0] / 4) ** place;
  const again = read(name, format(name, value, unit as never, 15), 'x', 'any');
  const offset = (kinds[name] as KindDefinition).units[unit]![1];
  expect(Math.abs(again - value)).toBeLessThanOrEqual(1e-13 * (value + Math.abs(offset)) + 1e-20);
});

test.prop([fc.double({ min: 1e-15, max: 1e15, noNaN: true }), fc.integer({ min: 1, max: 15 })])(
  'a decimal is a plain decimal, true to its digits',
  (value, digits) => {
    const text = decimalText(value, digits);
    expect(text).toMatch(/^\d+(\.\d*[1-9])?$/);
    expect(Math.abs(Number(text) / value - 1)).toBeLessThanOrEqual(0.51 * 10 ** (1 - digits) + 1e-14);
  },
);

test.prop([fc.array(fc.double())], { numRuns: fuzzRuns })('any list is a grid or refused', (list) => {
  try {
    const grid = frequencyGrid(list);
    for (let i = 1; i < grid.length; i++) expect(grid[i]!).toBeGreaterThan(grid[i - 1]!);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
  }
});

test.prop([fc.double(), fc.double(), fc.integer({ max: 2000 })], { numRuns: fuzzRuns })(
  'any two ends make a grid or are refused',
  (a, b, n) => {
    try {
      expect(logarithmicGrid(a, b, n).every(Number.isFinite)).toBe(true);
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
    }
  },
);
