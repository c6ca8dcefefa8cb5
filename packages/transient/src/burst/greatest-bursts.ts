import { type Impossible, impossible, refuse } from '@airspring/core/fault';
import type { Limit } from '@airspring/core/limit';
import {
  type Frequency,
  format,
  frequencyGrid,
  optional,
  positive,
  readFields,
  si,
  type VoltageRmsInput,
} from '@airspring/core/quantity';
import type { Simulated } from '../simulation/index.js';
import { type BurstChoices, type BurstOptions, readBurst } from './burst-options.js';
import { burstRunner } from './burst-runner.js';
import { type BandLevel, type PlayedBurst, told } from './played-burst.js';
import { type Tried, triedBursts } from './tried-bursts.js';

/** Which bursts are tried. */
export interface GreatestBurstsOptions extends BurstOptions {
  /** The greatest drive that is tried, as that of a sine with the peak of the burst. */
  readonly driveVoltageRms: VoltageRmsInput;
  /** The least; default a hundredth of the greatest. */
  readonly leastVoltageRms?: VoltageRmsInput;
}

/** The greatest burst of a frequency that keeps every limit and every threshold. A plain record. */
export interface GreatestBurst extends Omit<PlayedBurst, 'bands'> {
  readonly ok: true;
  /** What is passed at a drive that is 0.02 dB greater, by the name of its limit or band; or `greatest drive`, where nothing is. */
  readonly binding: string;
  /** The distortion of each band; `linear` is that of the same box without the models, which comes of the window of the burst alone. */
  readonly bands: readonly (BandLevel & { readonly linear: number })[];
}

/** The frequency of a burst of which even the least drive passes something. */
export type NoBurst = Impossible & { readonly frequency: Frequency };

/** Frequencies at which bursts are commonly played: the third octaves from 20 to 63 Hz, Hz. */
export const burstFrequencies = [20, 25, 31.5, 40, 50, 63] as const;

/** The drive climbs by 6 dB while everything uses less than a tenth, from there by 2 dB, and is then found to 0.02 dB. */
const [FAR, CLIMB, PRECISION] = [10 ** (6 / 20), 10 ** (2 / 20), 10 ** (0.02 / 20)];
const LITTLE = 0.1;

const shape = { driveVoltageRms: positive('voltageRms'), leastVoltageRms: optional(positive('voltageRms')) };

/**
 * The greatest shaped burst at each frequency that passes no limit and no threshold of distortion, and what binds, in the manner of
 * CTA-2010:
 *
 * $$ e_{max} = \max\lbrace e : q_k(e') \le 1\ \text{for all}\ k,\ e' \le e\rbrace,\qquad q_{band} = 10^{(L_{band} - T_{band})/20} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $e$ | `driveVoltageRms` | V | drive, as that of a sine with the peak of the burst |
 * | $q_k$ | `limits` | 1 | peak over what the limit allows the peak of a sine |
 * | $L, T$ | `thresholds` | dB | distortion of a band and its threshold |
 *
 * The drive climbs from the least until something is passed, by 2 dB once anything uses a tenth, and is then found between the last two
 * to 0.02 dB. Distortion need not grow with the drive: it is the first passing from below that counts, where it is wider than a step.
 *
 * @validity as `playBurst`; a result that is `beyondReach` rests on curves beyond what was measured
 * @neglects limits that are means over a long time, such as heat: a burst is over before they act; passings narrower than 2 dB
 * @returns for each frequency the greatest burst, or why there is none: the code is `least-drive-passes`
 * @throws InputError those of `playBurst`; `inconsistent` for a least drive that is not the lesser one
 * @source ponteggia2013 method of the measurement
 * @example greatestBursts(box, [...travelLimit(driver), voltageLimit('28 V')], burstFrequencies, { driveVoltageRms: '28 V', stiffness })
 */
export function greatestBursts(
  system: Simulated,
  limits: readonly Limit[],
  frequencies: ArrayLike<number>,
  { driveVoltageRms, leastVoltageRms, ...options }: GreatestBurstsOptions,
): readonly (GreatestBurst | NoBurst)[] {
  const { driveVoltageRms: most, leastVoltageRms: least = most / 100 } = readFields(
    'burst',
    { driveVoltageRms, leastVoltageRms },
    shape,
  );
  if (!(least < most)) refuseLeast(least, most);
  const choices = readBurst(options);
  const top = limits.reduce(
    (top: Top, { name, probe, averaged, greatestRms }) =>
      probe === undefined && !averaged && greatestRms <= top.drive ? { drive: greatestRms, name } : top,
    { drive: most, name: 'greatest drive' },
  );
  return Array.from(frequencyGrid(frequencies), (frequency) =>
    greatestAt(system, limits, frequency, choices, [Math.min(least, top.drive), top]),
  );
}

const refuseLeast = (least: number, most: number) =>
  refuse([
    {
      code: 'inconsistent',
      path: 'burst.leastVoltageRms',
      got: least,
      expected: `less than the greatest drive, ${most} V`,
      remedy: 'Leave it out for a hundredth of the greatest.',
    },
  ]);

/** The greatest drive that is tried, and what it comes from: a limit on the drive itself is known without trying. */
interface Top {
  readonly drive: number;
  readonly name: string;
}

function greatestAt(
  system: Simulated,
  limits: readonly Limit[],
  frequency: number,
  choices: BurstChoices,
  [least, top]: readonly [number, Top],
): GreatestBurst | NoBurst {
  const { tone, tried } = triedBursts(system, limits, frequency, choices);
  /** What the window of the burst alone has. */
  const { levels: own } = burstRunner(system, frequency, [], { ...choices, models: {} }).run(1).spectrum;
  const { kept, passing } = firstPassing(tried, least, top.drive);
  if (kept === undefined) return { ...none(passing!, choices, own), frequency: si('frequency', frequency) };
  const found = told(kept.burst, { frequency, voltagePeak: Math.SQRT2 * kept.drive, tone }, choices.thresholds);
  const bands = found.bands.map((band, i) => ({ ...band, linear: own[i]! }));
  return { ...found, ok: true, binding: passing?.worst.name ?? top.name, bands };
}

/** The greatest drive below the first passing, and the least that passes; one of them is missing where none or all pass. */
function firstPassing(tried: (drive: number) => Tried, least: number, most: number) {
  let passing: Tried | undefined;
  let kept: Tried | undefined;
  for (let drive = least; passing === undefined; ) {
    const next = tried(drive);
    if (next.isPassed) passing = next;
    else kept = next;
    if (drive >= most) break;
    drive = Math.min(most, drive * (next.worst.used < LITTLE ? FAR : CLIMB));
  }
  while (kept && passing && passing.drive > kept.drive * PRECISION) {
    const next = tried(Math.sqrt(passing.drive * kept.drive));
    if (next.isPassed) passing = next;
    else kept = next;
  }
  return { kept, passing };
}

/** Why not even the least drive is possible. */
function none({ drive, burst, worst }: Tried, { thresholds }: BurstChoices, own: readonly number[]): Impossible {
  const at = `at the least drive that was tried, ${format('voltageRms', drive, 'V', 3)}`;
  const i = thresholds.bands.findIndex(({ name }) => name === worst.name);
  if (i < 0) return impossible('least-drive-passes', `${worst.name} is passed ${at}`);
  const [level, threshold, linear] = [burst.spectrum.levels[i]!, thresholds.bands[i]!.level, own[i]!].map((value) =>
    value.toFixed(1),
  );
  const text = `${worst.name}: ${level} dB ${at}, above its threshold of ${threshold} dB; the window of the burst alone has ${linear} dB in this box`;
  return impossible('least-drive-passes', text);
}
