import { type Fault, refuse } from '@airspring/core/fault';
import type { StateSpace } from '@airspring/core/network';
import { consistentSolution } from './consistent-system.js';

/** What is read at an instant: a sum of the states, and of the drive at that instant. */
export interface OutputRow {
  readonly name: string;
  readonly c: Float64Array;
  readonly d: number;
}

/** The pressure at 1 m in half space, Pa: the slope of the flow that leaves the system, times ρ/2π. */
const PRESSURE = 'pressure';
/** The integral of a cone velocity: `displacement` of `coneVelocity`, `displacement left` of `coneVelocity left`, m. */
const DISPLACEMENT = /^displacement( .+)?$/;
/** The integral of any probe, `integral radiatorVelocity`. */
const INTEGRAL = /^integral (.+)$/;

/**
 * A row for each name that is asked for: what a state space gives by itself, the pressure at 1 m, and displacements. Slopes and
 * integrals are exact, since they too are sums of the states: ẏ = c A x + c B u where y is c x, and the integral of c x is c A⁻¹ x
 * where a constant drive moves nothing for ever.
 */
export function outputRows(space: StateSpace, names: readonly string[], density: number): readonly OutputRow[] {
  refuseNoNames(names);
  const faults: Fault[] = [];
  const rows = names.map((name, i) => {
    const row = rowOf(space, name, density);
    if (typeof row !== 'string') return row;
    const known = [PRESSURE, 'displacement', ...space.outputs].join(', ');
    const remedy = 'Choose another output, or change the network.';
    faults.push({
      code: 'unknown-field',
      path: `outputs[${i}]`,
      got: name,
      expected: `${row}; known: ${known}`,
      remedy,
    });
    return { name, c: new Float64Array(space.size), d: 0 };
  });
  refuse(faults);
  return rows;
}

/** Refuses what is no list of names, and an empty one. */
export function refuseNoNames(names: readonly string[]): void {
  if (Array.isArray(names) && names.length > 0) return;
  const [expected, remedy] = ['a list of at least one name', 'Name what is to be computed.'];
  refuse([{ code: 'empty', path: 'outputs', got: names, expected, remedy }]);
}

/** The row, or what would be needed for it. */
function rowOf(space: StateSpace, name: string, density: number): OutputRow | string {
  if (name === PRESSURE) {
    const flow = own(space, 'radiatedFlow');
    if (flow === undefined) return 'a network with outlets';
    if (flow.d !== 0) return 'a flow that cannot jump, as of parts with mass';
    const { c, d } = slope(space, flow);
    const unit = density / (2 * Math.PI);
    return { name, c: c.map((x) => unit * x), d: unit * d };
  }
  const moved = DISPLACEMENT.exec(name);
  const probe = moved ? `coneVelocity${moved[1] ?? ''}` : INTEGRAL.exec(name)?.[1];
  if (probe === undefined) return own(space, name) ?? 'a name of an output';
  const velocity = own(space, probe);
  if (velocity === undefined) return `a probe ${probe}`;
  return integral(space, { ...velocity, name }) ?? 'what a spring holds';
}

function own({ outputs, size, C, D }: StateSpace, name: string): OutputRow | undefined {
  const at = outputs.indexOf(name);
  return at < 0 ? undefined : { name, c: C.slice(at * size, (at + 1) * size), d: D[at]! };
}

/** ẏ of y = c x. */
function slope({ size, A, B }: StateSpace, { name, c }: OutputRow): OutputRow {
  const out = new Float64Array(size);
  let d = 0;
  for (let m = 0; m < size; m++) {
    d += c[m]! * B[m]!;
    for (let k = 0; k < size; k++) out[k]! += c[m]! * A[m * size + k]!;
  }
  return { name, c: out, d };
}

/** ∫ y of y = c x: the row r with r A = c, if it meets r B = 0. */
function integral(space: StateSpace, { name, c, d }: OutputRow): OutputRow | undefined {
  const { size, A, B } = space;
  if (d !== 0) return undefined;
  const transposed = Float64Array.from({ length: size * size }, (_, i) => A[(i % size) * size + Math.floor(i / size)]!);
  const row = consistentSolution(size, transposed, c);
  if (row === undefined) return undefined;
  let [left, sizes] = [0, 0];
  for (let k = 0; k < size; k++) {
    left += row[k]! * B[k]!;
    sizes += Math.abs(row[k]! * B[k]!);
  }
  // What a constant drive does to y in the end is −r B.
  return Math.abs(left) <= 1e-9 * sizes ? { name, c: row, d: 0 } : undefined;
}
