import { InputError, refuse } from '../fault/index.js';
import { unlessList } from '../numeric/refusal.js';
import { type Length, type LengthInput, positive, readFields, si } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type EndCorrection, type Opening, unlessEnd } from './end-correction.js';

/** Greatest number of terms of the series. It converges slowest at contact, where 1500 terms leave an error of 3e-9. */
const mostTerms = 1500;

/** Mutual length over the radius, for x = d/a of 2 or more. */
function mutual(x: number): number {
  const q = 4 / (x * x);
  let term = 1;
  let sum = 1;
  for (let n = 0; n < mostTerms && term > 1e-17 * sum; n++) {
    term *= (((n + 0.5) * (n + 0.5) * (n + 1.5)) / ((n + 2) * (n + 3) * (n + 1))) * q;
    sum += term;
  }
  return sum / (2 * x);
}

export interface MutualLengthInput {
  /** Diameter of each opening. */
  readonly diameter: LengthInput;
  /** Distance between the two centres; for an opening beside a wall, twice its distance from the wall. */
  readonly distance: LengthInput;
}

const shape = { diameter: positive('length'), distance: positive('length') };

/**
 * The length that each of two equal openings in a wall adds to the end correction of the other when both move in phase.
 *
 * $$ \Delta\ell = \frac{a}{2x}\;{}_3F_2\!\left(\tfrac12, \tfrac12, \tfrac32;\, 2, 3;\, \tfrac{4}{x^2}\right),\qquad
 *    x = \frac da $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `diameter` | m | radius |
 * | $d$ | `distance` | m | distance between the centres |
 *
 * @validity $kd \le 0.5$, where it is 14 % too long; in the low-frequency limit it is exact for rigid pistons that do not
 *   overlap.
 * @neglects the dependence on frequency; the change that the second opening makes to the flow through the first.
 * @returns m
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source pritchard1960 mutual radiation impedance, static limit; dlmf 16.2.1
 * @example mutualLength({ diameter: '75 mm', distance: '100 mm' }) // 0.0073 m
 */
export function mutualLength(input: MutualLengthInput): Length {
  const { diameter, distance } = readFields('openings', input, shape);
  refuseOverlap(diameter / 2, distance);
  return si('length', (diameter / 2) * mutual((2 * distance) / diameter));
}

function refuseOverlap(radius: number, distance: number): void {
  if (distance >= 2 * radius - NANOMETRE) return;
  const expected = `at least ${2 * radius} m, the distance at which the openings touch`;
  throw new InputError([
    { code: 'inconsistent', path: 'distance', got: distance, expected, remedy: 'Move them farther apart.' },
  ]);
}

/**
 * Adds the effect of neighbours to an end correction. Neighbours are equal openings in the same wall that move in phase, or
 * walls beside the opening. A wall acts as a mirror image at twice its distance.
 *
 * $$ \Delta\ell = \Delta\ell_{alone} + \sum_i \Delta\ell_{mutual}(d_i)\,\cos kd_i $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\Delta\ell_{alone}$ | `end` | m | end correction of the opening alone |
 * | $d_i$ | `distances` | m | distances between centres, see {@link mutualLength} |
 * | $k$ | `k` | rad/m | wave number |
 *
 * The cosine is the phase of the waves between small openings. At low frequency only {@link mutualLength} remains.
 *
 * @validity the range of the end alone, and $kd \le 1$; openings that nearly touch are 4 % off at $kd = 1$ and 0.3 % off at
 *   $kd = 0.5$. Between two walls, include the image in the corner.
 * @neglects the change that the second opening makes to the flow through the first, and the resistance that it adds.
 * @returns an {@link EndCorrection}, which refuses an opening that is wider than one of the distances
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source pritchard1960 mutual radiation impedance, static limit and point sources
 * @example withNeighbours(flanged, ['100 mm'])({ radius: 0.0375 }, 0) // 0.0381 m
 */
export function withNeighbours(end: EndCorrection, distances: readonly LengthInput[]): EndCorrection {
  refuse([...unlessEnd('end', end), ...unlessList('distances', distances, 'distances between centres')]);
  const field = positive('length');
  const list = Object.fromEntries(distances.map((distance, i) => [String(i), distance]));
  const metres = Object.values(
    readFields('distances', list, Object.fromEntries(Object.keys(list).map((i) => [i, field]))),
  );
  const beside = (opening: Opening, k: number) => {
    let length = end(opening, k);
    for (const distance of metres) {
      // Flares touch before their tubes do.
      refuseOverlap(opening.radius + (end.flare?.radius ?? 0), distance);
      length += opening.radius * mutual(distance / opening.radius) * Math.cos(k * distance);
    }
    return length;
  };
  return Object.assign(beside, {
    sources: [...end.sources, 'pritchard1960'],
    greatestK: Math.min(end.greatestK ?? Number.POSITIVE_INFINITY, 1 / Math.max(0, ...metres)),
    ...(end.greatestKa !== undefined && { greatestKa: end.greatestKa }),
    ...(end.estimate !== undefined && { estimate: end.estimate }),
    ...(end.flare !== undefined && { flare: end.flare }),
  });
}
