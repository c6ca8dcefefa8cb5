import { InputError } from '../fault/index.js';
import {
  compilePlan,
  compileTopology,
  elementValues,
  missingProbe,
  type Network,
  sweepRows,
} from '../network/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';

/** A network ready to be swept: by its polynomials where it is lumped, else by its elimination plan. */
export interface CompiledNetwork {
  readonly probes: readonly string[];
  /** Fills one complex column for each probe, per volt of drive, at frequencies in Hz. A kernel: checks nothing. */
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => void;
  /** The polynomials, where there are any: row 0 the denominator, row 1 + i that of probe i, in powers of s / scale. */
  readonly polynomials?: Polynomials;
}

/** Coefficients of powers of s / scale, row by row. */
export interface Polynomials {
  readonly coefficients: Float64Array;
  readonly width: number;
  readonly scale: number;
}

/**
 * Prepares a network; what differs between a lumped and any other network stays inside.
 *
 * @validity any network of the network floor
 * @throws InputError for a network without meaning; when swept, `inconsistent` at a resonance that nothing damps
 * @source own (choice between `compileTopology` and `compilePlan`)
 * @example compileNetwork(system.network).probes
 */
export function compileNetwork(network: Network): CompiledNetwork {
  const topology = compileTopology(network);
  if (topology === undefined) {
    const plan = compilePlan(network);
    const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]) => {
      const stopped = plan.sweep(frequencies, out);
      if (stopped >= 0) throw undamped(frequencies[stopped] as number);
    };
    return { probes: plan.probes, sweep };
  }
  const { width, scale } = topology;
  const coefficients = new Float64Array((1 + topology.probes.length) * width);
  topology.coefficients(elementValues(network.elements), coefficients);
  let work = complexColumn(0);
  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]) => {
    if (work.re.length < frequencies.length) work = complexColumn(frequencies.length);
    sweepRows(coefficients, width, scale, frequencies, out, work);
  };
  return { probes: topology.probes, sweep, polynomials: { coefficients, width, scale } };
}

/** A resonance without any loss, met exactly: there is no finite answer. */
export const undamped = (frequency: number) =>
  new InputError([
    {
      code: 'inconsistent',
      path: 'network',
      got: frequency,
      expected: 'a network that is damped at every frequency asked for',
      remedy: `Add a resistance: nothing damps the resonance at ${frequency} Hz.`,
    },
  ]);

/** What is left of a denominator this much smaller than its terms is rounding. */
const ROUNDING = 8 * Number.EPSILON;

/** Refuses frequencies at which the terms of the denominator cancel to the last bits. */
function refuseUndamped({ coefficients, width, scale }: Polynomials, frequencies: Float64Array): void {
  for (let i = 0; i < frequencies.length; i++) {
    const w = (2 * Math.PI * (frequencies[i] as number)) / scale;
    let [even, odd, sizes] = [0, 0, 0];
    for (let k = 0, power = 1; k < width; k++, power *= w) {
      const term = (coefficients[k] as number) * power;
      const signed = k % 4 < 2 ? term : -term;
      if (k % 2 === 0) even += signed;
      else odd += signed;
      sizes += Math.abs(term);
    }
    if (Math.abs(even) + Math.abs(odd) <= ROUNDING * sizes) throw undamped(frequencies[i] as number);
  }
}

/** One complex value per probe and frequency, by name. */
export type ProbeColumns = Readonly<Record<string, ComplexColumn>>;

/**
 * Sweeps every probe of a network over frequencies in Hz, per volt of drive. Allocates its columns.
 *
 * @validity as {@link compileNetwork}; frequencies above 0
 * @throws InputError `inconsistent` at a resonance that nothing damps
 * @source own (allocation around the sweep)
 * @example probeColumns(compileNetwork(system.network), frequencies).coneVelocity
 */
export function probeColumns({ probes, sweep, polynomials }: CompiledNetwork, frequencies: Float64Array): ProbeColumns {
  const out = probes.map(() => complexColumn(frequencies.length));
  if (polynomials !== undefined) refuseUndamped(polynomials, frequencies);
  sweep(frequencies, out);
  const bad = out.findIndex((column) => column.re.some((re, i) => !Number.isFinite(re + (column.im[i] as number))));
  if (bad >= 0) {
    const { re, im } = out[bad] as ComplexColumn;
    throw undamped(frequencies[re.findIndex((value, i) => !Number.isFinite(value + (im[i] as number)))] as number);
  }
  return Object.fromEntries(probes.map((name, i) => [name, out[i] as ComplexColumn]));
}

/**
 * A probe that the response needs, or a fault that names it.
 *
 * @validity any columns
 * @throws InputError `empty`
 * @source own (look-up)
 * @example probeNamed(columns, 'radiatedFlow')
 */
export function probeNamed(columns: ProbeColumns, name: string): ComplexColumn {
  const column = Object.hasOwn(columns, name) ? columns[name] : undefined;
  if (column === undefined) throw missingProbe(name);
  return column;
}

/** The probe of that name, or those of several parts, `name part`, that each have one; none where it is not there. */
export const probesNamed = (columns: ProbeColumns, name: string): readonly ComplexColumn[] =>
  Object.entries(columns).flatMap(([probe, column]) =>
    probe === name || probe.startsWith(`${name} `) ? [column] : [],
  );

/** The place of a probe among those of a network, or a fault that names it. */
export function probeIndex(probes: readonly string[], name: string): number {
  const index = probes.indexOf(name);
  if (index < 0) throw missingProbe(name);
  return index;
}
