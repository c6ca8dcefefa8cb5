import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { Frequency } from '../quantity/index.js';
import { type Crossed, type CutoffOptions, crossing, levelToCross } from './cutoff.js';

/** The two ends of a stretch in which the level is high enough. An end is left out where it lies beyond the band. */
interface Edges {
  readonly lower?: Frequency;
  readonly upper?: Frequency;
}

/** The ends of a passband, or why there is none. */
export type Passband = ({ readonly ok: true } & Edges) | Impossible;

/** The place of the greatest level. */
export function topOf(levels: ArrayLike<number>): number {
  let top = 0;
  for (let i = 1; i < levels.length; i++) if (levels[i]! > levels[top]!) top = i;
  return top;
}

/** The stretch around the greatest level of a response that has already been sampled; empty where even that is too low. */
export function passbandIn(crossed: Crossed): Edges {
  const { grid, levels, wanted } = crossed;
  const top = topOf(levels);
  if (levels[top]! < wanted) return {};
  let [below, above] = [top, top];
  while (below >= 0 && levels[below]! >= wanted) below--;
  while (above < grid.length && levels[above]! >= wanted) above++;
  return {
    ...(below >= 0 && { lower: crossing(crossed, grid[below]!, grid[below + 1]!) }),
    ...(above < grid.length && { upper: crossing(crossed, grid[above - 1]!, grid[above]!) }),
  };
}

/**
 * The band that a system passes: the stretch around its greatest level in which the level stays at or above the reference minus
 * a drop. The reference is the maximum itself unless another one is given, so that this serves a band-pass, which has no asymptote.
 *
 * $$ L(f) \ge L_{ref} - d, \quad f_l \le f \le f_u, \quad f_l < f_{max} < f_u $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `drop` | dB | how far the level may fall; default half power |
 * | $f_l, f_u$ | `lower`, `upper` | Hz | ends of the stretch; left out where they lie beyond the band |
 *
 * @validity responses without features narrower than the spacing of the 400 points of the band; tops and dips between points
 * are found
 * @neglects what `respond` neglects
 * @returns both ends in Hz, or why the level is never high enough
 * @throws InputError
 * @source geddes1989 bandwidth of a band-pass
 * @example passband(fourthOrderBandPass({ drivers, rearVolume: '20 L', frontVolume: '15 L', frontTuning: '52 Hz' }))
 */
export function passband(system: System, options: CutoffOptions = {}): Passband {
  const crossed = levelToCross(system, options, ['passband', 'maximum']);
  const top = Math.max(...Array.from(crossed.levels));
  if (top >= crossed.wanted) return { ok: true, ...passbandIn(crossed) };
  const text = `the greatest level of the band is ${(crossed.wanted - top).toFixed(2)} dB too low`;
  return impossible('below-throughout', text);
}
