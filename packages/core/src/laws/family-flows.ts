import type { System } from '../enclosure/index.js';
import type { Element, Reading } from '../network/index.js';
import { type Exit, exitsOf, storesOf } from './acoustic-exits.js';
import { readings, type Tried } from './family-trial.js';
import { type LawResult, tried } from './law.js';
import { elementCurves } from './law-element-laws.js';

/** A steady flow goes through an opening, but not through a spring of air. Below all resonances the phase tells them apart. */
function isSpring(element: Element, { network: { values } }: System): boolean {
  if (element.kind === 'acousticCompliance') return true;
  if (element.kind !== 'law') return false;
  const [column] = elementCurves(element, [values[element.name] ?? []].flat())(Float64Array.of(0.1));
  const reactance = (column?.im[0] ?? 0) * (element.stands === 'admittance' ? 1 : -1);
  return reactance > 1e-3 * Math.abs(column?.re[0] ?? 0);
}

/** Elements of a network that store air. */
export const springsOf = (system: System): ReadonlySet<string> =>
  new Set(system.network.topology.elements.filter((one) => isSpring(one, system)).map(({ name }) => name));

/** Sum of some flows, each with its sign, and the sum of their sizes. */
function summed(system: System, flows: readonly Reading[], grid: Float64Array) {
  const columns = readings(system, Object.fromEntries(flows.map((flow, i) => [`flow ${i}`, flow])), grid);
  const [re, im, size] = [0, 0, 0].map(() => new Float64Array(grid.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (const column of Object.values(columns)) {
    grid.forEach((_, i) => {
      const [a, b] = [column.re[i]!, column.im[i]!];
      re[i] = re[i]! + a;
      im[i] = im[i]! + b;
      size[i] = size[i]! + Math.hypot(a, b);
    });
  }
  return { re, im, size };
}

/**
 * The outlets are all the flow that leaves: front of each cone, vents, leaks, each once and with its sign. What does not
 * leave stays: as no air is made, it is what the air in the boxes takes in, turned round (conservation of mass,
 * @source small1972direct; the pressure outside is that of the sum, @source rayleigh1896 sec. 302).
 */
export function flowLaws<Spec, Input>({ system, grid }: Tried<Spec, Input>): readonly LawResult[] {
  const against = (expected: (made: System) => readonly Exit[] | undefined, sign: 1 | -1, what: string) => () => {
    const made = system();
    const { outlets } = made.network.topology;
    const others = expected(made);
    if (others === undefined) return undefined;
    const out = summed(
      made,
      outlets.map(({ flow }) => flow),
      grid,
    );
    const other = summed(
      made,
      others.map(({ flow }) => flow),
      grid,
    );
    const i = grid.findIndex((_, k) => {
      const apart = Math.hypot(out.re[k]! - sign * other.re[k]!, out.im[k]! - sign * other.im[k]!);
      return !(apart <= 1e-9 * (out.size[k]! + other.size[k]!));
    });
    const names = (list: readonly Exit[]) =>
      list.map(({ name, flow }) => (flow.sign === -1 ? `−${name}` : name)).join(', ');
    return i < 0 ? undefined : `outlets are ${names(outlets)}, ${what} ${names(others)}: they differ at ${grid[i]} Hz`;
  };
  const leaving = (made: System) => exitsOf(made.network.topology, springsOf(made));
  const storing = (made: System) => {
    const { topology } = made.network;
    // A line holds air of its own.
    if (topology.elements.some(({ kind }) => kind === 'line')) return undefined;
    return storesOf(topology, springsOf(made));
  };
  return [
    tried('the outlets are all the flow that leaves', `${grid.length} frequencies`, against(leaving, 1, 'and out go')),
    tried('air either leaves or is stored', `${grid.length} frequencies`, against(storing, -1, 'and in the boxes is')),
  ];
}
