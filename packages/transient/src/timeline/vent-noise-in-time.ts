import type { Air } from '@airspring/core/air';
import { type Fault, refuse } from '@airspring/core/fault';
import { type NoiseOnset, onsetSpan, openingOf, type VentInput, type VentSection } from '@airspring/core/vent';
import { atOwnPath } from './at-own-path.js';
import { isAirSpeed, SPEED } from './hearing.js';
import type { Judge } from './slice.js';

/** A vent whose noise is judged. */
export interface TimelineVent {
  readonly vent: VentInput | VentSection;
  /** The probe of its air speed, where a system has unlike vents: 'ventAirSpeed front'; default `ventAirSpeed`. */
  readonly probe?: string;
  /** Its share of that speed, where the air in another vent is faster; default 1. */
  readonly share?: number;
}

/**
 * Whether vents may be heard, by published onsets: 'quiet vent' while no vent reaches any of them, 'noisy vent' from where one
 * has passed them all. Between these it is doubtful.
 *
 * Onsets are published for sines. A slice is held against those of the sine that has its peak speed û and its longest stroke 2ξ, of the
 * frequency û/(2πξ). An onset that is a travel of the air is then judged by the travel itself, and one that is a speed by the speed;
 * the frequency matters only to turbulence at the walls. The lowest frequency of the band would call a vent noisy that the music never
 * drives there.
 */
export function noiseJudges(
  vents: readonly TimelineVent[],
  onsets: readonly NoiseOnset[],
  air: Air,
  outputs: readonly string[],
): readonly Judge[] {
  if (vents.length === 0) return [];
  refuse(vents.flatMap((vent, i) => [...unlessShare(vent, i), ...unlessProbe(vent, i, outputs)]));
  const each = vents.map(({ vent, share = 1, probe = SPEED }, i) => {
    const opening = atOwnPath(
      (path) => `timeline.vents[${i}].${path}`,
      () => openingOf(vent),
    );
    return { at: outputs.indexOf(probe), spanAt: onsetSpan([{ opening, share }], air, onsets, 'timeline.onsets') };
  });
  const judge =
    (side: 'quiet' | 'noisy'): Judge['used'] =>
    ({ peak, airTravel }) => {
      let most = 0;
      for (const { at, spanAt } of each) {
        const [speed, travel] = [peak[at]!, airTravel[at]!];
        // Speed and stroke in an opening have the same share, so that the frequency stays.
        if (speed > 0 && travel > 0)
          most = Math.max(most, speed / spanAt(speed / (2 * Math.PI * travel))[side].airSpeedPeak);
      }
      return most;
    };
  return [
    { name: 'quiet vent', basis: 'below every published onset of noise', used: judge('quiet') },
    { name: 'noisy vent', basis: 'above every published onset of noise', used: judge('noisy') },
  ];
}

const unlessShare = ({ share = 1 }: TimelineVent, i: number): Fault[] => {
  if (share > 0 && share < Infinity) return [];
  const code = Number.isFinite(share) ? 'not-positive' : 'not-finite';
  const remedy = 'Leave it out for a vent whose speed the probe tells.';
  return [{ code, path: `timeline.vents[${i}].share`, got: share, expected: 'a share above 0', remedy }];
};

const unlessProbe = ({ probe = SPEED }: TimelineVent, i: number, outputs: readonly string[]): Fault[] => {
  if (isAirSpeed(probe) && outputs.includes(probe)) return [];
  const speeds = outputs.filter(isAirSpeed);
  const expected = speeds.length > 0 ? `one of ${speeds.join(', ')}` : 'a box with a probe of its air speed';
  const remedy = speeds.length > 0 ? 'Name the probe of this vent.' : 'Leave out the vents of a box without one.';
  return [{ code: 'inconsistent', path: `timeline.vents[${i}].probe`, got: probe, expected, remedy }];
};
