import { type BranchKind, compilePolynomials, type Network } from '@airspring/core/network';
import { expect, test as plain } from 'vitest';
import { bassFrequency, systemArbitrary } from '../../arbitrary/box.js';
import { ladderArbitrary } from '../../arbitrary/network.js';
import {
  listed,
  type Numbered,
  networkOf,
  outletsOf,
  part,
  partsOf,
  probesOf,
  type Scaled,
} from '../../arbitrary/network-of.js';
import { fc, test } from '../../arbitrary/property.js';
import { byEither, byPlan, byPolynomials, worst } from '../../circuit/compare.js';

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
const units: Readonly<Record<BranchKind | 'motor' | 'piston', readonly [number, number, number, number]>> = {
  resistor: [2, 1, -3, -2],
  inductor: [2, 1, -2, -2],
  capacitor: [-2, -1, 4, 2],
  mass: [0, 1, 0, 0],
  spring: [0, -1, 2, 0],
  damper: [0, 1, -1, 0],
  acousticMass: [-4, 1, 0, 0],
  acousticCompliance: [4, -1, 2, 0],
  acousticResistance: [-4, 1, -1, 0],
  motor: [1, 1, -2, -1],
  piston: [2, 0, 0, 0],
};
const size = fc.double({ min: 0.2, max: 5, noNaN: true });
test.prop([systemArbitrary, size, size, size, size])(
  'another system of units: m × a, kg × b, s × c, A × d',
  ({ network }, a, b, c, d) => {
    const by = ([m, kg, s, A]: readonly [number, number, number, number]) => a ** m * b ** kg * c ** s * d ** A;
    const elements = partsOf(network).map((element): Numbered => {
      const unit = units[element.kind as keyof typeof units];
      return element.values === undefined ? element : { ...element, values: (element.values as number) * by(unit) };
    });
    const probes: Record<string, Scaled> = {
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
    const before = byPolynomials(networkOf(partsOf(network), probes), grid);
    const after = byPolynomials(
      networkOf(elements, probes),
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
  const load = (to: string) => part('resistor', 'load', [`n${rungs}`, to], 3);
  const bare = partsOf(network).filter(({ kind }) => kind !== 'source');
  const moved = bare.map(
    (element): Numbered =>
      element.name === 'series 0' ? ({ ...element, nodes: ['ground', 'n1'] } as Numbered) : element,
  );
  const there = byEither(
    networkOf([...partsOf(network), load('ground')], { seen: { of: 'flow', element: 'load' } }),
    grid,
  );
  const back = byEither(
    networkOf([...moved, load('m'), { kind: 'source', name: 'source', nodes: ['ground', 'm'] }], {
      seen: { of: 'flow', element: 'series 0' },
    }),
    grid,
  );
  expect(worst(there.seen!, back.seen!)).toBeLessThan(1e-10);
});

const positive = fc.double({ min: 0.1, max: 10, noNaN: true });
test.prop([positive, positive, positive, positive, positive, positive])(
  'a loudspeaker as a microphone: as much back as there, with the other sign, since a piston is a gyrator',
  (R, Bl, mass, compliance, Sd, load) => {
    const through = (electrical: string, acoustical: string): Numbered[] => [
      part('resistor', 'coil', [electrical, 'gap'], R),
      { kind: 'motor', name: 'motor', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], values: Bl },
      part('mass', 'mass', ['cone', 'ground'], mass / 100),
      part('spring', 'spring', ['cone', 'ground'], compliance / 1e4),
      { kind: 'piston', name: 'piston', mechanical: ['cone', 'ground'], front: 'ground', rear: 'air', values: Sd },
      part('acousticResistance', 'load', ['air', acoustical], load),
    ];
    const speaker = byPolynomials(
      networkOf([{ kind: 'source', name: 'drive', nodes: ['in', 'ground'] }, ...through('in', 'ground')], {
        seen: { of: 'flow', element: 'load' },
      }),
      grid,
    );
    const microphone = byPolynomials(
      networkOf([{ kind: 'source', name: 'sound', nodes: ['ground', 'm'] }, ...through('ground', 'm')], {
        seen: { of: 'flow', element: 'coil', sign: -1 },
      }),
      grid,
    );
    expect(worst(speaker.seen!, microphone.seen!)).toBeLessThan(1e-10);
  },
);

/** Power that one volt delivers, and the power that all resistances take: equal, for any passive network. */
function powers(network: Network): readonly { delivered: number; taken: number }[] {
  const parts = partsOf(network);
  const lossy = parts.filter(({ kind }) => ['resistor', 'damper', 'acousticResistance'].includes(kind));
  const source = parts.find(({ kind }) => kind === 'source')!;
  const probes = Object.fromEntries(
    [source, ...lossy].map(({ name }) => [name, { of: 'flow', element: name } as const]),
  );
  const columns = byPolynomials(networkOf(partsOf(network), probes), grid);
  return [...grid.keys()].map((i) => ({
    delivered: columns[source.name]!.re[i]!,
    taken: lossy.reduce((sum, { kind, name, values }) => {
      const value = values as number;
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
  'in the reference the inductive parts of the coil are shorts, and the leak is none: both roads, and values of zero',
  ({ network }) => {
    const names = Object.keys(network.values);
    const none = Object.fromEntries(['Le', 'L2'].filter((name) => names.includes(name)).map((name) => [name, 0]));
    const leak = names.includes('leak') ? { leak: Infinity } : {};
    const given: Network = { ...network, values: { ...network.values, ...none, ...leak } };
    const expected = byPolynomials(given, grid);
    for (const road of [byPolynomials, byPlan]) {
      const got = road(network, grid, true);
      for (const name of Object.keys(expected)) expect(worst(expected[name]!, got[name]!), name).toBeLessThan(1e-9);
    }
    const low = Float64Array.of(1e-3);
    const [a, b] = [byPolynomials(network, low).current!, byPolynomials(network, low, true).current!];
    close(Math.hypot(a.re[0]!, a.im[0]!), Math.hypot(b.re[0]!, b.im[0]!), 1e-4);
  },
);

test.prop([systemArbitrary, bassFrequency])('an element given over frequency is the element', ({ network }, f) => {
  const Mms = network.values.Mms as number;
  const moving = (frequencies: Float64Array, _re: Float64Array, im: Float64Array) => {
    frequencies.forEach((frequency, i) => {
      im[i] = 2 * Math.PI * frequency * Mms;
    });
  };
  const probes = { ...probesOf(network), force: { of: 'flow', element: 'Mms' } as const };
  const whole = networkOf(partsOf(network), probes, outletsOf(network));
  const parts = partsOf(network).map((one) => (one.name === 'Mms' ? listed('Mms', ['cone', 'ground'], moving) : one));
  const given = networkOf(parts, probes, outletsOf(network));
  const b = byPolynomials(whole, Float64Array.of(f));
  for (const road of [byPolynomials, byPlan]) {
    const a = road(given, Float64Array.of(f));
    for (const name of Object.keys(a)) expect(worst(a[name]!, b[name]!)).toBeLessThan(1e-9);
  }
});

plain('a network of more unknowns than the expansion can tell apart is left to elimination', () => {
  // Stubs without a load: each is one more unknown and, once all that cancels has cancelled, not one product more.
  const stubs = 70;
  const elements: Numbered[] = [
    { kind: 'source', name: 'source', nodes: ['n', 'ground'] },
    part('resistor', 'load', ['n', 'ground'], 2),
    ...Array.from({ length: stubs }, (_, i) => part('resistor', `R${i}`, ['n', `stub ${i}`], 3 + i)),
  ];
  const probes = {
    current: { of: 'flow', element: 'source' },
    last: { of: 'potential', node: `stub ${stubs - 1}` },
  } as const;
  const network = networkOf(elements, probes);
  expect(compilePolynomials(network.topology)).toBeUndefined();
  const columns = byPlan(network, Float64Array.of(50));
  close(columns.current!.re[0]!, 0.5, 1e-12);
  close(columns.last!.re[0]!, 1, 1e-12);
});
