import { type Air, readAir, standardAir } from '../air/index.js';
import type { Opening } from '../duct/index.js';
import { type Fault, refuse } from '../fault/index.js';
import {
  type AirSpeedPeak,
  type AirSpeedPeakInput,
  type FrequencyInput,
  notNegative,
  positive,
  readFieldsInto,
  si,
} from '../quantity/index.js';
import { type NoiseOnset, type OnsetAt, onsetsAt } from './onset.js';
import { sidesOf } from './opening-size.js';
import { geometry, openingField, type VentInput, type VentSection } from './vent-input.js';

/** holman2005: mean speed of the outward stroke over ω d, at which the vortex of a stroke escapes. The mean of a half sine is 2/π. */
const jetOf = ({ radius, ...opening }: Opening): number => {
  if (opening.aspect === undefined) return (Math.PI / 2) * 0.16 * 2 * radius;
  const [, height] = sidesOf({ radius, ...opening });
  return Math.min((Math.PI / 2) * 0.16 * 2 * radius, (Math.PI / 2) * height);
};

/** The published onsets, the gentlest condition first. */
export const noiseOnsets: readonly NoiseOnset[] = [
  {
    name: 'jets form',
    basis:
      'vortices leave a sharp edge for good: mean outward speed over ω d above 0.16 (1 for a slot); read in an abstract, how the speed is meant from memory',
    sources: ['holman2005'],
    at: (opening) => ({ displacementPeak: jetOf(opening) }),
  },
  {
    name: 'the air moves by a radius',
    basis: 'losses at an open end set in where the air moves by about the radius; from memory',
    sources: ['peters1993', 'disselhorst1980'],
    at: ({ radius }) => ({ displacementPeak: radius }),
  },
  {
    name: '10 m/s',
    basis: 'recommended for low compression and distortion, 10 m/s peak; read second-hand',
    sources: ['salvatti2002'],
    at: () => ({ airSpeedPeak: 10 }),
  },
  {
    name: '10 m/s rms',
    basis: 'common practice: 10 m/s rms',
    sources: ['common-practice'],
    at: () => ({ airSpeedPeak: 10 * Math.SQRT2 }),
  },
  {
    name: '5 % of the speed of sound',
    basis: 'common practice: about 17 m/s peak',
    sources: ['common-practice'],
    at: (_opening, { speedOfSound }) => ({ airSpeedPeak: 0.05 * speedOfSound }),
  },
  {
    name: 'turbulent walls',
    basis:
      'the layer at the walls turns turbulent, at Reynolds numbers of 500 to 550; from memory, between 200 and 850, thresholds of its stability read in an abstract',
    sources: ['hino1976', 'blondeaux2021'],
    at: () => ({ boundaryReynolds: 500 }),
  },
];

/**
 * Speed at which an onset is reached.
 *
 * $$ \hat u = \omega\xi \quad\text{or}\quad \hat u = Re_\delta\sqrt{\tfrac12\nu\omega} $$
 *
 * @validity any frequency above zero
 * @returns m/s, peak
 * @source hino1976 Reynolds number of the layer at the wall, solved for the speed
 * @example onsetSpeed({ displacementPeak: 0.0188 }, 30, standardAir) // 3.54
 */
export function onsetSpeed(onset: OnsetAt, frequency: number, { density, viscosity }: Air): number {
  if ('airSpeedPeak' in onset) return onset.airSpeedPeak;
  if ('displacementPeak' in onset) return 2 * Math.PI * frequency * onset.displacementPeak;
  return onset.boundaryReynolds * Math.sqrt((Math.PI * frequency * viscosity) / density);
}

const section = { vent: openingField };

/**
 * The narrowest opening of one vent, from what people write.
 *
 * @validity any vent
 * @throws InputError those of `ventNoise`
 * @returns radius, and the ratio of its sides where it is not round
 * @source own (geometry)
 * @example openingOf({ diameter: '75 mm' }).radius // 0.0375 m
 */
export function openingOf(vent: VentSection | VentInput): Opening {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, '', { vent }, section);
  const form = read && geometry(faults, read.vent);
  refuse(faults);
  return form!.inner;
}

export interface VentNoiseInput {
  readonly vent: VentSection | VentInput;
  readonly frequency: FrequencyInput;
  readonly airSpeedPeak: AirSpeedPeakInput;
}

/** What is known of a vent at one frequency and speed. */
export interface VentNoise {
  /** `quiet` below the lowest published onset, `noisy` above the highest, `doubtful` between them. */
  readonly verdict: 'quiet' | 'doubtful' | 'noisy';
  /** The onsets from the lowest to the highest, with the speed at which each is reached. */
  readonly onsets: readonly {
    readonly onset: NoiseOnset;
    readonly airSpeedPeak: AirSpeedPeak;
    readonly passed: boolean;
  }[];
}

const shape = { ...section, frequency: positive('frequency'), airSpeedPeak: notNegative('airSpeedPeak') };

/**
 * Whether a vent may be heard, by all published onsets. No formula tells from which speed on a listener hears a vent: papers and
 * practice give onsets of what comes before it, and they lie apart.
 *
 * $$ \hat u_{jet} = \tfrac{\pi}{2}\,0.16\,\omega d,\quad \hat u_{radius} = \omega a,\quad
 *    \hat u_{wall} = 500\sqrt{\tfrac12\nu\omega},\quad 10\;\mathrm{m/s},\quad \sqrt2\cdot 10\;\mathrm{m/s},\quad 0.05\,c $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega/2\pi$ | `frequency` | Hz | frequency of the bass |
 * | $d, a$ | `vent` | m | diameter and radius of one vent |
 * | $\nu$ | | m²/s | kinematic viscosity |
 *
 * The constant of a long slot is 1 and counts from its height: $\tfrac{\pi}{2}\,\omega h$. Since no opening between round and long was
 * published, a slot takes the lesser of this and of the round opening of its area. (An earlier abstract of the same authors has 2 for
 * a slot; the lower one is used.)
 *
 * @validity the ends of the vent as sharp as printed ones or rounder: wide rounded ends stay quiet longer
 * @neglects resonances of the pipe that a whistle can lock to; the music, which masks; where the listener sits
 * @returns a verdict, and the onsets in the order in which they are reached
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`; `empty` and
 *   `inconsistent` also for no onset, and for one that tells no speed
 * @source holman2005 formation of jets; peters1993 open ends; hino1976 turbulence; salvatti2002 recommended speed
 * @example ventNoise({ vent: { diameter: '75 mm' }, frequency: '30 Hz', airSpeedPeak: '3 m/s' }).verdict // 'quiet'
 */
export function ventNoise(
  input: VentNoiseInput,
  { onsets = noiseOnsets, air = standardAir }: { readonly onsets?: readonly NoiseOnset[]; readonly air?: Air } = {},
): VentNoise {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, '', input, shape);
  const form = read && geometry(faults, read.vent);
  refuse(faults);
  const medium = readAir(air);
  const { frequency, airSpeedPeak } = read!;
  const reached = onsetsAt(onsets, form!.inner, medium);
  const told = onsets
    .map((onset, i) => {
      const speed = onsetSpeed(reached[i]!, frequency, medium);
      return { onset, airSpeedPeak: si('airSpeedPeak', speed), passed: airSpeedPeak > speed };
    })
    .sort((a, b) => a.airSpeedPeak - b.airSpeedPeak);
  const passed = told.filter((one) => one.passed).length;
  return { verdict: passed === 0 ? 'quiet' : passed === told.length ? 'noisy' : 'doubtful', onsets: told };
}
