import { kept, type System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type CompiledNetwork, type CompiledTopology, missingProbe, undamped, valuesOf } from '../network/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';

const topologyOf = (system: System): CompiledTopology =>
  kept(system, 'topology', () => {
    const compiled = system?.network && system.compile?.(system.network.topology);
    if (compiled) return compiled;
    const expected = 'a system that its own compile accepts';
    const remedy = 'Make it by a family; a copy through JSON has no `compile`.';
    throw new InputError([{ code: 'inconsistent', path: 'system', got: system?.family, expected, remedy }]);
  });

const networkOf = (system: System, inReference: boolean): CompiledNetwork => {
  const compiled = topologyOf(system);
  return compiled.network(valuesOf(compiled.slots, system.network.values), inReference);
};

/**
 * The compiled network of a system. It is made at its first use, and kept with the system if `systemOf` made that.
 *
 * @validity any system
 * @throws InputError for a network without meaning
 * @source own (look-up)
 * @example compiledSystem(system).probes
 */
export const compiledSystem = (system: System): CompiledNetwork =>
  kept(system, 'network', () => networkOf(system, false));

/** The same system, or a refusal of what is none: for functions that read its parts before they compile it. */
export function givenSystem(system: System): System {
  if (!system?.network || !system.compile) compiledSystem(system);
  return system;
}

/** The same for the reference level: the inductive parts of the coil are shorted, the leak is left out. */
export const compiledReference = (system: System): CompiledNetwork =>
  kept(system, 'reference', () => networkOf(system, true));

/** One complex value for each probe and frequency, by name. */
export type ProbeColumns = Readonly<Record<string, ComplexColumn>>;

/** Columns of all probes of a network, in their order. Allocates them, and refuses a resonance that nothing damps. */
export function sweptColumns({ probes, sweep }: CompiledNetwork, frequencies: Float64Array): readonly ComplexColumn[] {
  const out = probes.map(() => complexColumn(frequencies.length));
  const stopped = sweep(frequencies, out);
  if (stopped >= 0) throw undamped(frequencies[stopped]!);
  return out;
}

/**
 * Sweeps every probe of a network over frequencies in Hz, per volt of drive. Allocates its columns.
 *
 * @validity frequencies above 0
 * @throws InputError `inconsistent` at a resonance that nothing damps
 * @source own (allocation around the sweep)
 * @example probeColumns(compiledSystem(system), frequencies).coneVelocity
 */
export function probeColumns(network: CompiledNetwork, frequencies: Float64Array): ProbeColumns {
  const out = sweptColumns(network, frequencies);
  return Object.fromEntries(network.probes.map((name, i) => [name, out[i] as ComplexColumn]));
}

/**
 * The column of a probe, or a fault that names the missing probe.
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

/** The place of the probe of that name, or the places of the probes `name part` where several parts have one each. */
export const probePlaces = (probes: readonly string[], name: string): readonly number[] =>
  [...probes.keys()].filter((i) => probes[i] === name || (probes[i] as string).startsWith(`${name} `));

/** The place of a probe among those of a network, or a fault that names the missing probe. */
export function probeIndex(probes: readonly string[], name: string): number {
  const index = probes.indexOf(name);
  if (index < 0) throw missingProbe(name);
  return index;
}
