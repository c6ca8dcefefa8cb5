import {
  type BranchKind,
  branch,
  compileTopology,
  type Element,
  type Network,
  type Probe,
  withoutCoilInductance,
} from '@airspring/core/network';
import { fc, test } from '@fast-check/vitest';
import { expect, test as plain } from 'vitest';
import { bassFrequency, systemArbitrary } from '../../arbitrary/box.js';
import { ladderArbitrary } from '../../arbitrary/network.js';
import { byPlan, byPolynomials, worst } from '../../circuit/compare.js';

const grid = Float64Array.from({ length: 40 }, (_, i) => 5 * 1.15 ** i);
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), Number.MIN_VALUE));

test.prop([systemArbitrary])('polynomials and elimination are the same numbers', ({ network }) => {
  const [a, b] = [byPolynomials(network, grid), byPlan(network, grid)];
  for (const name of Object.keys(a)) expect(worst(a[name]!, b[name]!)).toBeLessThan(1e-9);
});
test.prop([ladderArbitrary])('polynomials and elimination of a ladder are the same numbers', ({ network }) => {
  const [a, b] = [byPolynomials(network, grid), byPlan(network, grid)];
  for (const name of Object.keys(a)) expect(worst(a[name]!, b[name]!)).toBeLessThan(1e-9);
});

/** Powers of metre, kilogram, second and ampere in the unit of each element's value. */
const units: Readonly<Record<BranchKind | 'Bl' | 'Sd', readonly [number, number, number, number]>> = {
  resistor: [2, 1, -3, -2],
  inductor: [2, 1, -2, -2],
  capacitor: [-2, -1, 4, 2],
  mass: [0, 1, 0, 0],
  spring: [0, -1, 2, 0],
  damper: [0, 1, -1, 0],
  acousticMass: [-4, 1, 0, 0],
  acousticCompliance: [4, -1, 2, 0],
  acousticResistance: [-4, 1, -1, 0],
  Bl: [1, 1, -2, -1],
  Sd: [2, 0, 0, 0],
};
const size = fc.double({ min: 0.2, max: 5, noNaN: true });
test.prop([systemArbitrary, size, size, size, size])(
  'another system of units: m × a, kg × b, s × c, A × d',
  ({ network }, a, b, c, d) => {
    const by = ([m, kg, s, A]: readonly [number, number, number, number]) => a ** m * b ** kg * c ** s * d ** A;
    const elements = network.elements.map((element): Element => {
      if (element.kind === 'motor') return { ...element, Bl: element.Bl * by(units.Bl) };
      if (element.kind === 'piston') return { ...element, Sd: element.Sd * by(units.Sd) };
      if (!('value' in element)) return element;
      return { ...element, value: element.value * by(units[element.kind]) };
    });
    const probes: Record<string, Probe> = {
      flow: { of: 'flow', element: 'Cab' },
      velocity: { of: 'potential', node: 'cone' },
      current: { of: 'flow', element: 'drive' },
      pressure: { of: 'potential', node: 'box' },
    };
    const perVolt = (m: number, kg: number, s: number, A: number) => by([m - 2, kg - 1, s + 3, A + 1]);
    const expected = {
      flow: perVolt(3, 0, -1, 0),
      velocity: perVolt(1, 0, -1, 0),
      current: perVolt(0, 0, 0, 1),
      pressure: perVolt(-1, 1, -2, 0),
    };
    const before = byPolynomials({ elements: network.elements, probes }, grid);
    const after = byPolynomials(
      { elements, probes },
      grid.map((f) => f / c),
    );
    for (const [name, factor] of Object.entries(expected)) {
      const { re, im } = before[name]!;
      expect(worst({ re: re.map((x) => x * factor), im: im.map((x) => x * factor) }, after[name]!)).toBeLessThan(1e-10);
    }
  },
);

/** A source in one branch drives as much through the other branch as the same source there drives through this one. */
test.prop([ladderArbitrary])('reciprocity of a ladder', ({ network, rungs }) => {
  const load = (to: string) => branch('resistor', 'load', [`n${rungs}`, to], 3);
  const bare = network.elements.filter(({ kind }) => kind !== 'source');
  const moved = bare.map(
    (element): Element =>
      element.name === 'series 0' ? ({ ...element, nodes: ['ground', 'n1'] } as Element) : element,
  );
  const there = byPolynomials(
    { elements: [...network.elements, load('ground')], probes: { seen: { of: 'flow', element: 'load' } } },
    grid,
  );
  const back = byPolynomials(
    {
      elements: [...moved, load('m'), { kind: 'source', name: 'source', nodes: ['ground', 'm'] }],
      probes: { seen: { of: 'flow', element: 'series 0' } },
    },
    grid,
  );
  expect(worst(there.seen!, back.seen!)).toBeLessThan(1e-10);
});

const positive = fc.double({ min: 0.1, max: 10, noNaN: true });
test.prop([positive, positive, positive, positive, positive, positive])(
  'a loudspeaker as a microphone: as much back as there, with the other sign, since a piston is a gyrator',
  (R, Bl, mass, compliance, Sd, load) => {
    const through = (electrical: string, acoustical: string): Element[] => [
      branch('resistor', 'coil', [electrical, 'gap'], R),
      { kind: 'motor', name: 'motor', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], Bl },
      branch('mass', 'mass', ['cone', 'ground'], mass / 100),
      branch('spring', 'spring', ['cone', 'ground'], compliance / 1e4),
      { kind: 'piston', name: 'piston', mechanical: ['cone', 'ground'], front: 'ground', rear: 'air', Sd },
      branch('acousticResistance', 'load', ['air', acoustical], load),
    ];
    const speaker = byPolynomials(
      {
        elements: [{ kind: 'source', name: 'drive', nodes: ['in', 'ground'] }, ...through('in', 'ground')],
        probes: { seen: { of: 'flow', element: 'load' } },
      },
      grid,
    );
    const microphone = byPolynomials(
      {
        elements: [{ kind: 'source', name: 'sound', nodes: ['ground', 'm'] }, ...through('ground', 'm')],
        probes: { seen: { of: 'flow', element: 'coil', factor: -1 } },
      },
      grid,
    );
    expect(worst(speaker.seen!, microphone.seen!)).toBeLessThan(1e-10);
  },
);

/** Power that one volt delivers, and the power that all resistances take: equal, for any passive network. */
function powers(network: Network): readonly { delivered: number; taken: number }[] {
  const lossy = network.elements.filter(({ kind }) => ['resistor', 'damper', 'acousticResistance'].includes(kind)) as {
    kind: string;
    name: string;
    value: number;
  }[];
  const source = network.elements.find(({ kind }) => kind === 'source')!;
  const probes = Object.fromEntries(
    [source, ...lossy].map(({ name }) => [name, { of: 'flow', element: name } as const]),
  );
  const columns = byPolynomials({ elements: network.elements, probes }, grid);
  return [...grid.keys()].map((i) => ({
    delivered: columns[source.name]!.re[i]!,
    taken: lossy.reduce((sum, { kind, name, value }) => {
      const { re, im } = columns[name]!;
      const square = re[i]! ** 2 + im[i]! ** 2;
      return sum + (kind === 'damper' ? square / value : square * value);
    }, 0),
  }));
}
test.prop([
  fc.oneof(
    systemArbitrary.map(({ network }) => network),
    ladderArbitrary.map(({ network }) => network),
  ),
])('energy: what the source delivers, the resistances take; and it is never less than nothing', (network) => {
  for (const { delivered, taken } of powers(network)) {
    expect(delivered).toBeGreaterThanOrEqual(0);
    close(delivered, taken, 1e-9);
  }
});

test.prop([systemArbitrary])(
  'without coil inductance a network has no inductor and the same answer at low frequency',
  ({ network }) => {
    const shorted = withoutCoilInductance(network);
    expect(shorted.elements.some(({ kind }) => kind === 'inductor')).toBe(false);
    const low = Float64Array.of(1e-3);
    const [a, b] = [byPolynomials(network, low).current!, byPolynomials(shorted, low).current!];
    close(Math.hypot(a.re[0]!, a.im[0]!), Math.hypot(b.re[0]!, b.im[0]!), 1e-4);
  },
);

test.prop([systemArbitrary, bassFrequency])('an element given by its admittance is the element', ({ network }, f) => {
  const elements = network.elements.map((element): Element => {
    if (element.name !== 'Mms') return element;
    const { name, nodes, value } = element as { name: string; nodes: readonly [string, string]; value: number };
    const admittance = (frequencies: Float64Array, re: Float64Array, im: Float64Array) => {
      frequencies.forEach((frequency, i) => {
        re[i] = 0;
        im[i] = 2 * Math.PI * frequency * value;
      });
    };
    return { kind: 'admittance', name, nodes, admittance };
  });
  const given = { elements, probes: { ...network.probes, force: { of: 'flow', element: 'Mms' } as const } };
  expect(compileTopology(given)).toBeUndefined();
  const [a, b] = [
    byPlan(given, Float64Array.of(f)),
    byPolynomials({ elements: network.elements, probes: given.probes }, Float64Array.of(f)),
  ];
  for (const name of Object.keys(a)) expect(worst(a[name]!, b[name]!)).toBeLessThan(1e-9);
});

plain('a network of more unknowns than the expansion can tell apart is left to elimination', () => {
  // Stubs without a load: each is one more unknown and, once all that cancels has cancelled, not one product more.
  const stubs = 70;
  const elements: Element[] = [
    { kind: 'source', name: 'source', nodes: ['n', 'ground'] },
    branch('resistor', 'load', ['n', 'ground'], 2),
    ...Array.from({ length: stubs }, (_, i) => branch('resistor', `R${i}`, ['n', `stub ${i}`], 3 + i)),
  ];
  const probes = {
    current: { of: 'flow', element: 'source' },
    last: { of: 'potential', node: `stub ${stubs - 1}` },
  } as const;
  const network: Network = { elements, probes };
  expect(compileTopology(network)).toBeUndefined();
  const columns = byPlan(network, Float64Array.of(50));
  close(columns.current!.re[0]!, 0.5, 1e-12);
  close(columns.last!.re[0]!, 1, 1e-12);
});
