import { type Impossible, impossible } from '../fault/index.js';
import type { Element, Network, Topology } from './element.js';
import { branchLaw, isBranch } from './element.js';
import { type Equations, isListed } from './equations.js';
import { numberedEquations } from './numbered-equations.js';
import { type ProbeRow, probeRows } from './reading.js';
import { type Reduced, reduceDescriptor } from './reduce-descriptor.js';

/** A lumped network as $\dot x = A x + B u$, $y = C x + D u$; u is the drive in V. Matrices by rows. */
export interface StateSpace {
  readonly ok: true;
  /** Number of states. */
  readonly size: number;
  readonly A: Float64Array;
  readonly B: Float64Array;
  /** What can be read: each probe by its name, and the flow of each element as `flow <name>`. */
  readonly outputs: readonly string[];
  /** A row for each output. */
  readonly C: Float64Array;
  readonly D: Float64Array;
}

/**
 * Makes the flows of springs and inductances unknowns, so that no unknown is integrated: powers of s are 0 or 1. An element of
 * infinite value keeps its place in the equations, where it stands with 0.
 */
const rising = (element: Element, value: unknown): Element => {
  if (!isBranch(element) || value === Infinity) return element;
  const [, power] = branchLaw[element.kind];
  return power === 0 ? element : { ...element, stands: power < 0 ? 'impedance' : 'admittance' };
};

/** Every element's flow, beside the probes. */
const withFlows = (topology: Topology, values: Network['values']): Topology => {
  const elements = topology.elements.map((element) => rising(element, values[element.name]));
  const flows = elements.map(({ name }) => [`flow ${name}`, { of: 'flow', element: name }] as const);
  return { ...topology, elements, probes: { ...topology.probes, ...Object.fromEntries(flows) } };
};

/**
 * State matrices of a lumped network, from the same equations as its sweep,
 *
 * $$ G z + C \dot z = b u $$
 *
 * with $z$ the potentials of the nodes and some flows. The equations without a derivative are solved for what is no state.
 *
 * @validity lumped networks without delays whose drive lets no state jump
 * @neglects nothing
 * @returns the matrices, or `not-lumped`, `delayed`, `jumps`, `undamped` with what would help
 * @throws InputError for a network without meaning
 * @source brenan1996 ch. 2 (linear constant-coefficient differential-algebraic equations)
 * @example stateSpace(closedBox({ drivers, netVolume: '40 L' }).network) // size 2
 */
export function stateSpace({ topology: given, values: named }: Network): StateSpace | Impossible {
  const listed = given.elements.find(isListed);
  if (listed !== undefined) {
    return impossible('not-lumped', `'${listed.name}' is given over frequency, so it has no states`);
  }
  const topology = withFlows(given, named);
  const { slots, system, values, numbers } = numberedEquations({ topology, values: named });
  if (topology.outlets.some(({ delay }) => delay !== undefined && values[slots.of.get(delay)?.at ?? 0] !== 0)) {
    return impossible(
      'delayed',
      'one outlet is heard later than another, which no finite number of states can describe',
    );
  }
  const reduced = reduceDescriptor(descriptorOf(system, numbers));
  if (!reduced.ok) return reduced;
  const rows = probeRows(topology, system, slots);
  return { ok: true, ...outputsOf(reduced, rows, numbers, values), size: reduced.size, A: reduced.A, B: reduced.B };
}

/** The matrices of G z + C ż = b u. */
function descriptorOf({ size, stamps, driven }: Equations, numbers: Float64Array) {
  const [G, C, b] = [new Float64Array(size * size), new Float64Array(size * size), new Float64Array(size)];
  for (const { row, column, sign, symbol, power } of stamps) {
    const into = power === 1 ? C : G;
    into[row * size + column] = into[row * size + column]! + sign * (symbol < 0 ? 1 : numbers[symbol]!);
  }
  for (const row of driven) b[row] = 1;
  return { size, G, C, b };
}

/** Outputs from what each unknown is of states and drive; one that would need the slope of the drive is left out. */
function outputsOf(
  { size, A, B, states, drive }: Reduced,
  rows: readonly ProbeRow[],
  numbers: Float64Array,
  values: Float64Array,
): Pick<StateSpace, 'outputs' | 'C' | 'D'> {
  const made = rows.flatMap(({ name, terms, factor }) => {
    const c = new Float64Array(size);
    let d = 0;
    for (const { unknowns, symbol, power, sign } of terms) {
      const by = sign * (symbol < 0 ? 1 : numbers[symbol]!);
      for (const [unknown, turn] of unknowns) {
        const own = states.subarray(unknown * size, (unknown + 1) * size);
        const direct = drive[unknown]!;
        if (power === 0) {
          for (let k = 0; k < size; k++) c[k]! += by * turn * own[k]!;
          d += by * turn * direct;
          continue;
        }
        if (direct !== 0) return [];
        for (let k = 0; k < size; k++) {
          const slope = by * turn * own[k]!;
          for (let m = 0; m < size; m++) c[m]! += slope * A[k * size + m]!;
          d += slope * B[k]!;
        }
      }
    }
    const scale = factor < 0 ? 1 : values[factor]!;
    return [{ name, c: c.map((x) => x * scale), d: d * scale }];
  });
  return {
    outputs: made.map(({ name }) => name),
    C: Float64Array.from(made.flatMap(({ c }) => [...c])),
    D: Float64Array.from(made, ({ d }) => d),
  };
}
