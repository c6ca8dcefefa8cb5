import type { System } from '../enclosure/index.js';
import { type CompiledTopology, compilePlan, compilePolynomials, type Topology, valuesOf } from '../network/index.js';
import { probeColumns } from '../response/index.js';
import { exitsOf } from './acoustic-exits.js';
import { type Curves, jumpFault, memoryFault } from './curves.js';
import { springsOf } from './family-flows.js';
import { readings, type Tried } from './family-trial.js';
import { type LawResult, tried } from './law.js';
import { lawElementLaws } from './law-element-laws.js';

/** A topology compiled as its family says. */
function compiledBy({ compile, network: { topology } }: System): CompiledTopology {
  const compiled = compile(topology);
  if (compiled === undefined) throw new Error('its own compile does not accept its network');
  return compiled;
}

const sweptBy = (system: System): Curves => {
  const { values } = system.network;
  const compiled = compiledBy(system);
  const network = compiled.network(valuesOf(compiled.slots, values));
  return (frequencies) => Object.values(probeColumns(network, frequencies));
};

/** Finds where the columns of two methods differ by more than rounding. */
function difference(one: ReturnType<Curves>, two: ReturnType<Curves>, grid: Float64Array, relative: number) {
  for (const [c, { re, im }] of one.entries()) {
    const other = two[c];
    const most = Math.max(...re.map((value, i) => Math.hypot(value, im[i]!)));
    const i = grid.findIndex((_, k) => {
      const [a, b] = [re[k]!, im[k]!];
      const apart = Math.hypot(a - other!.re[k]!, b - other!.im[k]!);
      return !(apart <= relative * (Math.hypot(a, b) + 1e-6 * most));
    });
    if (i >= 0) return `column ${c} differs at ${grid[i]} Hz`;
  }
  return undefined;
}

/**
 * A sweep is a function of frequency and numbers alone. All methods of sweeping agree. When other numbers are loaded and then the
 * first ones again, the result is the first one. A frequency alone gives the same as in a sweep, and nothing jumps (a linear
 * network is analytic on the imaginary axis,
 * @source desoer1969). What goes from the terminals to an opening goes back: without flow and magnets of their own networks of
 * masses, springs, motors and cones are reciprocal, but for a sign (@source beranek2012). Each element over frequency obeys
 * `lawElementLaws`.
 */
export function sweepLaws<Spec, Input>({ system, grid }: Tried<Spec, Input>): readonly LawResult[] {
  const extent = `${grid.length} frequencies`;
  const { topology, values } = system().network;
  return [
    tried('all methods agree', extent, () => {
      const by = ({ slots, network }: CompiledTopology) =>
        Object.values(probeColumns(network(valuesOf(slots, values)), grid));
      const plan = by(compilePlan(topology));
      const polynomials = compilePolynomials(topology);
      const others = [compiledBy(system()), ...(polynomials === undefined ? [] : [polynomials])];
      return others.map((one) => difference(by(one), plan, grid, 1e-8)).find((found) => found !== undefined);
    }),
    tried('the same result after other numbers', extent, () => {
      const { slots, network } = compiledBy(system());
      const [first, others] = [valuesOf(slots, values), valuesOf(slots, values).map((value) => 1.1 * value)];
      const one = network(first);
      const before = Object.values(probeColumns(one, grid));
      one.load(others);
      const between = Object.values(probeColumns(one, grid));
      one.load(first);
      const after = Object.values(probeColumns(one, grid));
      const fresh = Object.values(probeColumns(compiledBy(system()).network(others), grid));
      return difference(before, after, grid, 1e-12) ?? difference(fresh, between, grid, 1e-9);
    }),
    tried('each frequency alone gives the same result', extent, () => memoryFault(sweptBy(system()), grid)),
    tried('no jump over frequency', extent, () => jumpFault(sweptBy(system()), grid)),
    tried('reciprocal', extent, () => reciprocityFault(system(), topology, grid)),
    ...topology.elements.flatMap((element) =>
      element.kind === 'law' || element.kind === 'line'
        ? lawElementLaws(element, { values: [values[element.name] ?? []].flat() }).map((result) => ({
            ...result,
            law: `${element.name}: ${result.law}`,
          }))
        : [],
    ),
  ];
}

/** Compares the flow out of each opening for a volt at the source with the current in the shorted source for a pascal at the opening. */
function reciprocityFault(system: System, topology: Topology, grid: Float64Array): string | undefined {
  const source = topology.elements.find(({ kind }) => kind === 'source');
  if (source?.kind !== 'source') return 'there is no source';
  for (const { name, flow } of exitsOf(topology, springsOf(system))) {
    const there = readings(system, { out: flow }, grid).out;
    const elements = topology.elements.map((element) => {
      if (element === source) return { ...source, kind: 'meter' as const };
      if (element.name !== name) return element;
      if (element.kind === 'piston') {
        return element.front === 'ground' ? { ...element, front: 'opening' } : { ...element, rear: 'opening' };
      }
      const [from, to] = (element as { nodes: readonly [string, string] }).nodes;
      const nodes = to === 'ground' ? ([from, 'opening'] as const) : (['opening', to] as const);
      return { ...element, nodes } as typeof element;
    });
    const pressure = { kind: 'source', name: 'pressure outside', nodes: ['opening', 'ground'] } as const;
    const back = readings(system, { current: { of: 'flow', element: source.name } }, grid, [
      ...elements,
      pressure,
    ]).current;
    const most = Math.max(...grid.map((_, k) => Math.hypot(there!.re[k]!, there!.im[k]!)));
    const i = grid.findIndex((_, k) => {
      const [a, b] = [there!.re[k]!, there!.im[k]!];
      const [c, d] = [back!.re[k]!, back!.im[k]!];
      const apart = Math.min(Math.hypot(a - c, b - d), Math.hypot(a + c, b + d));
      return !(apart <= 1e-5 * Math.hypot(a, b) + 1e-11 * most);
    });
    if (i >= 0) return `not through ${name} at ${grid[i]} Hz`;
  }
  return undefined;
}
