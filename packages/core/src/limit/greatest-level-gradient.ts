import type { System } from '../enclosure/index.js';
import { type Impossible, InputError } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import {
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  positive,
  read,
  readFields,
  si,
} from '../quantity/index.js';
import { atFrequency } from '../response/at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from '../response/compile.js';
import { extremumFrequency } from '../response/extremum.js';
import { levelAt, logarithmAt } from '../response/gradient.js';
import type { Gradient } from '../response/index.js';
import { NEPER } from '../response/level.js';
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

/** The number of frequencies of a band. */
const POINTS = 600;
/** Two levels count as equal within this relative difference of their pressures. */
const TIED = 1e-6;
/** Dips of one limit that are nearer, in ln f, are rounding on a flat stretch. */
const APART = 0.02;

/** Where a limit holds the level. */
interface Held {
  readonly limit: Limit;
  readonly frequency: number;
  /** ln of flow times frequency at the greatest drive that the limit allows there. */
  readonly size: number;
}

/** ln of flow times frequency at the greatest drive that one limit allows, at single frequencies and in columns, and its slope by ln f. */
function compileWithin(system: System, { probe, integrated, greatestRms }: Limit) {
  const network = compiledSystem(system);
  const { magnitude, slope } = atFrequency(network);
  const flow = probeIndex(network.probes, 'radiatedFlow');
  const place = probe === undefined ? undefined : probeIndex(network.probes, probe);
  const power = integrated ? 2 : 1;
  const most = Math.log(greatestRms * (integrated ? 2 * Math.PI : 1));
  const size = (f: number, magnitudeOf: (probe: number) => number) =>
    most + Math.log(magnitudeOf(flow) / (place === undefined ? 1 : magnitudeOf(place))) + power * Math.log(f);
  return {
    at: (f: number) => size(f, (probe) => magnitude(probe, f)),
    slope: (f: number) => slope(flow, f) - (place === undefined ? 0 : slope(place, f)) + power,
    column: (grid: Float64Array, columns: readonly ComplexColumn[]) =>
      grid.map((f, i) => size(f, (probe) => Math.hypot(columns[probe]!.re[i]!, columns[probe]!.im[i]!))),
  };
}

function refuseExponent(limit: string, got: string, names: readonly string[]): never {
  const expected = `one of ${names.join(', ')}`;
  const path = `limits.${limit}.exponents`;
  throw new InputError([{ code: 'unknown-field', path, got, expected, remedy: 'Correct the name.' }]);
}

/** The gradient where a limit holds the level. */
function gradientOf(system: System, { limit, frequency }: Held, oneSided: boolean): GreatestLevelGradient {
  const { name: binding, probe, integrated = false, greatestRms, exponents = {} } = limit;
  const level = levelAt(system, frequency);
  if (!level.ok) return level;
  const limited = probe === undefined ? undefined : logarithmAt(system, probe, frequency);
  if (limited?.ok === false) return limited;
  const less = (by: 'byElement' | 'byNumber') =>
    Object.fromEntries(
      Object.entries(level[by]).map(([name, slope]) => [name, slope - NEPER * (limited?.[by][name] ?? 0)]),
    );
  const [byElement, byNumber] = [less('byElement'), less('byNumber')];
  for (const [name, exponent] of Object.entries(exponents)) {
    if (byElement[name] === undefined) refuseExponent(binding, name, Object.keys(byElement));
    const change = NEPER * exponent;
    // A number stands in the equations as it is or as its inverse: the two slopes differ by one factor in every result that it changes.
    const changed = [level, limited].find((one) => one?.byElement[name]);
    if (changed) byNumber[name]! += (change * changed.byNumber[name]!) / changed.byElement[name]!;
    byElement[name]! += change;
  }
  const drive = Math.log(greatestRms * (integrated ? 2 * Math.PI * frequency : 1)) - (limited?.value ?? 0);
  return {
    ok: true,
    value: level.value + NEPER * drive,
    byElement,
    byNumber,
    byFrequency: level.byFrequency + NEPER * ((integrated ? 1 : 0) - (limited?.byFrequency ?? 0)),
    binding,
    frequency: si('frequency', frequency),
    ...(oneSided && { oneSided: true as const }),
  };
}

const leastOf = (held: readonly Held[]): Held => held.reduce((a, b) => (b.size < a.size ? b : a));

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
 *
 * @validity small changes, since it is a slope; where two limits bind at once, on one side
 * @neglects what `greatestLevel` neglects
 * @returns dB, and dB per relative change
 * @throws InputError as `greatestLevel`; `unit`, `not-finite`, `not-positive`, `out-of-range` for the frequency
 * @source director1969 adjoint network
 * @source small1973vented2 displacement-limited and thermally limited power
 * @example greatestLevelGradient(system, [...travelLimit(driver), voltageLimit('20 V')], '40 Hz')
 */
export function greatestLevelGradient(
  system: System,
  limits: readonly Limit[],
  frequency: FrequencyInput,
): GreatestLevelGradient {
  const f = read('frequency', frequency, 'frequency');
  refuseBadLimits(limits);
  const held = limits.map((limit) => ({ limit, frequency: f, size: compileWithin(system, limit).at(f) }));
  const least = leastOf(held);
  return gradientOf(system, least, held.filter(({ size }) => size < least.size + TIED).length > 1);
}

/**
 * Gradient of the greatest level that a system can play at every frequency of a band. It is that where this level is least, since a shift
 * of this frequency does not matter to first order. There one limit alone holds the level: of two that cross, one is lower beside
 * the crossing.
 *
 * @validity as {@link greatestLevelGradient}; no feature of the level narrower than the spacing of the 600 points of the band
 * @neglects what `greatestLevel` neglects
 * @returns dB, and dB per relative change; the limit, and the frequency; 0 by frequency
 * @throws InputError as {@link greatestLevelGradient}, for the band
 * @source danskin1966 (directional derivative of a maximum)
 * @example leastGreatestLevelGradient(system, travelLimit(driver), { from: '30 Hz', to: '120 Hz' })
 */
export function leastGreatestLevelGradient(
  system: System,
  limits: readonly Limit[],
  band: { readonly from: FrequencyInput; readonly to: FrequencyInput },
): GreatestLevelGradient {
  const { from, to } = readFields('band', band, { from: positive('frequency'), to: positive('frequency') });
  const grid = logarithmicGrid(from, to, POINTS);
  refuseBadLimits(limits);
  const columns = sweptColumns(compiledSystem(system), grid);
  const dips = limits.flatMap((limit): Held[] => {
    const { at, slope, column } = compileWithin(system, limit);
    const sizes = column(grid, columns);
    return [...grid.keys()].flatMap((i) => {
      // Strictly less than the one before, so that two equal neighbours count as one dip.
      if (!(sizes[i]! < (sizes[i - 1] ?? Infinity) && sizes[i]! <= (sizes[i + 1] ?? Infinity))) return [];
      const frequency = extremumFrequency(grid, i, -1, slope);
      return [{ limit, frequency, size: at(frequency) }];
    });
  });
  const least = leastOf(dips);
  const isOther = ({ limit, frequency }: Held) =>
    limit !== least.limit || Math.abs(Math.log(frequency / least.frequency)) > APART;
  const tied = dips.some((one) => one.size < least.size + TIED && isOther(one));
  const found = gradientOf(system, least, tied);
  return found.ok ? { ...found, byFrequency: 0 } : found;
}
