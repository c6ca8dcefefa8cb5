import { isRounding } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test('what terms leave that cancel is rounding; what stands a little above it is not', () => {
  expect(isRounding(0.1 + 0.2 - 0.3, 0.6)).toBe(true);
  expect(isRounding(0, 0)).toBe(true);
  expect(isRounding(1 + 4e-15 - 1, 2)).toBe(false);
  expect(isRounding(-1e-300, 0)).toBe(false);
});
