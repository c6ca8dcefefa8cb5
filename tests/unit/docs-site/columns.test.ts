/** Columns of numbers, as tables of the site set them. */
import { describe, expect, test } from 'vitest';
import { isWide, numbersOf } from '../../../docs-site/src/columns.js';

describe('numbers of a column', () => {
  test('the one unit of all cells goes to the head; lacking decimals are made up for', () => {
    const found = numbersOf(['12.25\u00a0dB', '−3\u00a0dB', '–', '0 dB']);
    expect(found?.unit).toBe('dB');
    expect(found?.cells).toEqual([
      { text: '12.25', pad: '' },
      { text: '−3', pad: '.00' },
      { text: '–', pad: '' },
      { text: '0', pad: '.00' },
    ]);
  });

  test('numbers below one are numbers too', () => {
    expect(numbersOf(['0.5', '0.125'])?.cells.map(({ pad }) => pad)).toEqual(['00', '']);
  });

  test('cells of two units keep them, and powers of ten are not padded', () => {
    const found = numbersOf(['998 mm', '1.2 m']);
    expect(found?.unit).toBe('');
    expect(found?.cells.map(({ text, pad }) => text + pad)).toEqual(['998 mm', '1.2 m']);
    expect(numbersOf(['1.3\u00a0×\u00a010⁻¹⁰', '2'])?.cells.map(({ pad }) => pad)).toEqual(['', '']);
  });

  test('words make a column of words', () => {
    for (const cells of [['97.1 travel', '98 travel'], ['A, 207 mm'], ['–', ''], []])
      expect(numbersOf(cells)).toBeUndefined();
  });

  test('many columns are wide, few are not', () => {
    expect(
      isWide([
        ['Hz', '20'],
        ['A', '101.2'],
        ['B', '99.1'],
      ]),
    ).toBe(false);
    expect(isWide(Array.from({ length: 7 }, () => ['length, mm', '1234.5']))).toBe(true);
  });
});
