import type { System } from '../enclosure/index.js';
import { type Impossible, InputError, impossible } from '../fault/index.js';
import { compilePlan, missingProbe, type Network, probeGradient, withoutCoilInductance } from '../network/index.js';
import { boundedMinimum, complexColumn } from '../numeric/index.js';
import { type FrequencyInput, logarithmicGrid, positive, read, readFields } from '../quantity/index.js';
import { compileNetwork } from './compile.js';
import { type CutoffOptions, cutoff } from './cutoff.js';
import { farAway } from './level.js';
import { levelColumn } from './respond.js';

/** A real result of a system, and how it changes. */
export interface Gradient {
  readonly value: number;
  /**
   * ∂value/∂ln of each element's value, by its name; of the factor of a probe, by `probes.name`; of the density of the air,
   * by `air.density`.
   */
  readonly byElement: Readonly<Record<string, number>>;
  /** ∂value/∂ln f; 0 where the result belongs to no one frequency. */
  readonly byFrequency: number;
  /** Set when two extrema are equal: the gradient then is that of the first, and holds to one side only. */
  readonly oneSided?: true;
}

/** A gradient, or why there is none. */
export type GradientResult = ({ readonly ok: true } & Gradient) | Impossible;

const undamped = (frequency: number) =>
  impossible('undamped', `nothing damps the network at ${frequency} Hz, so that it has no gradient there`);

/** d(20 log10 |y|) = 20/ln 10 · Re(dy/y). */
const DB = 20 / Math.LN10;

/** ln of the magnitude of a probe, by everything it hangs on. */
function logarithm(network: Network, probe: string, frequency: number): GradientResult {
  const found = probeGradient(network, probe, frequency);
  if (found === undefined) return undamped(frequency);
  const { re, im } = found.value;
  const size = Math.hypot(re, im);
  if (!(size > 0))
    return impossible('silent', `${probe} is nothing at ${frequency} Hz, so that its level has no gradient there`);
  // Divided by the size first: its square may be too small for double precision.
  const relative = (change: { re: number; im: number }) =>
    (change.re / size) * (re / size) + (change.im / size) * (im / size);
  const byElement: Record<string, number> = { [`probes.${probe}`]: 1 };
  for (const [name, change] of Object.entries(found.byElement)) byElement[name] = relative(change);
  return { ok: true, value: Math.log(size), byElement, byFrequency: relative(found.byFrequency) };
}

const scaled = ({ byElement, byFrequency }: Gradient, value: number, factor: number): Gradient => ({
  value,
  byElement: Object.fromEntries(Object.entries(byElement).map(([name, slope]) => [name, slope * factor])),
  byFrequency: byFrequency * factor,
});

/**
 * Level at 1 m in half space for 1 V rms at one frequency, by every element: exact, by the adjoint equations.
 *
 * @validity as `levelColumn`; small changes, since it is a slope
 * @returns dB, and dB per relative change
 * @throws InputError
 * @source director1969 adjoint network
 * @example levelGradient(system, '30 Hz')
 */
export function levelGradient(system: System, frequency: FrequencyInput): GradientResult {
  const f = read('frequency', frequency, 'frequency');
  return levelOfNetwork(system.network, system.air.density, f);
}

function levelOfNetwork(network: Network, density: number, f: number): GradientResult {
  const flow = logarithm(network, 'radiatedFlow', f);
  if (!flow.ok) return flow;
  const out = new Float64Array(1);
  const size = { re: Float64Array.of(Math.exp(flow.value)), im: new Float64Array(1) };
  levelColumn(Float64Array.of(f), size, density, 1, out);
  const { byElement, byFrequency } = scaled(flow, 0, DB);
  const level = { value: out[0] as number, byElement: { ...byElement, 'air.density': DB } };
  return { ok: true, ...level, byFrequency: byFrequency + DB };
}

/** Reference level, by every element but the coil's inductance: as `referenceLevel`, from two far frequencies. */
function referenceGradient({ network, air }: System): GradientResult {
  const flat = withoutCoilInductance(network);
  const [near, far] = farAway(compileNetwork(flat)).map((f) => levelOfNetwork(flat, air.density, f)) as [
    GradientResult,
    GradientResult,
  ];
  if (!near.ok) return near;
  if (!far.ok) return far;
  const join = (a: number, b: number) => (4 * b - a) / 3;
  const byElement = Object.fromEntries(
    Object.entries(near.byElement).map(([name, slope]) => [name, join(slope, far.byElement[name] as number)]),
  );
  return { ok: true, value: join(near.value, far.value), byElement, byFrequency: 0 };
}

/**
 * A cut-off by every element, by the implicit function theorem on level − reference + drop = 0:
 *
 * $$ \frac{\partial \ln f}{\partial\theta} = -\frac{\partial L/\partial\theta - \partial L_{ref}/\partial\theta}{\partial L/\partial \ln f} $$
 *
 * @validity cut-offs from the asymptote, as {@link cutoff}
 * @returns Hz, and Hz per relative change
 * @throws InputError
 * @source rudin1976 thm 9.28
 * @example cutoffGradient(system)
 */
export function cutoffGradient(system: System, options: Omit<CutoffOptions, 'reference'> = {}): GradientResult {
  const { reference: from = 'asymptote' } = options as CutoffOptions;
  if (from !== 'asymptote') {
    const [path, remedy] = ['cutoff.reference', 'Leave it out.'];
    throw new InputError([
      { code: 'inconsistent', path, got: from, expected: "'asymptote', the one there is", remedy },
    ]);
  }
  const found = cutoff(system, options);
  if (!found.ok) return found;
  const f = found.frequency as number;
  const level = levelOfNetwork(system.network, system.air.density, f);
  const reference = referenceGradient(system);
  if (!level.ok) return level;
  if (!reference.ok) return reference;
  const names = new Set([...Object.keys(level.byElement), ...Object.keys(reference.byElement)]);
  const byElement = Object.fromEntries(
    [...names].map((name) => {
      const change = (level.byElement[name] ?? 0) - (reference.byElement[name] ?? 0);
      return [name, (-f * change) / level.byFrequency];
    }),
  );
  return { ok: true, value: f, byElement, byFrequency: 0 };
}

/** What of a probe an extremum is sought of. */
export interface ExtremumOptions {
  readonly probe: string;
  /** Whether the probe is integrated over time first: a velocity into a displacement. */
  readonly integrated?: boolean;
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
}

/** Extrema this close to each other, relatively, count as equal. */
const TIED = 1e-6;

/**
 * Greatest magnitude of a probe in a band, per volt of drive, by every element. At an extremum the frequency it stands at
 * does not matter to first order, so that its own gradient is that of the result; where two extrema are equal, the result
 * has a kink, the gradient holds to one side, and says so.
 *
 * @validity probes without features narrower than the 600 points of the band
 * @returns SI per volt, rms
 * @throws InputError
 * @source danskin1966 (directional derivative of a maximum)
 * @example greatestGradient(system, { probe: 'coneVelocity', integrated: true, from: '30 Hz', to: '120 Hz' })
 */
export function greatestGradient(system: System, options: ExtremumOptions): GradientResult {
  const { from, to } = readFields(
    'band',
    { from: options.from, to: options.to },
    { from: positive('frequency'), to: positive('frequency') },
  );
  const grid = logarithmicGrid(from, to, 600);
  const power = options.integrated ? 1 : 0;
  const { elements, probes } = system.network;
  const probe = Object.hasOwn(probes, options.probe) ? probes[options.probe] : undefined;
  if (probe === undefined) throw missingProbe(options.probe);
  const plan = compilePlan({ elements, probes: { [options.probe]: probe } });
  const [frequency, column] = [new Float64Array(1), complexColumn(1)];
  const at = (f: number): number => {
    frequency[0] = f;
    if (plan.sweep(frequency, [column]) >= 0) return Infinity;
    return Math.hypot(column.re[0] as number, column.im[0] as number) / (2 * Math.PI * f) ** power;
  };
  const values = grid.map(at);
  const tops = [...grid.keys()].filter(
    // More than the one before: two equal neighbours are one top.
    (i) => (values[i] as number) > (values[i - 1] ?? -1) && (values[i] as number) >= (values[i + 1] ?? 0),
  );
  const peaks = tops.map((i) => {
    const [low, high] = [(grid[i - 1] ?? grid[i]) as number, (grid[i + 1] ?? grid[i]) as number];
    const { x: f, value } = boundedMinimum((f) => -at(f), low, high, 1e-10);
    const edge = grid[i] as number;
    return -value > at(edge) ? { f, value: -value } : { f: edge, value: at(edge) };
  });
  const best = peaks.reduce((a, b) => (b.value > a.value ? b : a));
  const log = logarithm(system.network, options.probe, best.f);
  if (!log.ok) return log;
  const tied = peaks.filter(({ value }) => value > best.value * (1 - TIED)).length > 1;
  const { byElement } = scaled(log, best.value, best.value);
  return { ok: true, value: best.value, byElement, byFrequency: 0, ...(tied && { oneSided: true as const }) };
}
