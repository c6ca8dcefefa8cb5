import { readFileSync } from 'node:fs';
import { decimalText, format, frequencyGrid, inUnit, kinds, logarithmicGrid, read, si } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';
import { faultsOf as refusal } from '../../refusal/faults.js';

const faultsOf = (work: () => unknown) => refusal(work).map(({ code, path }) => `${code} ${path}`);

describe('a text is a number, one space, and a unit of the kind', () => {
  test.each([
    ['volume', '24 L', 0.024],
    ['length', '2 in', 0.0508],
    ['length', '.5 ft', 0.1524],
    ['mass', '1 lb', 0.45359237],
    ['temperature', '68 °F', 293.15],
    ['humidity', '50 %', 0.5],
    ['inductance', '9e-1 mH', 9e-4],
    ['volume', '1 ft³', 0.028316846592],
    ['angle', '180 deg', Math.PI],
  ] as const)('%s %s', (kind, text, expected) => {
    expect(read(kind, text)).toBeCloseTo(expected, 12);
  });

  // What the compiler lets through as a template text, and what a form may hold: the parser decides.
  test.each([
    '24L',
    '24,5 L',
    '1_000 L',
    '24',
    ' 24 L',
    '24  L',
    '24 L ',
    '0x10 L',
    'NaN L',
    'Infinity L',
    '. L',
    '',
    'L',
    '5 constructor',
    '24 mm',
  ])('refused: %j', (text) => {
    expect(faultsOf(() => read('volume', text, 'box.volume'))).toEqual(['unit box.volume']);
  });
  test('a number too large for a number is not finite', () => {
    expect(faultsOf(() => read('volume', '1e999 L'))).toEqual(['not-finite volume']);
  });
  test('the message says what would do', () => {
    expect(() => read('volume', '24 mm', 'box.volume')).toThrow(
      'box.volume: got "24 mm"; expected a number, one space, and one of m³, L, cm³, ft³, in³.',
    );
  });
});

describe('magnitudes', () => {
  test('sign, finiteness and range have codes of their own', () => {
    expect(faultsOf(() => read('length', si('length', NaN), 'a'))).toEqual(['not-finite a']);
    expect(faultsOf(() => read('length', si('length', -1), 'a'))).toEqual(['not-positive a']);
    expect(faultsOf(() => read('length', si('length', 0), 'a'))).toEqual(['not-positive a']);
    expect(faultsOf(() => read('length', si('length', 0), 'a', 'not-negative'))).toEqual([]);
    expect(faultsOf(() => read('length', si('length', 62_000), 'a'))).toEqual(['out-of-range a']);
  });
  test('sixteen kinds at least, the SI unit first', () => {
    expect(Object.keys(kinds).length).toBeGreaterThanOrEqual(16);
    for (const { units } of Object.values(kinds)) expect(Object.values(units)[0]).toEqual([1, 0]);
  });
});

test('format is read again', () => {
  expect(format('length', si('length', 0.0621), 'mm')).toBe('62.1 mm');
  expect(inUnit('temperature', 293.15, '°C')).toBeCloseTo(20, 12);
  expect([0, 1e-7, 12345.678, 0.5].map((value) => decimalText(value, 3))).toEqual(['0', '0.0000001', '12346', '0.5']);
});

describe('frequencies', () => {
  test('rise, and every fault has its place', () => {
    expect([...frequencyGrid([20, 40])]).toEqual([20, 40]);
    expect(faultsOf(() => frequencyGrid([]))).toEqual(['empty frequencies']);
    expect(faultsOf(() => frequencyGrid([20, NaN, -1, 30, 25]))).toEqual([
      'not-finite frequencies[1]',
      'not-positive frequencies[2]',
      'unsorted frequencies[4]',
    ]);
  });
  test('what is no list is refused as such, and texts in a list one by one', () => {
    for (const none of [20, '20 Hz', undefined, { length: 2 }, new DataView(new ArrayBuffer(16))]) {
      expect(faultsOf(() => frequencyGrid(none as unknown as number[]))).toEqual(['empty frequencies']);
    }
    expect(faultsOf(() => frequencyGrid(['20 Hz', 40] as unknown as number[]))).toEqual(['unit frequencies[0]']);
    expect([...frequencyGrid(Float32Array.of(20, 40))]).toEqual([20, 40]);
  });
  test('a logarithmic grid takes texts, and refuses what is neither text nor number', () => {
    expect(logarithmicGrid('20 Hz', '2 kHz', 3)).toEqual(logarithmicGrid(20, 2000, 3));
    expect(faultsOf(() => logarithmicGrid('20' as '20 Hz', [] as unknown as number, 3))).toEqual([
      'unit from',
      'unit to',
    ]);
  });
  test('a logarithmic grid holds both ends', () => {
    const grid = logarithmicGrid(10, 1000, 3);
    expect([grid[0], grid[2]]).toEqual([10, 1000]);
    expect(grid[1]).toBeCloseTo(100, 10);
    expect(faultsOf(() => logarithmicGrid(10, 1000, 1))).toEqual(['out-of-range points']);
    expect(faultsOf(() => logarithmicGrid(100, 50, 0))).toEqual(['out-of-range points', 'unsorted to']);
    expect(faultsOf(() => logarithmicGrid(-1, Number.NaN, 3))).toEqual(['not-positive from', 'not-finite to']);
  });
});

test('each text that the documentation of an input gives is read, as the kind that it names', () => {
  const source = readFileSync(new URL('../../../packages/core/src/quantity/quantity.ts', import.meta.url), 'utf8');
  const told = [...source.matchAll(/such as `'([^']+)'`, or `si\('(\w+)', x\)` of a number x (?:in (\S+)\.|from)/g)];
  expect(told.length).toBe([...source.matchAll(/export type \w+Input = /g)].length - 1);
  for (const [, text, kind, unit] of told as unknown as [string, string, keyof typeof kinds, string?][]) {
    expect(read(kind, text)).toBeGreaterThan(0);
    if (unit !== undefined) expect(unit).toBe(Object.keys(kinds[kind].units)[0]);
  }
});
