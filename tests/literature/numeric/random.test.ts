import { evenPoints, randomNumbers, uniformAt } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { threefry } from '../../../packages/core/src/numeric/random.js';
import { check } from '../../ledger/check.js';
import { fixtures } from './fixtures.js';
import print from './printed.json' with { type: 'json' };

const { source, tolerance, rows } = print.threefry;
const answers = rows.flatMap(({ counter, key, words }) => words.map((word, at) => ({ counter, key, word, at })));
const pair = (name: 'counter' | 'key', at: 0 | 1) => ({ value: answers.map((one) => one[name][at]!), unit: 'word' });
check('random.threefry.known-answers', {
  formula: 'numeric/randomNumbers',
  source,
  status: 'seen',
  kind: 'standard',
  given: {
    c0: pair('counter', 0),
    c1: pair('counter', 1),
    k0: pair('key', 0),
    k1: pair('key', 1),
    at: { value: answers.map(({ at }) => at), unit: 'of the two words' },
  },
  got: ({ c0, c1, k0, k1, at }) => {
    const words = Uint32Array.of(c0, c1);
    threefry(k0, k1, words);
    return words[at]!;
  },
  printed: answers.map(({ word }) => word),
  unit: 'word',
  tolerance,
});

test('the first random number of seed 0 is made of the first known answer', () => {
  const [high = 0, low = 0] = rows[0]!.words.map(Number);
  expect(randomNumbers(0)()).toBe(((high >>> 5) * 2 ** 26 + (low >>> 6)) / 2 ** 53);
});

test('steps of the even points are powers of the generalised golden ratios', () => {
  fixtures.golden.forEach((phi, d) => {
    const out = new Float64Array(d + 1);
    evenPoints(d + 1)(0, out);
    out.forEach((x, k) => expect(x).toBeCloseTo((0.5 + phi ** -(k + 1)) % 1, 14));
  });
});

const [high, low] = rows[0]!.words.map(Number) as [number, number];
check('random.threefry.counters', {
  formula: 'numeric/uniformAt',
  source: { ...source, locator: `${source.locator}; 27 and 25 bits of the words for a counter and a key of zeros` },
  status: 'derived',
  kind: 'standard',
  given: { seed: { value: 0, unit: '1' } },
  got: ({ seed }) => uniformAt(seed)(0, 0),
  expected: ((high >>> 5) * 2 ** 25 + (low >>> 7) + 0.5) / 2 ** 52,
  unit: '1',
  tolerance: { relative: 1e-15, why: 'whole numbers of bits' },
});
