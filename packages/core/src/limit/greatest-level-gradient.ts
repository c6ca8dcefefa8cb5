import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import type { Impossible } from '../fault/index.js';
import {
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  optional,
  positive,
  read,
  readFields,
  si,
} from '../quantity/index.js';
import { extremumFrequency } from '../response/extremum.js';
import type { Gradient } from '../response/index.js';
import { levelOfFlow, NEPER, REFERENCE_PRESSURE } from '../response/level.js';
import { compileWithin, type Within } from './gradient-within.js';
import { compileWithinLoss } from './gradient-within-loss.js';
import { refuseBadLimits } from './greatest-level.js';
import type { Limit } from './limit.js';

/** A greatest level and how it changes, or why that cannot be told. */
export type GreatestLevelGradient =
  | ({ readonly ok: true } & Gradient & {
        /** Name of the limit that binds. The level rises by 20/ln 10 dB for each relative change of what it allows. */
        readonly binding: string;
        readonly frequency: Frequency;
      })
  | Impossible;

export interface GreatestLevelGradientOptions {
  /** What the vent loses by the speed of its air, as in `greatestLevelWithLosses`; default nothing. One vent, or several alike. */
  readonly loss?: FlowLoss;
}

const shape = { loss: optional(flowLossField) };

/** The number of frequencies of a band. */
const POINTS = 600;
/** Two levels count as equal within this relative difference of their pressures. */
const TIED = 1e-6;
/** Dips of one limit that are nearer, in ln f, are rounding on a flat stretch. */
const APART = 0.02;
/** Of the samples of a band, dips that lie higher above the least one, in ln, are not followed: between two samples a dip is no deeper. */
const FOLLOWED = 0.1;

/** Where a limit holds the level. */
interface Held {
  readonly within: Within;
  readonly frequency: number;
  /** What is least where the limit binds: ln of the drive, or of flow times frequency. */
  readonly least: number;
}

/** The gradient where a limit holds the level. */
function gradientOf(system: System, { within, frequency }: Held, oneSided: boolean): GreatestLevelGradient {
  const found = within.gradient(frequency);
  if (!found.ok) return found;
  const inDecibels = (slopes: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(slopes).map(([name, slope]) => [name, NEPER * slope]));
  const { value, byElement, byNumber, byFrequency } = found;
  const density = 1 + (byElement['air.density'] ?? 0);
  return {
    ok: true,
    value: levelOfFlow(Math.exp(value) * frequency, system.air.density / REFERENCE_PRESSURE),
    byElement: inDecibels({ ...byElement, 'air.density': density }),
    byNumber: inDecibels(byNumber),
    byFrequency: NEPER * (byFrequency + 1),
    binding: within.limit.name,
    frequency: si('frequency', frequency),
    ...(oneSided && { oneSided: true as const }),
  };
}

/** Each limit as a road from its value to the level, with the loss of the vent where there is one. */
function roads(system: System, limits: readonly Limit[], options: GreatestLevelGradientOptions): readonly Within[] {
  const { loss } = readFields('options', options, shape);
  refuseBadLimits(limits);
  return limits.map(loss ? compileWithinLoss(system, loss) : compileWithin(system));
}

const leastOf = (held: readonly Held[]): Held => held.reduce((a, b) => (b.least < a.least ? b : a));

/**
 * Gradient of the greatest level of a steady sine within every limit at one frequency, by every element: the level for one volt
 * rises with an element, and the value that the binding limit judges takes some of the drive away. It is exact, from the adjoint
 * equations.
 *
 * $$ \frac{\partial L_{max}}{\partial\ln\theta} = \frac{20}{\ln 10}\,\mathrm{Re}\left(\frac{\partial\ln U}{\partial\ln\theta}
 *    - \frac{\partial\ln h_k}{\partial\ln\theta} + \frac{\partial\ln g_k}{\partial\ln\theta}\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | | m³/(s V) | radiated flow |
 * | $h_k$ | `probe` | SI per V | value that the binding limit k judges |
 * | $g_k$ | `greatestRms`, `exponents` | SI | greatest value that it allows |
 * | $\theta$ | `byElement` | SI | a number of the network |
 * | $R$ | `loss` | Pa·s/m³ | what the vent loses, as an acoustic resistance at the peak speed $\hat u$ of its air |
 *
 * Where the vent loses by its speed, its resistance follows the speed at which the limit is reached. With $l$ and $v$ the logarithms of
 * flow and speed at the greatest drive, both with R held, the implicit function theorem adds to each slope
 *
 * $$ \frac{\partial l}{\partial R}\,\frac{dR}{d\ln\theta},\qquad \frac{dR}{d\ln\theta} =
 *    \frac{\partial R/\partial\ln\theta + R'\,\partial v/\partial\ln\theta}{1 - R'\,\partial v/\partial R},\qquad
 *    R' = \frac{\partial R}{\partial\ln\hat u} $$
 *
 * The slopes of a loss itself are taken by differences of fourth order, since it is any function.
 *
 * @validity small changes, since it is a slope; where two limits bind at once, on one side; as `greatestLevelWithLosses` with a loss
 * @neglects what `greatestLevel` neglects; with a loss, that a change of the box may change the loss: its sizes and ends are held, and
 *   of the air its density alone counts
 * @returns dB, and dB per relative change
 * @throws InputError as `greatestLevel`; `unit`, `not-finite`, `not-positive`, `out-of-range` for the frequency; those of
 *   `greatestLevelWithLosses` for a loss
 * @source director1969 adjoint network
 * @source small1973vented2 displacement-limited and thermally limited power
 * @source ingard1967 quasi-steady loss of its fundamental
 * @example greatestLevelGradient(system, [...travelLimit(driver), voltageLimit('20 V')], '40 Hz')
 */
export function greatestLevelGradient(
  system: System,
  limits: readonly Limit[],
  frequency: FrequencyInput,
  options: GreatestLevelGradientOptions = {},
): GreatestLevelGradient {
  const f = read('frequency', frequency, 'frequency');
  const held = roads(system, limits, options).map((within) => ({ within, frequency: f, least: within.at(f).drive }));
  const binding = leastOf(held);
  return gradientOf(system, binding, held.filter(({ least }) => least < binding.least + TIED).length > 1);
}

/**
 * Gradient of the greatest level that a system can play at every frequency of a band. It is that where this level is least, since a shift
 * of this frequency does not matter to first order. There one limit alone holds the level: of two that cross, one is lower beside
 * the crossing.
 *
 * @validity as {@link greatestLevelGradient}; no feature of the level narrower than the spacing of the 600 points of the band; with a
 *   loss, where more drive makes more level
 * @neglects what {@link greatestLevelGradient} neglects
 * @returns dB, and dB per relative change; the limit, and the frequency; 0 by frequency
 * @throws InputError as {@link greatestLevelGradient}, for the band
 * @source danskin1966 (directional derivative of a maximum)
 * @example leastGreatestLevelGradient(system, travelLimit(driver), { from: '30 Hz', to: '120 Hz' })
 */
export function leastGreatestLevelGradient(
  system: System,
  limits: readonly Limit[],
  band: { readonly from: FrequencyInput; readonly to: FrequencyInput },
  options: GreatestLevelGradientOptions = {},
): GreatestLevelGradient {
  const { from, to } = readFields('band', band, { from: positive('frequency'), to: positive('frequency') });
  const grid = logarithmicGrid(from, to, POINTS);
  const sampled = roads(system, limits, options).map((within) => ({ within, sizes: within.column(grid) }));
  const most = Math.min(...sampled.map(({ sizes }) => Math.min(...sizes))) + FOLLOWED;
  const dips = sampled.flatMap(({ within, sizes }): Held[] =>
    [...grid.keys()].flatMap((i) => {
      // Strictly less than the one before, so that two equal neighbours count as one dip.
      const isDip = sizes[i]! < (sizes[i - 1] ?? Infinity) && sizes[i]! <= (sizes[i + 1] ?? Infinity);
      if (!isDip || sizes[i]! > most) return [];
      const frequency = extremumFrequency(grid, i, -1, within.slope);
      return [{ within, frequency, least: within.at(frequency).size }];
    }),
  );
  const least = leastOf(dips);
  const isOther = ({ within, frequency }: Held) =>
    within !== least.within || Math.abs(Math.log(frequency / least.frequency)) > APART;
  const tied = dips.some((one) => one.least < least.least + TIED && isOther(one));
  const found = gradientOf(system, least, tied);
  return found.ok ? { ...found, byFrequency: 0 } : found;
}
