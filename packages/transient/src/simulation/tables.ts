import { type CoilGiven, type Inputs, inputsOf, type Row, solved } from './companion.js';
import type { Parts } from './parts.js';

/** The numbers of a simulation, by rows: those of the stores, the electrical ones first, then those of the nonlinear parts. */
export interface Tables {
  readonly interval: number;
  readonly stores: number;
  readonly electrical: number;
  /** Places: the cone, then each loss. */
  readonly places: number;
  /** The state of each store at the end of an interval, from the states at its start and the means over it. */
  readonly fromStores: Float64Array;
  readonly fromDrive: Float64Array;
  readonly fromCoil: Float64Array;
  readonly fromForces: Float64Array;
  /** Mean speed of the cone and mean flow of each loss from stores and forces. */
  readonly speedsFromStores: Float64Array;
  readonly speedsFromForces: Float64Array;
  /** Mean current from the electrical stores, the drive, and what the coil induces. */
  readonly currentFromStores: Float64Array;
  readonly currentFromDrive: number;
  readonly admittance: number;
}

/** Makes the tables of the implicit midpoint rule, for an interval in s. */
export function tablesOf(parts: Parts, losses: readonly string[], interval: number): Tables {
  const inputs = inputsOf(parts, losses);
  const network = solved(parts, inputs, interval, 'voltage');
  const stores = inputs.stores.length;
  const places = 1 + losses.length;
  const means = inputs.stores.map(({ does, nodes, name }) =>
    does === 'stores potential' ? network.potential(nodes) : (network.flow(name) as Row),
  );
  const speeds = [network.potential(parts.motor.mechanical), ...losses.map((name) => network.flow(name) as Row)];
  const current = network.flow(parts.motor.name) as Row;
  /** Means are halfway: what a store is at the end is twice its mean less what it was. */
  const ends = means.map((row, k) => row.map((value, i) => 2 * value - (i === k ? 1 : 0)));
  const part = (rows: readonly Row[], from: number, count: number) =>
    Float64Array.from(rows.flatMap((row) => [...row.subarray(from, from + count)]));
  return {
    interval,
    stores,
    electrical: inputs.stores.filter(({ isElectrical }) => isElectrical).length,
    places,
    fromStores: part(ends, 0, stores),
    fromDrive: part(ends, inputs.drive, 1),
    fromCoil: part(ends, inputs.coil, 1),
    fromForces: part(ends, inputs.force, places),
    speedsFromStores: part(speeds, 0, stores),
    speedsFromForces: part(speeds, inputs.force, places),
    currentFromStores: current.subarray(0, stores),
    currentFromDrive: current[inputs.drive]!,
    admittance: -current[inputs.coil]!,
  };
}

/** The rows over all inputs that read a network at an instant, and at which rate each store changes then. */
export function instantOf(parts: Parts, losses: readonly string[], coil: CoilGiven) {
  const inputs: Inputs = inputsOf(parts, losses);
  const network = solved(parts, inputs, 0, coil);
  const rates = inputs.stores.map(({ does, nodes, name, value }): Row => {
    if (does === 'stores potential') return (network.flow(name) as Row).map((flow) => flow / value);
    const row = network.potential(nodes).map((potential) => potential / value);
    const loss = losses.indexOf(name);
    if (loss >= 0) row[inputs.loss + loss]! -= 1 / value;
    return row;
  });
  return { inputs, network, rates };
}
