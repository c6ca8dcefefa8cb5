import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { atFrequency } from '../response/at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from '../response/compile.js';
import { logarithmAt } from '../response/gradient.js';
import type { GradientResult } from '../response/index.js';
import type { Limit } from './limit.js';

/** What a system does at the greatest drive that one limit allows. Natural logarithms; f is a frequency in Hz. */
export interface Within {
  readonly limit: Limit;
  /** ln of that drive, V rms, and of the radiated flow times the frequency, which is the level but for a constant. */
  readonly at: (f: number) => { readonly drive: number; readonly size: number };
  /** d size / d ln f. */
  readonly slope: (f: number) => number;
  /** The sizes at many frequencies. */
  readonly column: (grid: Float64Array) => Float64Array;
  /** ln of the radiated flow, and its gradient. */
  readonly gradient: (f: number) => GradientResult;
}

/** The road without losses: what a limit allows is in proportion to the drive. */
export function compileWithin(system: System): (limit: Limit) => Within {
  const network = compiledSystem(system);
  const { magnitude, slope } = atFrequency(network);
  const flow = probeIndex(network.probes, 'radiatedFlow');
  let swept: { readonly grid: Float64Array; readonly columns: readonly ComplexColumn[] } | undefined;
  const columnsAt = (grid: Float64Array) => {
    if (swept?.grid !== grid) swept = { grid, columns: sweptColumns(network, grid) };
    return swept.columns;
  };
  return (limit) => {
    const { probe, integrated, greatestRms } = limit;
    const place = probe === undefined ? undefined : probeIndex(network.probes, probe);
    const most = Math.log(greatestRms * (integrated ? 2 * Math.PI : 1));
    const at = (f: number, magnitudeOf: (probe: number) => number) => {
      const drive = most + (integrated ? Math.log(f) : 0) - (place === undefined ? 0 : Math.log(magnitudeOf(place)));
      return { drive, size: drive + Math.log(magnitudeOf(flow) * f) };
    };
    return {
      limit,
      at: (f) => at(f, (one) => magnitude(one, f)),
      slope: (f) => slope(flow, f) - (place === undefined ? 0 : slope(place, f)) + (integrated ? 2 : 1),
      column: (grid) => {
        const columns = columnsAt(grid);
        return grid.map((f, i) => at(f, (one) => Math.hypot(columns[one]!.re[i]!, columns[one]!.im[i]!)).size);
      },
      gradient: (f) => gradientWithin(system, 'radiatedFlow', limit, f),
    };
  };
}

/** ln of a probe at the greatest drive that a limit allows, and its gradient by everything that it depends on. */
export function gradientWithin(
  system: System,
  of: string,
  { name: binding, probe, integrated, greatestRms, exponents = {} }: Limit,
  frequency: number,
): GradientResult {
  const read = logarithmAt(system, of, frequency);
  if (!read.ok) return read;
  const limited = probe === undefined ? undefined : logarithmAt(system, probe, frequency);
  if (limited?.ok === false) return limited;
  // The area of a vent is a number of the speed of its air alone.
  const less = (by: 'byElement' | 'byNumber') => {
    const slopes: Record<string, number> = { ...read[by] };
    for (const [name, slope] of Object.entries(limited?.[by] ?? {})) slopes[name] = (slopes[name] ?? 0) - slope;
    return slopes;
  };
  const [byElement, byNumber] = [less('byElement'), less('byNumber')];
  for (const [name, exponent] of Object.entries(exponents)) {
    if (byElement[name] === undefined) refuseExponent(binding, name, Object.keys(byElement));
    // A number stands in the equations as it is or as its inverse: the two slopes differ by one factor in every result that it changes.
    const changed = [read, limited].find((one) => one?.byElement[name]);
    if (changed) byNumber[name]! += (exponent * changed.byNumber[name]!) / changed.byElement[name]!;
    byElement[name]! += exponent;
  }
  const most = Math.log(greatestRms * (integrated ? 2 * Math.PI * frequency : 1));
  return {
    ok: true,
    value: read.value + most - (limited?.value ?? 0),
    byElement,
    byNumber,
    byFrequency: read.byFrequency + (integrated ? 1 : 0) - (limited?.byFrequency ?? 0),
  };
}

function refuseExponent(limit: string, got: string, names: readonly string[]): never {
  const expected = `one of ${names.join(', ')}`;
  const path = `limits.${limit}.exponents`;
  throw new InputError([{ code: 'unknown-field', path, got, expected, remedy: 'Correct the name.' }]);
}
