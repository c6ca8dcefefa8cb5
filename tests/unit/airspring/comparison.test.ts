import { expect, test } from 'vitest';
import { comparison } from '../../../packages/airspring/src/words/comparison.js';

const criteria = { depth: 26.24, level: 100.16, volume: 0.05, effort: 1 } as Parameters<typeof comparison>[0];

test('differences are those of the numbers that are printed', () => {
  // 94.2 beside 100.2, though they are 5.92 apart; 26.9 beside 26.2, though they are 0.62 apart.
  expect(comparison({ ...criteria, level: 94.24, depth: 26.86 }, criteria)).toEqual([
    '0.7 Hz less deep',
    '6.0 dB less loud',
  ]);
  expect(comparison({ ...criteria, level: 100.24, depth: 26.16 }, criteria)).toEqual([]);
});
