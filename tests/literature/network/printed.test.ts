/** Circuits of textbooks, solved by each road that compiles a network. */
import {
  type Branch,
  type BranchKind,
  type CompiledTopology,
  compile,
  compileNetwork,
  compilePlan,
  compilePolynomials,
  type Element,
  losslessLine,
  type Topology,
  valuesOf,
} from '@airspring/core/network';
import { bracketedRoot, complexColumn } from '@airspring/core/numeric';
import { printedChecks } from '../printed.js';
import print from './printed.json' with { type: 'json' };

const read = printedChecks('network', print);
type Values = Readonly<Record<string, number | readonly number[]>>;
type Road = (topology: Topology) => CompiledTopology | undefined;

const branch = (kind: BranchKind, name: string, from: string, to: string): Branch => ({
  kind,
  name,
  nodes: [from, to],
});
const topologyOf = (elements: readonly Element[]): Topology => ({
  elements: [{ kind: 'source', name: 'drive', nodes: ['a', 'ground'] }, ...elements],
  probes: { flow: { of: 'flow', element: 'drive' } },
  outlets: [],
});

/** What a source of 1 V delivers at a frequency. */
function flow(elements: readonly Element[], values: Values, f: number, road?: Road) {
  const topology = topologyOf(elements);
  const compiled = road?.(topology);
  const network = compiled ? compiled.network(valuesOf(compiled.slots, values)) : compileNetwork({ topology, values });
  const out = network.probes.map(() => complexColumn(1));
  network.sweep(Float64Array.of(f), out);
  const { re, im } = out[network.probes.indexOf('flow')]!;
  return { re: re[0]!, im: im[0]!, size: Math.hypot(re[0]!, im[0]!), phase: Math.abs(Math.atan2(im[0]!, re[0]!)) };
}

interface Series {
  readonly R: number;
  readonly L: number;
  readonly C: number;
}
/** A resistor, a coil and a capacitor in a row; those of zero are not there. */
function series({ R, L, C }: Series): readonly [elements: readonly Element[], values: Values] {
  const parts = (['resistor', 'inductor', 'capacitor'] as const).flatMap((kind, i) => {
    const value = [R, L, C][i]!;
    return value === 0 ? [] : [{ kind, value }];
  });
  const nodes = ['a', 'b', 'c'].slice(0, parts.length).concat('ground');
  const elements = parts.map(({ kind }, i) => branch(kind, kind, nodes[i]!, nodes[i + 1]!));
  return [elements, Object.fromEntries(parts.map(({ kind, value }) => [kind, value]))];
}
const impedance = (of: Series & { f: number }) => 1 / flow(...series(of), of.f).size;
for (const name of ['impedance', 'impedance 2', 'impedance 3', 'impedance to two digits'] as const) {
  read('compileNetwork', name, impedance);
}
for (const name of ['current', 'current 2', 'current rounded twice'] as const) {
  read('compilePlan', name, (of) => of.V * flow(...series(of), of.f, compilePlan).size);
}
const angle = (of: Series & { f: number }) => flow(...series(of), of.f, compile).phase;
read('compile', 'phase', angle);
read('compile', 'phase in degrees', (of) => (angle(of) * 180) / Math.PI);
read('compile', 'phase in half turns', (of) => angle(of) / Math.PI);
read('compile', 'power factor', (of) => Math.cos(angle(of)));
read('compile', 'power', (of) => of.V ** 2 * flow(...series(of), of.f, compile).re);

/** The frequency near the resonance at which the current has no phase. */
function inPhase(elements: readonly Element[], values: Values, { L, C }: Series): number {
  const near = 1 / (2 * Math.PI * Math.sqrt(L * C));
  const root = bracketedRoot((f) => flow(elements, values, f, compilePolynomials).im, near * 0.5, near * 1.5);
  return root.ok ? root.x : Number.NaN;
}
for (const name of ['resonance', 'resonance 2', 'resonance 3', 'resonance to two digits'] as const) {
  read('compilePolynomials', name, (of) => inPhase(...series(of), of));
}
read('compilePolynomials', 'angular resonance', (of) => 2 * Math.PI * inPhase(...series(of), of));
/** A coil with its resistance beside a capacitor with its own; resistances of zero are not there. */
function parallel({ R, L, C, besideC }: Series & { besideC: number }): readonly [readonly Element[], Values] {
  const arm = (kind: BranchKind, name: string, resistance: number) => [
    ...(resistance === 0 ? [] : [branch('resistor', `R${name}`, 'a', name)]),
    branch(kind, name, resistance === 0 ? 'a' : name, 'ground'),
  ];
  return [
    [...arm('inductor', 'L', R), ...arm('capacitor', 'C', besideC)],
    { L, C, ...(R > 0 && { RL: R }), ...(besideC > 0 && { RC: besideC }) },
  ];
}
read('compilePolynomials', 'parallel resonance', (of) => inPhase(...parallel(of), of));
for (const name of ['dynamic resistance', 'dynamic resistance 2'] as const) {
  read('compilePolynomials', name, (of) => {
    const [elements, values] = parallel(of);
    return 1 / flow(elements, values, inPhase(elements, values, of), compilePolynomials).re;
  });
}

read('losslessLine', 'short line', ({ impedance: Z, wavelengths }) => {
  const elements = [losslessLine('line', ['a', 'end']), branch('resistor', 'short', 'end', 'ground')];
  const { re, im, size } = flow(elements, { line: [Z, wavelengths / 1000], short: 1e-9 }, 1000);
  return re === 0 && im === 0 ? Number.NaN : -im / size ** 2;
});

// A mass, a spring and a damper that move together: potentials are velocities, flows are forces.
read('compilePlan', 'forced', ({ m, k, r, F }) => {
  const elements = (['mass', 'spring', 'damper'] as const).map((kind) => branch(kind, kind, 'a', 'ground'));
  const f = (2 * Math.sqrt(k / m)) / (2 * Math.PI);
  const force = flow(elements, { mass: m, spring: 1 / k, damper: r }, f, compilePlan).size;
  return (1000 * F) / force / (2 * Math.PI * f);
});
