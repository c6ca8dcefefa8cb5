import json from './fixtures.json' with { type: 'json' };

/** Values by mpmath and scipy; `fixtures.py` beside this file wrote them. */
export const fixtures = json;

/** Largest |got − expected| over max(|expected|, floor). */
export const worst = (got: ArrayLike<number>, expected: ArrayLike<number>, floor: (i: number) => number = () => 0) =>
  Array.from(expected).reduce(
    (most, e, i) => Math.max(most, Math.abs(got[i]! - e) / Math.max(Math.abs(e), floor(i), Number.MIN_VALUE)),
    got.length === expected.length ? 0 : Infinity,
  );
