import type { Network, Topology } from './element.js';
import { compileNumbers, type Equations, equations } from './equations.js';
import { refuseBadNumbers, refuseBadTopology } from './refusals.js';
import { branchesInSeries } from './series.js';
import { type Slots, slotsOf, valuesOf } from './slots.js';

/** A topology with its equations, and the numbers put into them. */
export interface NumberedEquations {
  readonly topology: Topology;
  readonly slots: Slots;
  readonly system: Equations;
  /** By slot. */
  readonly values: Float64Array;
  /** What each element stands with. */
  readonly numbers: Float64Array;
}

/** The equations of a network with its numbers. Refuses a network without meaning. */
export function numberedEquations({ topology, values: named }: Network, inReference = false): NumberedEquations {
  refuseBadTopology(topology);
  const system = equations(topology, branchesInSeries(topology));
  const slots = slotsOf(topology);
  const values = valuesOf(slots, named);
  const numbers = new Float64Array(topology.elements.length);
  compileNumbers(topology, slots, system, inReference)(values, numbers);
  refuseBadNumbers(topology, slots, values, numbers);
  return { topology, slots, system, values, numbers };
}
