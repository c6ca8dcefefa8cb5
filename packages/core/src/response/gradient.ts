import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { type FrequencyInput, logarithmicGrid, positive, read, readFields } from '../quantity/index.js';
import { atFrequency } from './at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from './compile.js';
import { complexGradientAt } from './complex-gradient.js';
import { extremumFrequency } from './extremum.js';
import { levelOfFlow, NEPER, REFERENCE_PRESSURE } from './level.js';
import type { ProbeOptions } from './probe-phase.js';

/** A real result of a system, and how it changes. */
export interface Gradient {
  readonly value: number;
  /** ∂value/∂ln of each number of the network, by the name of its slot; of the density of the air, by `air.density`. */
  readonly byElement: Readonly<Record<string, number>>;
  /** ∂value/∂ of each number as it stands in the equations (its value or the inverse), which also exists where that is 0. */
  readonly byNumber: Readonly<Record<string, number>>;
  /** ∂value/∂ln f; 0 where the result does not belong to one frequency. */
  readonly byFrequency: number;
  /** Set when two extrema are equal. The gradient is then that of the first one, and holds on one side only. */
  readonly oneSided?: true;
}

/** A gradient, or why there is none. */
export type GradientResult = ({ readonly ok: true } & Gradient) | Impossible;

/** ln of the magnitude of a probe, and its gradient by everything that it depends on. */
export function logarithmAt(system: System, probe: string, frequency: number, inReference = false): GradientResult {
  const found = complexGradientAt(system, probe, frequency, inReference);
  if (!found.ok) return found;
  const { re, im } = found.value;
  const size = Math.hypot(re, im);
  if (!(size > 0))
    return impossible('silent', `${probe} is zero at ${frequency} Hz, so its level has no gradient there`);
  // The division by the size comes first, since its square may be too small for double precision.
  const relative = (change: { re: number; im: number }) =>
    (change.re / size) * (re / size) + (change.im / size) * (im / size);
  const each = (changes: typeof found.byElement) =>
    Object.fromEntries(Object.entries(changes).map(([name, change]) => [name, relative(change)]));
  const { byElement, byNumber, byFrequency } = found;
  return {
    ok: true,
    value: Math.log(size),
    byElement: each(byElement),
    byNumber: each(byNumber),
    byFrequency: relative(byFrequency),
  };
}

const timesEach = (slopes: Readonly<Record<string, number>>, factor: number) =>
  Object.fromEntries(Object.entries(slopes).map(([name, slope]) => [name, slope * factor]));

const scaled = ({ byElement, byNumber, byFrequency }: Gradient, value: number, factor: number): Gradient => ({
  value,
  byElement: timesEach(byElement, factor),
  byNumber: timesEach(byNumber, factor),
  byFrequency: byFrequency * factor,
});

/**
 * Gradient of the level at 1 m in half space for 1 V rms at one frequency, by every element. It is exact, from the adjoint
 * equations. That of a ripple is the gradient at its top less the one at its dip: a shift of their frequencies does not matter to
 * first order.
 *
 * @validity as `levelColumn`; small changes, since it is a slope
 * @returns dB, and dB per relative change
 * @throws InputError
 * @source director1969 adjoint network
 * @example levelGradient(system, '30 Hz')
 */
export function levelGradient(system: System, frequency: FrequencyInput): GradientResult {
  const f = read('frequency', frequency, 'frequency');
  return levelAt(system, f);
}

export function levelAt(system: System, f: number, inReference = false): GradientResult {
  const flow = logarithmAt(system, 'radiatedFlow', f, inReference);
  if (!flow.ok) return flow;
  const value = levelOfFlow(Math.exp(flow.value) * f, system.air.density / REFERENCE_PRESSURE);
  const { byElement, byNumber, byFrequency } = scaled(flow, value, NEPER);
  return {
    ok: true,
    value,
    byElement: { ...byElement, 'air.density': NEPER },
    byNumber,
    byFrequency: byFrequency + NEPER,
  };
}

/** The probe of which an extremum is wanted, and the band. */
export interface ExtremumOptions extends ProbeOptions {
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
}

/** Two extrema count as equal when their relative difference is below this. */
const TIED = 1e-6;

/**
 * Gradient of the greatest magnitude of a probe in a band, per volt of drive, by every element. At an extremum a shift of the
 * frequency does not matter to first order, so the gradient at that frequency is that of the result. Where two extrema are
 * equal, the result has a kink, and the gradient holds on one side only; this is flagged.
 *
 * @validity probes without features narrower than the spacing of the 600 points of the band
 * @returns SI per volt, rms
 * @throws InputError
 * @source danskin1966 (directional derivative of a maximum)
 * @example greatestGradient(system, { probe: 'coneVelocity', integrated: true, from: '30 Hz', to: '120 Hz' })
 */
export function greatestGradient(system: System, options: ExtremumOptions): GradientResult {
  const { from, to } = readFields(
    'band',
    { from: options?.from, to: options?.to },
    { from: positive('frequency'), to: positive('frequency') },
  );
  const grid = logarithmicGrid(from, to, 600);
  const power = options.integrated ? 1 : 0;
  const network = compiledSystem(system);
  const place = probeIndex(network.probes, options.probe);
  const { magnitude, slope } = atFrequency(network);
  const at = (f: number): number => magnitude(place, f) / (2 * Math.PI * f) ** power;
  const { re, im } = sweptColumns(network, grid)[place] as ComplexColumn;
  const values = grid.map((f, i) => Math.hypot(re[i]!, im[i]!) / (2 * Math.PI * f) ** power);
  const peaks = [...grid.keys()].flatMap((i) => {
    // Strictly more than the one before, so that two equal neighbours count as one top.
    const isTop = values[i]! > (values[i - 1] ?? -1) && values[i]! >= (values[i + 1] ?? 0);
    if (!isTop) return [];
    const f = extremumFrequency(grid, i, 1, (x) => slope(place, x) - power);
    return [{ i, f, value: at(f) }];
  });
  const best = peaks.reduce((a, b) => (b.value > a.value ? b : a));
  const log = logarithmAt(system, options.probe, best.f);
  if (!log.ok) return log;
  const least = best.value * (1 - TIED);
  const alike = peaks.filter(({ value }) => value > least);
  // Only two tops with a dip between them count, since rounding alone makes many tops on a flat stretch.
  const between = values.subarray(alike[0]?.i, alike.at(-1)?.i);
  const tied = between.some((value) => value < least);
  return { ok: true, ...scaled(log, best.value, best.value), byFrequency: 0, ...(tied && { oneSided: true as const }) };
}
