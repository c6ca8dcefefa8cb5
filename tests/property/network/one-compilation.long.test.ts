/** A topology is compiled once: other numbers loaded into it give what a compilation of their own gives. */
import { standardAir } from '@airspring/core/air';
import { ductElement, ductValues } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { compile, compilePlan, compilePolynomials, type Network, valuesOf } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { type FrequencyGrid, si } from '@airspring/core/quantity';
import { expect, test as plain } from 'vitest';
import { driverArbitrary } from '../../arbitrary/driver.js';
import { fc, test } from '../../arbitrary/property.js';
import { worst } from '../../circuit/compare.js';
import { driver, withEddy } from '../../circuit/seam-cases.js';

const grid = Float64Array.from({ length: 48 }, (_, i) => 9 * 1.09 ** i);
const boxOf = (litres: number, fb: number, QL: number) =>
  ventedBox({
    drivers: driver,
    netVolume: si('volume', litres / 1e3),
    fb: si('frequency', fb),
    QL,
    ventArea: '50 cm²',
  }).network;
const candidates = Array.from({ length: 1000 }, (_, i) => {
  const [a, b, c] = [(i * 0.618034) % 1, (i * 0.7548777) % 1, (i * 0.5698403) % 1];
  return boxOf(10 + 90 * a, 18 + 30 * b, 4 + 20 * c);
});

/** The vent as a lossy duct beside one as a mass: one of its numbers stands in the equations, the others in its chain matrix. */
const withLine = ({ topology, values }: Network): Network => {
  const duct = ductElement('duct', ['box', 'ground']);
  const area = 0.002 + (values.vent as number) / 1e5;
  const numbers = ductValues({ area, endArea: area, length: 0.2, wallLoss: 1, flowResistivity: 0 }, standardAir);
  return {
    topology: { ...topology, elements: [...topology.elements, duct] },
    values: { ...values, duct: numbers },
  };
};

plain.each([
  ['polynomials', (network: Network) => network, compilePolynomials],
  ['elimination', (network: Network) => network, compilePlan],
  ['elimination, with a vent as a line', withLine, compilePlan],
  ['polynomials, with a lossy coil', (network: Network) => withEddy(network, [0.02, 0.7]), compilePolynomials],
] as const)('a thousand candidates by %s: loaded one after the other, and each compiled afresh', (_, made, road) => {
  const first = made(candidates[0]!);
  const compiled = road(first.topology)!;
  const kernel = compiled.network(valuesOf(compiled.slots, first.values));
  const out = compiled.probes.map(() => complexColumn(grid.length));
  const own = compiled.probes.map(() => complexColumn(grid.length));
  const [slope, ownSlope] = [complexColumn(grid.length), complexColumn(grid.length)];
  candidates.forEach((candidate, i) => {
    const network = made(candidate);
    kernel.load(valuesOf(compiled.slots, network.values));
    expect(kernel.sweep(grid, out)).toBe(-1);
    // Every tenth by a compilation of its own; all by a network of their own.
    const { slots, network: makes } = i % 10 === 0 ? road(network.topology)! : compiled;
    const fresh = makes(valuesOf(slots, network.values));
    expect(fresh.sweep(grid, own)).toBe(-1);
    out.forEach((column, k) => expect(worst(column, own[k]!)).toBeLessThan(1e-12));
    if (i % 50 !== 0) return;
    kernel.slope(0, grid, slope);
    fresh.slope(0, grid, ownSlope);
    expect(worst(slope, ownSlope)).toBeLessThan(1e-9);
  });
});

test.prop([driverArbitrary, driverArbitrary, fc.boolean()], { numRuns: 40 })(
  'systems of one topology share it, whatever their drivers: two kernels of one compilation do not touch each other',
  (a, b, byPlan) => {
    const [one, two] = [a, b].map((drivers) => ventedBox({ drivers, netVolume: '45 L', fb: '31 Hz', QL: 9 }).network);
    if (JSON.stringify(one!.topology) !== JSON.stringify(two!.topology)) return;
    const compiled = (byPlan ? compilePlan : compile)(one!.topology);
    const kernels = [one!, two!].map(({ values }) => compiled.network(valuesOf(compiled.slots, values)));
    const columns = kernels.map(() => compiled.probes.map(() => complexColumn(grid.length)));
    for (const k of [0, 1, 0]) kernels[k]!.sweep(grid, columns[k]!);
    [one!, two!].forEach((network, k) => {
      const own = compile(network.topology);
      const out = own.probes.map(() => complexColumn(grid.length));
      own.network(valuesOf(own.slots, network.values)).sweep(grid, out);
      out.forEach((column, p) => expect(worst(column, columns[k]![p]!)).toBeLessThan(1e-9));
    });
  },
);

/** Whole numbers of this size cancel by chance again and again, where those of a real box never do. */
const few = fc.constantFrom(1, 1, 1, 2, 3);

test.prop([fc.constantFrom(...[boxOf(40, 30, 7), withEddy(boxOf(40, 30, 7), [0.02, 0.7])]), fc.infiniteStream(few)], {
  numRuns: 60,
})(
  'numbers that cancel by chance leave nothing behind in the order of elimination',
  ({ topology, values }, numbers) => {
    const compiled = compilePlan(topology);
    const any = () => valuesOf(compiled.slots, values).map(() => numbers.next().value as number);
    const out = compiled.probes.map(() => complexColumn(3));
    const own = compiled.probes.map(() => complexColumn(3));
    const few = Float64Array.of(0.05, 0.3, 2) as FrequencyGrid;
    const kernel = compiled.network(any());
    kernel.sweep(few, out);
    for (let times = 0; times < 4; times++) {
      const now = any();
      kernel.load(now);
      const stopped = kernel.sweep(few, out);
      expect(compiled.network(now).sweep(few, own)).toBe(stopped);
      if (stopped < 0) out.forEach((column, k) => expect(worst(column, own[k]!)).toBeLessThan(1e-9));
    }
  },
);
