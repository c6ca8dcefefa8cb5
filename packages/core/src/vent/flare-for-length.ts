import { type Air, readAir, standardAir } from '../air/index.js';
import { finiteFlange, flared } from '../duct/index.js';
import { type Fault, InputError, refuse, type Warning } from '../fault/index.js';
import { boundedMinimum, bracketedRoot } from '../numeric/index.js';
import {
  type FrequencyInput,
  given,
  kinds,
  type Length,
  type LengthInput,
  notNegative,
  oneOf,
  optional,
  positive,
  readFieldsInto,
  si,
  type VolumeFlow,
  type VolumeInput,
} from '../quantity/index.js';
import { movingLength } from './effective-length.js';
import { noiseOnsets, onsetSpeed, openingOf } from './noise-onset.js';
import { type NoiseOnset, onsetsAt } from './onset.js';
import { geometry } from './vent-input.js';
import { ventLoss } from './vent-loss.js';
import { ventWarnings } from './vent-warnings.js';

/** What a flared tube is chosen for. Exactly one of `netVolume` and `diameter` must be given. */
export interface FlareForLengthInput {
  /** From mouth to mouth, with the flares. */
  readonly length: LengthInput;
  /** The tuning, and the bass that is asked for noise. */
  readonly fb: FrequencyInput;
  /** Air volume with the vent in place: the tube is as wide as the tuning asks. */
  readonly netVolume?: VolumeInput | undefined;
  /** Narrowest diameter, which stays: the tuning rises with the flare. */
  readonly diameter?: LengthInput | undefined;
  /** Which ends are flared; default both. */
  readonly flares?: 'both' | 'outer' | undefined;
  /** Thickness of the tube wall; default 0. */
  readonly wall?: LengthInput | undefined;
  /** Default: all published ones. */
  readonly onsets?: readonly NoiseOnset[] | undefined;
}

/** A tube of the length with a flare. */
export interface FlaredTube {
  /** Radius of the quarter round; 0 for a straight tube. */
  readonly flare: Length;
  /** Where it is narrowest. */
  readonly diameter: Length;
  readonly mouthDiameter: Length;
  readonly effectiveLength: Length;
  /** Pressure that both ends lose of the same flow, over that which those of the straight tube lose. */
  readonly lossRatio: number;
  /** Peak flow up to which no onset is reached: at the least if the jet leaves the narrowest place, at the most if it follows the flare. */
  readonly quietFlowPeak: { readonly low: VolumeFlow; readonly high: VolumeFlow };
  readonly warnings: readonly Warning[];
}

/** The best flares of a length. */
export interface FlareForLength {
  readonly straight: FlaredTube;
  /** Whose ends lose least of the same flow. */
  readonly leastLoss: FlaredTube;
  /** Whose outlet stays below every onset up to the greatest flow, if the air follows the flare. */
  readonly quietest: FlaredTube;
}

const shape = {
  length: positive('length'),
  fb: positive('frequency'),
  netVolume: optional(positive('volume')),
  diameter: optional(positive('length')),
  flares: optional(oneOf('both', 'outer')),
  wall: optional(notNegative('length')),
  onsets: optional(given<readonly NoiseOnset[]>()),
};

/** Diameters that are accepted, m. */
const [least, most] = kinds.length.range;
/** Flares that are tried before the best is refined between its neighbours. Tables of losses have kinks. */
const TRIED = 100;
/** Tubes whose measures differ by less are equal, and the smaller flare is taken. */
const EQUAL = 1e-6;

/**
 * Which flare suits a tube of a given length best. A larger one loses less and widens the mouth. But the air in it is lighter than in
 * a straight tube, so that a tube for the same tuning must be narrower, and its air is faster.
 *
 * $$ \frac{S}{k^2 V} = L + \Delta\ell_{outer}(R) + \Delta\ell_{inner}(R),\qquad
 *    \frac{\Delta p(R)}{\Delta p(0)} = \frac{K(R)\,S_0^2}{K_0\,S^2},\qquad
 *    \hat U_{quiet} = \min\left(\omega\,\xi_{mouth}\,S_{mouth},\; \hat u\,S\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `length` | m | length with the flares |
 * | $R$ | `flare` | m | radius of the quarter round |
 * | $S$ | `diameter` | m² | narrowest cross-section |
 * | $V, k$ | `netVolume`, `fb` | m³, rad/m | volume, and $2\pi f_b/c$ |
 * | $\Delta\ell$ | | m | end corrections: `flared` |
 * | $K$ | `lossRatio` | 1 | loss coefficient of both ends: `ventLoss` |
 * | $\xi_{mouth}$ | `onsets` | m | least travel of the air at the mouth at which an onset is reached |
 * | $\hat u$ | `onsets` | m/s | least speed in the narrowest place at which one is reached |
 *
 * Vortices form at an edge, so that an onset by the travel of the air counts at the outer mouth if the air follows the flare; an onset by
 * its speed counts where the tube is narrowest. Nobody published up to which level air follows a quarter round: `low` takes all onsets
 * at the narrowest place, and by it no flare is better than the straight tube of the same tuning. Listeners heard the best of such
 * tubes 10 to 16 dB later than straight ones, and 1 to 3 dB later than their neighbours (bezzola2019).
 *
 * @validity as `tuning` and `ventLoss`; a mouth that has a wide wall around it
 * @neglects noise of the inner end; what the flow recovers in a flare; turbulent walls; bends
 * @returns three tubes
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `conflict`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-308 mass of tube and flares; idelchik1966 rounded entrances; holman2005 formation of jets
 * @source bezzola2019 an optimum flare, and what it gains (abstract)
 * @example flareForLength({ length: '25 cm', fb: '27 Hz', netVolume: '45 L' }).leastLoss.flare // 0.0127 m
 */
export function flareForLength(input: FlareForLengthInput, air: Air = standardAir): FlareForLength {
  readAir(air);
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, '', input, shape);
  if (read && (read.netVolume === undefined) === (read.diameter === undefined)) {
    const code = read.diameter === undefined ? 'empty' : 'conflict';
    const remedy = 'Give the volume that the tube tunes, or its narrowest diameter.';
    faults.push({ code, path: 'netVolume', got: read.netVolume, expected: 'either netVolume or diameter', remedy });
  }
  refuse(faults);
  const { length, fb, netVolume, diameter, flares = 'both', wall, onsets = noiseOnsets } = read!;
  const k = (2 * Math.PI * fb) / air.speedOfSound;
  const tube = (across: number, flare: number) => {
    // A flare that is less than the least length is an edge.
    const radius = si('length', flare);
    const ends = flare > least && {
      outerEnd: flared({ radius }),
      ...(flares === 'both' && { innerEnd: flared({ radius, end: finiteFlange }) }),
    };
    return { diameter: si('length', across), length, ...(wall !== undefined && { wall }), ...ends };
  };
  const effective = (across: number, flare: number): number =>
    movingLength(geometry([], tube(across, flare)), length, k);
  /** How much more mass a tube of a diameter needs for the tuning, as a length. It is below zero for the narrowest and turns once. */
  const missing = (across: number, flare: number): number =>
    (Math.PI * across ** 2) / 4 / (k * k * netVolume!) - effective(across, flare);
  const diameterFor = (flare: number): number => {
    if (diameter !== undefined) return diameter;
    const found = bracketedRoot((across) => missing(across, flare), least, most, 1e-15);
    if (found.ok) return found.x;
    const expected = `a tuning that a tube of this length gives, ${least} to ${most} m across`;
    const remedy = 'Correct the tuning, the volume or the length.';
    throw new InputError([{ code: 'inconsistent', path: 'fb', got: fb, expected, remedy }]);
  };
  const flowOf = (across: number, mouth: number): number => {
    const [throat, outlet] = [across, mouth].map((one) => {
      const opening = openingOf({ diameter: si('length', one) });
      return { area: Math.PI * opening.radius ** 2, at: onsetsAt(onsets, opening, air) };
    }) as [{ area: number; at: ReturnType<typeof onsetsAt> }, { area: number; at: ReturnType<typeof onsetsAt> }];
    const flows = outlet.at.map((one, i) =>
      'displacementPeak' in one
        ? onsetSpeed(one, fb, air) * outlet.area
        : onsetSpeed(throat.at[i]!, fb, air) * throat.area,
    );
    return Math.min(...flows);
  };
  const lost = (across: number, flare: number): number => {
    const { outward, inward } = ventLoss({ vent: tube(across, flare) }).quadratic;
    return (outward + inward) / across ** 4;
  };
  const sharp = diameterFor(0);
  const sharpLoss = lost(sharp, 0);
  const measured = (flare: number) => {
    const across = diameterFor(flare);
    return { across, lossRatio: lost(across, flare) / sharpLoss, high: flowOf(across, across + 2 * flare) };
  };
  const tubeAt = (flare: number): FlaredTube => {
    const { across, lossRatio, high } = measured(flare);
    return {
      flare: si('length', flare),
      diameter: si('length', across),
      mouthDiameter: si('length', across + 2 * flare),
      effectiveLength: si('length', effective(across, flare)),
      lossRatio,
      quietFlowPeak: { low: si('volumeFlow', flowOf(across, across)), high: si('volumeFlow', high) },
      warnings: ventWarnings(geometry([], tube(across, flare)), k),
    };
  };
  const greatest = flares === 'both' ? length / 2 : length;
  const tried = Array.from({ length: TRIED + 1 }, (_, i) => {
    const flare = (greatest * i) / TRIED;
    return { flare, ...measured(flare) };
  });
  /** The flare of the least value: the smallest, where several have it. */
  const best = (of: (one: Pick<ReturnType<typeof measured>, 'lossRatio' | 'high'>) => number): FlaredTube => {
    const values = tried.map(of);
    const lowest = Math.min(...values);
    const i = values.findIndex((value) => value <= lowest + Math.abs(lowest) * EQUAL);
    const at = (n: number) => tried[Math.min(Math.max(n, 0), TRIED)]!.flare;
    const { x, value } = boundedMinimum((flare) => of(measured(flare)), at(i - 1), at(i + 1));
    return tubeAt(value < values[i]! ? x : at(i));
  };
  return { straight: tubeAt(0), leastLoss: best((one) => one.lossRatio), quietest: best((one) => -one.high) };
}
