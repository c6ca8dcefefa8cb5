import { refuse } from '../fault/index.js';
import { given, type LengthInput, optional, positive, readFields } from '../quantity/index.js';
import { type EndCorrection, flanged, type Opening, unlessEnd } from './end-correction.js';

/** A quarter-round flare at one end of a tube. */
export interface FlareInput {
  /** Radius of the rounding. The flare takes up this much of the tube's length and widens the mouth by as much on all sides. */
  readonly radius: LengthInput;
  /** End correction of the same tube without the flare; default {@link flanged}. */
  readonly end?: EndCorrection | undefined;
}

const flareShape = { radius: positive('length'), end: optional(given<EndCorrection>()) };

/**
 * End correction of a tube with a quarter-round flare, where the length of the tube includes the flare. The air in a flare is
 * lighter than that in a straight tube, so the correction is less than that of a sharp end, and negative for a wide flare.
 *
 * $$ \Delta\ell = \sqrt{\Delta\ell_0^2 + \frac{\pi^2}{8}\,aR} - R $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\Delta\ell_0$ | `end` | m | end correction of the sharp end |
 * | $R$ | `radius` | m | radius of the rounding |
 * | $a$ | `radius` of the opening | m | inner radius of the tube |
 *
 * The formula joins two exact limits: the sharp end, and a wide flare, whose $\int dx/S$ comes mostly from its throat. Between
 * them, for R up to 6 a, the square root is within 0.9 % of the potential flow for an end in a wide wall. A sum over plane
 * slices plus the end correction of the mouth would be up to 18 % too light, because the wave fronts in a flare are curved.
 *
 * @validity $k\,(a + R) \le 0.5$; an end flush with a wide wall. For every other end it is an estimate, and results say so.
 * @neglects flow separation at high level.
 * @returns an {@link EndCorrection}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source rayleigh1896 secs. 303-308 for both limits; own between them
 * @example flared({ radius: '20 mm' })({ radius: 0.0375 }, 0) // 0.0233 m
 */
export function flared(input: FlareInput): EndCorrection {
  const { radius, end = flanged } = readFields('flare', input, flareShape);
  refuse(unlessEnd('flare.end', end));
  const flare = (opening: Opening, k: number) => {
    const square = (Math.PI ** 2 / 8) * opening.radius * radius;
    return Math.sqrt(end(opening, k) ** 2 + square) - radius;
  };
  return Object.assign(flare, {
    sources: [...end.sources, 'rayleigh1896'],
    flare: { radius, end },
    ...(end !== flanged && { estimate: 'the formula for a flare holds for an end flush with a wide wall' }),
  });
}
