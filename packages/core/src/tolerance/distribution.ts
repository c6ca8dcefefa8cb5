import { type Fault, refuse } from '../fault/index.js';
import { normalQuantile } from '../numeric/index.js';

/** How a number scatters from build to build. One of your own is used like these. */
export interface Distribution {
  readonly name: string;
  /** The factor on the nominal value at a probability above 0 and below 1. It rises with the probability. */
  readonly factor: (probability: number) => number;
  /** Standard deviation of the factor. */
  readonly standardDeviation: number;
  readonly sources: readonly string[];
}

function refuseShare(name: string, share: number, most: number): void {
  if (share > 0 && share <= most) return;
  const code: Fault['code'] = Number.isFinite(share) ? 'out-of-range' : 'not-finite';
  const expected = `a share above 0 and at most ${most}, such as 0.05 for 5 %`;
  refuse([{ code, path: name, got: share, expected, remedy: 'Give it as a share of the nominal value.' }]);
}

/**
 * Every value between two bounds is as likely as any other: what a tolerance of ± so much promises, if nothing else is known.
 *
 * $$ x = x_0 (1 + b (2u - 1)), \quad \sigma = \frac{b}{\sqrt 3} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $b$ | argument | 1 | half width, as a share of the nominal value $x_0$ |
 *
 * @validity shares up to 0.9
 * @neglects a centre that is not the nominal value
 * @returns the distribution
 * @throws InputError `not-finite`, `out-of-range`
 * @source dlmf §1.16
 * @example within(0.1).standardDeviation // 0.0577
 */
export function within(share: number): Distribution {
  refuseShare('within', share, 0.9);
  return {
    name: `evenly within ±${100 * share} %`,
    factor: (u) => 1 + share * (2 * u - 1),
    standardDeviation: share / Math.sqrt(3),
    sources: ['own'],
  };
}

/**
 * Values that scatter normally around the nominal one.
 *
 * $$ x = x_0 (1 + \sigma z(u)) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\sigma$ | argument | 1 | standard deviation, as a share of the nominal value $x_0$ |
 * | $z$ | | 1 | {@link normalQuantile} |
 *
 * @validity shares up to 0.1, so that the value stays positive in any number of builds
 * @neglects a centre that is not the nominal value
 * @returns the distribution
 * @throws InputError `not-finite`, `out-of-range`
 * @source wichura1988 algorithm AS 241
 * @example normal(0.05).factor(0.975) // 1.098
 */
export function normal(share: number): Distribution {
  refuseShare('normal', share, 0.1);
  return {
    name: `normally, with a standard deviation of ${100 * share} %`,
    factor: (u) => 1 + share * normalQuantile(u),
    standardDeviation: share,
    sources: ['wichura1988'],
  };
}
