import type { Air } from '../air/index.js';
import type { Opening } from '../duct/index.js';
import { noiseOnsets, onsetSpeed } from './noise-onset.js';
import { type NoiseOnset, onsetsAt } from './onset.js';

/** An opening in which the air has this share of the speed of the fastest. */
export interface SharedOpening {
  readonly opening: Opening;
  readonly share: number;
}

/** An onset, and the speed in the fastest opening at which it is reached, m/s. */
export interface OnsetReached {
  readonly airSpeedPeak: number;
  readonly onset: NoiseOnset;
}

/** Between which speeds it is doubtful whether openings are heard. */
export interface OnsetSpan {
  /** Below it every opening is below every onset. */
  readonly quiet: OnsetReached;
  /** Above it one of them has passed them all. */
  readonly noisy: OnsetReached;
}

/**
 * Between which speeds it is doubtful whether openings of one box are heard, as a function of the frequency: from the first onset in
 * any of them to the last one in that which has passed them all first.
 *
 * $$ \hat u_{quiet} = \min_j \min_k \frac{\hat u_k(j)}{s_j},\qquad \hat u_{noisy} = \min_j \max_k \frac{\hat u_k(j)}{s_j} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\hat u_k(j)$ | `onsets` | m/s | speed of onset k in opening j, see `onsetSpeed` |
 * | $s_j$ | `share` | 1 | speed in opening j over that of the fastest |
 *
 * @validity as `ventNoise`; openings whose air moves in step, one at least; onsets, one at least
 * @neglects as `ventNoise`
 * @returns a function of the frequency in Hz
 * @throws InputError `empty` without an onset, `inconsistent` for one that tells no speed; `path` is where they stand
 * @source holman2005 formation of jets; peters1993 open ends; hino1976 turbulence; salvatti2002 recommended speed
 * @example onsetSpan([{ opening: openingOf({ diameter: '75 mm' }), share: 1 }], standardAir)(30).quiet.airSpeedPeak // 3.55
 */
export function onsetSpan(
  openings: readonly SharedOpening[],
  air: Air,
  onsets: readonly NoiseOnset[] = noiseOnsets,
  path = 'onsets',
): (frequency: number) => OnsetSpan {
  const each = openings.map(({ opening, share }) => ({ share, at: onsetsAt(onsets, opening, air, path) }));
  return (frequency) => {
    const reached = each.map(({ share, at }) => {
      const speeds = at.map((one) => onsetSpeed(one, frequency, air) / share);
      const told = (speed: number): OnsetReached => ({ airSpeedPeak: speed, onset: onsets[speeds.indexOf(speed)]! });
      return { quiet: told(Math.min(...speeds)), noisy: told(Math.max(...speeds)) };
    });
    const first = (side: 'quiet' | 'noisy') =>
      reached.reduce(
        (least, one) => (one[side].airSpeedPeak < least.airSpeedPeak ? one[side] : least),
        reached[0]![side],
      );
    return { quiet: first('quiet'), noisy: first('noisy') };
  };
}
