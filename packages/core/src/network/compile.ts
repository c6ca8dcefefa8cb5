import type { CompiledNetwork, CompiledTopology } from './compiled.js';
import type { Network, Topology } from './element.js';
import { compilePlan } from './plan.js';
import { compilePolynomials } from './polynomials.js';
import { valuesOf } from './slots.js';
import type { SweepRows } from './sweep.js';

/**
 * Compiles a topology to polynomials if they are few, otherwise to an elimination plan. Networks of one topology share the
 * compilation and hold only their numbers.
 *
 * @validity any topology of the network floor
 * @throws InputError for a topology without meaning
 * @source own (choice between `compilePolynomials` and `compilePlan`)
 * @returns the compiled topology
 * @example compile(system.network.topology).probes
 */
export const compile = (topology: Topology, sweepRows?: SweepRows): CompiledTopology =>
  compilePolynomials(topology, sweepRows) ?? compilePlan(topology);

/**
 * Compiles a single network. For several networks of one topology, compile the topology once with {@link compile}.
 *
 * @throws InputError for a topology without meaning, or numbers that do not fit it
 * @example compileNetwork(system.network).probes
 */
export function compileNetwork({ topology, values }: Network, inReference = false): CompiledNetwork {
  const compiled = compile(topology);
  return compiled.network(valuesOf(compiled.slots, values), inReference);
}
