import type { Nodes, Reading } from '@airspring/core/network';
import type { Part, Parts } from './parts.js';
import { solveScaled } from './scaled-system.js';

/**
 * What drives a network of which each store stands still for a moment: its stores one by one, the drive, the coil, the force on the
 * cone from outside the network, and the pressure that each loss takes.
 */
export interface Inputs {
  /** The electrical ones first. */
  readonly stores: readonly Part[];
  readonly losses: readonly string[];
  readonly count: number;
  readonly drive: number;
  readonly coil: number;
  readonly force: number;
  /** The place of the first loss. */
  readonly loss: number;
}

/** A sum over the inputs. */
export type Row = Float64Array;

/** A network solved for a moment: what is read is a sum over the inputs. */
export interface Solved {
  readonly potential: (nodes: Nodes) => Row;
  readonly flow: (element: string) => Row | undefined;
  readonly read: (reading: Reading) => Row | undefined;
}

export function inputsOf({ linear }: Parts, losses: readonly string[]): Inputs {
  const stored = linear.filter(({ does }) => does.startsWith('stores'));
  const stores = [...stored.filter(({ isElectrical }) => isElectrical), ...stored.filter((one) => !one.isElectrical)];
  const drive = stores.length;
  return {
    stores,
    losses,
    count: drive + 3 + losses.length,
    drive,
    coil: drive + 1,
    force: drive + 2,
    loss: drive + 3,
  };
}

/** Whether the coil is given by the voltage that it induces, or by its current. */
export type CoilGiven = 'voltage' | 'current';

/**
 * Solves the network with resistances alone. Over an interval, the implicit midpoint rule makes of each store a resistance with its
 * state at the start of the interval in series, and everything that is solved is its mean over the interval (`interval` above 0). At
 * an instant, each store is a source of its state (`interval` of 0).
 *
 * $$ \bar e = e_0 + \frac{h}{2C}\bar f,\qquad \bar f = f_0 + \frac{h}{2L}\bar e $$
 *
 * With these means the power of all elements adds up to nothing, as in the network itself, and what a store takes in is exactly what
 * its energy rises by, since $\bar e\,\bar f h = \tfrac12 C(e_1^2 - e_0^2)$ (@source hairer2006 §IV.2, quadratic invariants).
 */
export function solved(parts: Parts, inputs: Inputs, interval: number, coil: CoilGiven): Solved {
  const { linear, others, motor } = parts;
  const nodes = nodesOf(parts);
  const named = [...linear, ...others.filter(({ kind }) => kind !== 'piston'), motor];
  const flowAt = new Map(named.map(({ name }, i) => [name, nodes.length + i]));
  const size = nodes.length + named.length;
  const A = new Float64Array(size * size);
  const B = new Float64Array(size * inputs.count);
  const at = (node: string) => nodes.indexOf(node);
  const add = (row: number, column: number, value: number) => {
    if (row >= 0 && column >= 0) A[row * size + column]! += value;
  };
  const given = (row: number, input: number, value: number) => {
    if (row >= 0) B[row * inputs.count + input]! += value;
  };
  const across = (row: number, [from, to]: Nodes, by: number) => {
    add(row, at(from), by);
    add(row, at(to), -by);
  };
  const through = (row: number, [from, to]: Nodes) => {
    add(at(from), row, 1);
    add(at(to), row, -1);
  };
  const storeAt = new Map(inputs.stores.map((store, i) => [store, i]));

  for (const part of linear) {
    const row = flowAt.get(part.name)!;
    const { does, value, nodes: ends } = part;
    through(row, ends);
    if (does === 'conducts' || (does === 'stores flow' && interval === 0)) add(row, row, 1);
    else across(row, ends, 1);
    if (does === 'resists') add(row, row, -value);
    else if (does === 'conducts') across(row, ends, -value);
    else if (does !== 'shorts') {
      const store = storeAt.get(part)!;
      const loss = inputs.losses.indexOf(part.name);
      if (interval === 0) given(row, store, 1);
      else if (does === 'stores potential') {
        add(row, row, -interval / (2 * value));
        given(row, store, 1);
      } else {
        add(row, row, (-2 * value) / interval);
        given(row, store, (-2 * value) / interval);
        if (loss >= 0) given(row, inputs.loss + loss, 1);
      }
    }
  }
  for (const other of others) {
    if (other.kind === 'piston') {
      const Sd = parts.numberOf(other.name);
      const [cone, frame] = other.mechanical.map(at) as [number, number];
      for (const [air, sign] of [
        [at(other.rear), 1],
        [at(other.front), -1],
      ] as const) {
        add(air, cone, sign * Sd);
        add(air, frame, -sign * Sd);
        add(cone, air, -sign * Sd);
        add(frame, air, sign * Sd);
      }
    } else if (other.kind === 'source' || other.kind === 'meter') {
      const row = flowAt.get(other.name)!;
      across(row, other.nodes, 1);
      const sign = other.kind === 'source' ? -1 : 1; // a source delivers
      add(at(other.nodes[0]), row, sign);
      add(at(other.nodes[1]), row, -sign);
      if (other.kind === 'source') given(row, inputs.drive, 1);
    }
  }
  const own = flowAt.get(motor.name)!;
  through(own, motor.electrical);
  if (coil === 'voltage') across(own, motor.electrical, 1);
  else add(own, own, 1);
  given(own, inputs.coil, 1);
  given(at(motor.mechanical[0]), inputs.force, -1);
  given(at(motor.mechanical[1]), inputs.force, 1);

  solveScaled(size, A, B, inputs.count);
  const unknown = (index: number): Row =>
    index < 0 ? new Float64Array(inputs.count) : B.slice(index * inputs.count, (index + 1) * inputs.count);
  const potential = ([from, to]: Nodes): Row => {
    const [a, b] = [unknown(at(from)), unknown(at(to))];
    return a.map((value, i) => value - b[i]!);
  };
  const flow = (element: string): Row | undefined => {
    const piston = others.find(({ name, kind }) => name === element && kind === 'piston');
    if (piston?.kind === 'piston') return potential(piston.mechanical).map((value) => value * parts.numberOf(element));
    const index = flowAt.get(element);
    return index === undefined ? undefined : unknown(index);
  };
  const read = (reading: Reading): Row | undefined => {
    const row = reading.of === 'potential' ? potential([reading.node, 'ground']) : flow(reading.element);
    return reading.sign === -1 ? row?.map((value) => -value) : row;
  };
  return { potential, flow, read };
}

function nodesOf({ linear, others, motor }: Parts): readonly string[] {
  const ends = others.flatMap((one) =>
    one.kind === 'piston' ? [...one.mechanical, one.front, one.rear] : 'nodes' in one ? one.nodes : [],
  );
  const all = [...linear.flatMap(({ nodes }) => nodes), ...ends, ...motor.electrical, ...motor.mechanical];
  return [...new Set(all)].filter((node) => node !== 'ground');
}
