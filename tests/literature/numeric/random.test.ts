import { evenPoints } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { threefry } from '../../../packages/core/src/numeric/random.js';
import { fixtures } from './fixtures.js';

// Known answers published with the generator, from memory: that 192 bits agree by chance is out of the question.
test.each([
  [0, 0, 0, 0, 0x6b200159, 0x99ba4efe],
  [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0x1cb996fc, 0xbb002be7],
  [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344, 0xc4923a9c, 0x483df7a0],
])('counter %i %i by key %i %i', (c0, c1, k0, k1, e0, e1) => {
  const words = Uint32Array.of(c0, c1);
  threefry(k0, k1, words);
  expect([...words]).toEqual([e0, e1]);
});

test('steps of the even points are powers of the generalised golden ratios', () => {
  fixtures.golden.forEach((phi, d) => {
    const out = new Float64Array(d + 1);
    evenPoints(d + 1)(0, out);
    out.forEach((x, k) => expect(x).toBeCloseTo((0.5 + phi ** -(k + 1)) % 1, 14));
  });
});
