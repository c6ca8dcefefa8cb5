import { type DisplacementPeakInput, positive, type RatioInput, readFields } from '@airspring/core/quantity';
import type { ExactSpring } from './curve.js';

/** Where the cone meets something hard. */
export interface StopInput {
  /** How far it moves freely outwards. */
  readonly outward: DisplacementPeakInput;
  /** The same inwards. */
  readonly inward: DisplacementPeakInput;
  /** Stiffness of what it meets, over that of the suspension at rest; at most 10,000. */
  readonly stiffness: RatioInput;
}

const shape = {
  outward: positive('displacementPeak'),
  inward: positive('displacementPeak'),
  stiffness: positive('ratio'),
};

/**
 * A hard stop as a stiff spring that begins at a stated displacement, so that its energy is known at any time:
 *
 * $$ E = \tfrac12\,k\,d^2,\quad F = k\,d,\qquad d = \max(x - x_{out}, 0)\ \text{or}\ \min(x + x_{in}, 0) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x_{out}, x_{in}$ | `outward`, `inward` | m | free travel |
 * | $k$ | `stiffness` | 1 | over the stiffness of the suspension at rest |
 *
 * @validity a coil former on the back plate, a spider at its end: what springs back
 * @neglects what is lost in the blow
 * @returns a {@link Spring}
 * @throws InputError those of the fields
 * @source own (definition)
 * @example stop({ outward: '14 mm', inward: '12 mm', stiffness: 100 })
 */
export function stop(input: StopInput): ExactSpring {
  const { outward, inward, stiffness } = readFields('stop', input, shape);
  const depth = (x: number): number => (x > outward ? x - outward : x < -inward ? x + inward : 0);
  const at = (x: number, out: Float64Array): void => {
    const d = depth(x);
    out[0] = stiffness * d;
    out[1] = d === 0 ? 0 : stiffness;
  };
  const between = (from: number, to: number, out: Float64Array): void => {
    const [a, b] = [depth(from), depth(to)];
    if (a === 0 && b === 0) {
      out[0] = 0;
      out[1] = 0;
    } else if (a * b > 0 || from === to) {
      out[0] = (stiffness * (a + b)) / 2;
      out[1] = stiffness / 2;
    } else {
      const move = to - from;
      const mean = (stiffness * (b * b - a * a)) / (2 * move);
      out[0] = mean;
      out[1] = (stiffness * b - mean) / move;
    }
  };
  return {
    name: 'stop',
    sources: ['own'],
    reach: Infinity,
    energy: (x) => (stiffness * depth(x) ** 2) / 2,
    at,
    between,
  };
}
