import { InputError } from '../fault/index.js';
import { type Length, type LengthInput, positive, readFields, si } from '../quantity/index.js';
import { ROUNDING } from '../quantity/rounding.js';
import type { EndCorrection, Opening } from './end-correction.js';

/** How many terms the series may take: at contact, its slowest case, 1500 leave 3e-9. */
const mostTerms = 1500;

/** The sum in closed form, x = d/a from 2 on. */
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
  /** Between the two centres; of an opening beside a wall, twice its distance from it. */
  readonly distance: LengthInput;
}

const shape = { diameter: positive('length'), distance: positive('length') };

/**
 * How much longer each of two equal openings in a wall acts because of the other one, both moving in step.
 *
 * $$ \Delta\ell = \frac{a}{2x}\;{}_3F_2\!\left(\tfrac12, \tfrac12, \tfrac32;\, 2, 3;\, \tfrac{4}{x^2}\right),\qquad
 *    x = \frac da $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `diameter` | m | radius |
 * | $d$ | `distance` | m | distance of the centres |
 *
 * @validity $kd \le 0.5$, at which it is 14 % too long; in the limit of low frequency exact for rigid pistons that do not
 *   overlap.
 * @neglects the dependence on frequency; how the second opening changes the flow over the first.
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
  if (distance >= 2 * radius - ROUNDING) return;
  const expected = `at least ${2 * radius} m, where the openings touch`;
  throw new InputError([
    { code: 'inconsistent', path: 'distance', got: distance, expected, remedy: 'Set them farther apart.' },
  ]);
}

/**
 * An end correction with what neighbours add: equal openings in the same wall that move in step, or walls beside the
 * opening, each of which mirrors it at twice its distance.
 *
 * $$ \Delta\ell = \Delta\ell_{alone} + \sum_i \Delta\ell_{mutual}(d_i)\,\cos kd_i $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\Delta\ell_{alone}$ | `end` | m | end correction of the opening alone |
 * | $d_i$ | `distances` | m | between centres, see {@link mutualLength} |
 * | $k$ | `k` | rad/m | wave number |
 *
 * The cosine is what small openings have of each other's waves; {@link mutualLength} is its limit.
 *
 * @validity $kd \le 1$, where openings that nearly touch are 4 % off, 0.3 % at $kd = 0.5$; the range of the end alone. Of
 *   two walls, the image in the corner counts as well.
 * @neglects how the second opening changes the flow over the first; the resistance that it adds.
 * @returns an {@link EndCorrection}; it refuses an opening wider than a distance
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source pritchard1960 mutual radiation impedance, static limit and point sources
 * @example withNeighbours(flanged, ['100 mm'])({ radius: 0.0375 }, 0) // 0.0381 m
 */
export function withNeighbours(end: EndCorrection, distances: readonly LengthInput[]): EndCorrection {
  const field = positive('length');
  const list = Object.fromEntries(distances.map((distance, i) => [String(i), distance]));
  const metres = Object.values(
    readFields('distances', list, Object.fromEntries(Object.keys(list).map((i) => [i, field]))),
  );
  const beside = (opening: Opening, k: number) => {
    let length = end(opening, k);
    for (const distance of metres) {
      // Flares meet before their tubes do.
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
