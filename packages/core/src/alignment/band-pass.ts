import { type Fault, refuse } from '../fault/index.js';
import { optional, positive, readFields } from '../quantity/index.js';
import type { Alignment } from './alignment.js';
import { denominatorOf, squaredMagnitude } from './with-zeros.js';

/** What a band-pass of fourth order may be asked for. */
export interface BandPassOptions {
  /** Height of the two tops over the dip between them, dB, in place of S. */
  readonly ripple?: number;
  /** Damping of the low-pass from which the shape is made, below 1; default 0.707, maximally flat. Above it the top is round. */
  readonly S?: number;
  /** Width of the band: the quality factor of the driver in its closed chamber, without losses of the box. */
  readonly Q?: number;
}

/** The range of the quality factor, which is that of the width of the band. */
const [LEAST_Q, MOST_Q] = [0.1, 3] as const;

const shape = { ripple: optional(positive('level')), S: optional(positive('ratio')), Q: optional(positive('ratio')) };

/** $4 S^2 (1 - S^2)$: the level of the dip, as a square. */
const dipOf = (S: number): number => 4 * S ** 2 * (1 - S ** 2);
const dampingOf = (ripple: number): number => Math.sqrt((1 - Math.sqrt(1 - 10 ** (-ripple / 10))) / 2);

/** The denominator for a damping and a width, for the numerator of a box or for s². */
function denominator(S: number, Q: number, numerator?: ArrayLike<number>): readonly number[] {
  const inverse = 1 / (2 * S * Q) ** 2;
  if (numerator === undefined) return [1, 1 / Q, 2 + inverse, 1 / Q, 1];
  // The square of x² + middle · x + 1 over x = ω², which is zero at the two tops.
  const middle = (2 * S ** 2 - 1) * inverse - 2;
  const small = [1, 2 * middle, 2 + middle ** 2, 2 * middle, 1];
  const passed = squaredMagnitude(numerator);
  return denominatorOf(small.map((value, k) => value + dipOf(S) * inverse ** 2 * passed[k]!));
}

/**
 * The band-pass alignment of fourth order, BP4: a low-pass of second order with the damping S, moved to a band that is symmetric on a
 * logarithmic axis. Below 0.707 it has two equal tops and a dip between them.
 *
 * $$ G = \frac{1}{p^2 + 2 S p + 1}, \quad p = 2 S Q\left(s + \frac1s\right), \quad r = -10\log_{10}\bigl(4 S^2 (1 - S^2)\bigr) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | `S` | 1 | damping of the low-pass, up to 1 |
 * | $r$ | `ripple` | dB | tops over the dip, for S below 0.707 |
 * | $Q$ | `Q` | 1 | quality factor of the driver in the closed chamber, and so the width of the band; without it, the driver decides |
 *
 * A box has three numbers to choose. State Q, or one of them: its closed chamber, say. A leak of the front chamber adds a zero to the
 * response. The shape allows for it: its tops stay equal, and the middle stays below them by the ripple.
 *
 * @validity S from 0.1 to below 1; ripple above 0 and up to 14 dB; Q of 0.1 to 3
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `conflict`, `not-finite`, `not-positive`, `out-of-range`, `unit`, `unknown-field`
 * @source geddes1989 symmetrical fourth-order band-pass
 * @example solveAlignment(bandPass({ S: 0.6, Q: 0.7 }), fourthOrderBandPassFamily, { drivers: driver })
 */
export function bandPass(options: BandPassOptions = {}): Alignment {
  const {
    ripple: asked,
    Q,
    S = asked === undefined ? Math.SQRT1_2 : dampingOf(asked),
  } = readFields('bandPass', options, shape);
  const faults: Fault[] = [];
  if (asked !== undefined && options.S !== undefined) {
    const expected = 'no ripple, since S decides it';
    faults.push({ code: 'conflict', path: 'bandPass.ripple', got: asked, expected, remedy: 'Remove one of the two.' });
  } else if (!(S >= 0.1 && S < 1)) {
    const path = asked === undefined ? 'bandPass.S' : 'bandPass.ripple';
    const expected = asked === undefined ? 'a damping from 0.1 to below 1' : 'a ripple up to 14 dB';
    faults.push({ code: 'out-of-range', path, got: asked ?? S, expected, remedy: 'Choose one in this range.' });
  }
  if (Q !== undefined && !(Q >= LEAST_Q && Q <= MOST_Q)) {
    const expected = `a quality factor from ${LEAST_Q} to ${MOST_Q}`;
    const remedy = 'Choose one in this range.';
    faults.push({ code: 'out-of-range', path: 'bandPass.Q', got: Q, expected, remedy });
  }
  refuse(faults);
  const ripple = S < Math.SQRT1_2 ? -10 * Math.log10(dipOf(S)) : 0;
  return {
    name: 'BP4',
    order: 4,
    orderBelow: 2,
    withZeros: true,
    sources: ['geddes1989'],
    ...(Q === undefined
      ? {
          target: (width, numerator) => denominator(S, width, numerator),
          parameters: { S, ripple },
          free: { from: LEAST_Q, to: MOST_Q, told: (width) => ({ Q: width }) },
        }
      : { target: (_, numerator) => denominator(S, Q, numerator), parameters: { S, ripple, Q } }),
  };
}
