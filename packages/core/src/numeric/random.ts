import { refuse } from '../fault/index.js';
import { unlessWhole } from './refusal.js';

const rotations = [13, 15, 26, 6, 17, 29, 16, 24] as const;
const parity = 0x1bd11bda;

/**
 * Threefry with two 32-bit words and 20 rounds; a kernel. It mixes a counter with a key in integer arithmetic only, so that
 * every machine gives the same bits.
 *
 * @returns nothing; replaces the counter in `words[0]` and `words[1]` by the mixed words
 * @source salmon2011 §4.2
 */
export function threefry(key0: number, key1: number, words: Uint32Array): void {
  const keys = [key0, key1, key0 ^ key1 ^ parity] as const;
  let a = (words[0]! + key0) | 0;
  let b = (words[1]! + key1) | 0;
  for (let round = 0; round < 20; round++) {
    const r = rotations[round % 8]!;
    a = (a + b) | 0;
    b = ((b << r) | (b >>> (32 - r))) ^ a;
    if (round % 4 === 3) {
      const turn = (round + 1) / 4;
      a = (a + keys[turn % 3]!) | 0;
      b = (b + keys[(turn + 1) % 3]! + turn) | 0;
    }
  }
  words[0] = a;
  words[1] = b;
}

/**
 * Uniform random numbers from a seed. The same seed gives the same numbers on every machine.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | | `seed` | 1 | whole number from 0 to 2⁵³ − 1 |
 *
 * @validity for simulation and search; not for cryptography
 * @returns a function that gives the next number, from 0 up to but not including 1, in steps of 2⁻⁵³
 * @throws InputError `not-finite`, `out-of-range`
 * @source salmon2011 §4.2
 * @example const next = randomNumbers(7); next(); next()
 */
export function randomNumbers(seed: number): () => number {
  refuse(unlessWhole('seed', seed, 0, Number.MAX_SAFE_INTEGER));
  const key0 = seed >>> 0;
  const key1 = Math.floor(seed / 2 ** 32);
  const words = new Uint32Array(2);
  let count = 0;
  return () => {
    words[0] = count >>> 0;
    words[1] = Math.floor(count / 2 ** 32);
    count++;
    threefry(key0, key1, words);
    return ((words[0] >>> 5) * 2 ** 26 + (words[1] >>> 6)) / 2 ** 53;
  };
}

/**
 * Points that fill a cube more evenly than random ones. Each coordinate advances by its own irrational fraction of 1.
 *
 * $$ x_{i,k} = \left\lbrace \tfrac12 + (i+1)\,\varphi_d^{-k} \right\rbrace,\quad \varphi_d^{d+1} = \varphi_d + 1 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `dimensions` | 1 | coordinates, 1 to 32 |
 * | $i$ | argument | 1 | number of the point, from 0 |
 *
 * @validity i below about 10⁹, above which the steps lose digits; best in few dimensions
 * @returns a function that fills `out[0…dimensions)` with the coordinates of point i, from 0 up to but not including 1
 * @throws InputError `not-finite`, `out-of-range`
 * @source niederreiter1992 ch. 3
 * @example evenPoints(2)(0, out) // 0.254878, 0.069840
 */
export function evenPoints(dimensions: number): (i: number, out: Float64Array) => void {
  refuse(unlessWhole('dimensions', dimensions, 1, 32));
  let phi = 2;
  // Newton's method from the right of a convex curve is monotonic. In plain products it is the same on every machine.
  for (let turn = 0; turn < 60; turn++) {
    let power = 1;
    for (let k = 0; k < dimensions; k++) power *= phi;
    phi -= (power * phi - phi - 1) / ((dimensions + 1) * power - 1);
  }
  const steps = new Float64Array(dimensions);
  for (let k = 0, step = 1; k < dimensions; k++) {
    step /= phi;
    steps[k] = step;
  }
  return (i, out) => {
    for (let k = 0; k < dimensions; k++) {
      const x = 0.5 + (i + 1) * steps[k]!;
      out[k] = x - Math.floor(x);
    }
  };
}

/**
 * Uniform random numbers that depend on a seed and two counters alone: the same whatever was drawn before, so that work can be
 * divided.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | | `seed` | 1 | whole number from 0 to 2⁵³ − 1 |
 * | | `i`, `k` | 1 | whole numbers from 0 to 2³² − 1 |
 *
 * @validity for simulation; not for cryptography
 * @returns a function of both counters that gives a number above 0 and below 1, in steps of 2⁻⁵²
 * @throws InputError `not-finite`, `out-of-range`
 * @source salmon2011 §4.2
 * @example uniformAt(7)(1000, 3)
 */
export function uniformAt(seed: number): (i: number, k: number) => number {
  refuse(unlessWhole('seed', seed, 0, Number.MAX_SAFE_INTEGER));
  const key0 = seed >>> 0;
  const key1 = Math.floor(seed / 2 ** 32);
  const words = new Uint32Array(2);
  return (i, k) => {
    words[0] = i;
    words[1] = k;
    threefry(key0, key1, words);
    // With one bit more, the half would be rounded, for the greatest number up to 1.
    return ((words[0] >>> 5) * 2 ** 25 + (words[1] >>> 7) + 0.5) / 2 ** 52;
  };
}
