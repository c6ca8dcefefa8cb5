/** Networks without a meaning: each is refused by the name of what is wrong, with what to do. */
import {
  type CompiledTopology,
  compileNetwork,
  compilePlan,
  compilePolynomials,
  losslessLine,
  type Network,
  netlist,
  probeGradient,
  valuesOf,
} from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { probeColumns } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { chained, listed, type Numbered, networkOf, part } from '../../arbitrary/network-of.js';

const source: Numbered = { kind: 'source', name: 'drive', nodes: ['in', 'ground'] };
const load = part('resistor', 'load', ['in', 'ground'], 4);
const network = (...elements: Numbered[]): Network => networkOf(elements);
const motor = (electrical: [string, string], mechanical: [string, string], name = 'motor'): Numbered => ({
  kind: 'motor',
  name,
  electrical,
  mechanical,
  values: 5,
});
const line = (near: string, far: string): Numbered => chained('tube', [near, far], () => {});
const refused = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    return (error as { faults: { path: string; got: unknown; remedy: string }[] }).faults;
  }
  return [];
};
const made = (compiled: CompiledTopology | undefined, { values }: Network) =>
  compiled?.network(valuesOf(compiled.slots, values));
const doors = {
  compilePolynomials: (network: Network) => made(compilePolynomials(network.topology), network),
  compilePlan: (network: Network) => made(compilePlan(network.topology), network),
  netlist,
  probeGradient: (network: Network) => probeGradient(network, 'radiatedFlow', 50),
} as const;

describe.each(Object.entries(doors))('%s names it', (_name, door) => {
  test.each<[string, Network, string, string]>([
    ['a floating node', network(source, load, part('resistor', 'R', ['a', 'b'], 1)), 'node a', "Connect 'a'"],
    [
      'a spring that yields nothing',
      network(source, load, part('spring', 'Cms', ['in', 'ground'], 0)),
      'elements[2] Cms',
      "Leave 'Cms' out",
    ],
    [
      'sources in a loop',
      network(
        source,
        load,
        { kind: 'source', name: 'again', nodes: ['in', 'mid'] },
        {
          kind: 'source',
          name: 'third',
          nodes: ['mid', 'ground'],
        },
      ),
      'elements[3] third',
      "resistance in series with 'third'",
    ],
    [
      'a meter across a source',
      network(source, load, { kind: 'meter', name: 'amperes', nodes: ['in', 'ground'] }),
      'elements[2] amperes',
      "resistance in series with 'amperes'",
    ],
    ['a shorted source', network({ ...source, nodes: ['in', 'in'] }, load), 'elements[0] drive', "one end of 'drive'"],
    ['a shorted coil', network(source, load, motor(['in', 'in'], ['cone', 'ground'])), 'elements[2] motor', "'motor'"],
    [
      'a held cone',
      network(source, load, motor(['in', 'ground'], ['ground', 'ground'])),
      'elements[2] motor',
      "'motor'",
    ],
    ['a shorted line', network(source, load, line('in', 'in')), 'elements[2] tube', "one end of 'tube'"],
    [
      'a piston between a node and itself',
      network(source, load, {
        ...{ kind: 'piston', name: 'cone', mechanical: ['in', 'in'], front: 'ground', rear: 'ground', values: 1 },
      } as Numbered),
      'elements[2] cone',
      "one end of 'cone'",
    ],
  ])('%s', (_what, given, path, remedy) => {
    const faults = refused(() => door(given));
    const fault = faults.find((one) => one.path === path);
    expect(fault?.remedy).toContain(remedy);
  });
});

test('a cone in the open, and a node without a name of its own, are no faults', () => {
  const open: Numbered = {
    kind: 'piston',
    name: 'cone',
    mechanical: ['in', 'ground'],
    front: 'ground',
    rear: 'ground',
    values: 1,
  };
  expect(refused(() => doors.compilePlan(network(source, load, open)))).toEqual([]);
});
test('an admittance of nothing is no pivot: what hangs on it alone is refused where it is nothing, not NaN', () => {
  const at = (value: number): Numbered =>
    listed('Y', ['in', 'hanging'], (frequencies, re) => {
      for (let i = 0; i < frequencies.length; i++) re[i] = frequencies[i] === 50 ? 0 : value;
    });
  const hanging = { p: { of: 'potential', node: 'hanging' } } as const;
  const held = part('resistor', 'R', ['hanging', 'ground'], 1);
  const out = [complexColumn(2)];
  const given = networkOf([source, at(3), held], hanging);
  expect(doors.compilePlan(given)!.sweep(Float64Array.of(50, 60), out)).toBe(-1);
  expect([...out[0]!.re]).toEqual([0, 0.75]);
  const alone = networkOf([source, load, at(3)], hanging);
  expect(refused(() => doors.compilePlan(alone))).toEqual([]);
  expect(doors.compilePlan(alone)!.sweep(Float64Array.of(60, 50), out)).toBe(1);
  expect(doors.compilePolynomials(alone)!.sweep(Float64Array.of(60, 50), out)).toBe(1);
});
test('two sources that each dictate the speed of one cone: all of them are named', () => {
  const fighting = network(
    source,
    { kind: 'source', name: 'other drive', nodes: ['other', 'ground'] },
    motor(['in', 'ground'], ['cone', 'ground'], 'one'),
    motor(['other', 'ground'], ['cone', 'ground'], 'two'),
    part('mass', 'Mms', ['cone', 'ground'], 1),
  );
  const [fault] = refused(() => compilePolynomials(fighting.topology));
  for (const name of ['drive', 'other drive', 'one', 'two']) expect(fault?.got).toContain(`'${name}'`);
  expect(fault?.remedy).toContain('resistance in series');
  // A plan sees it only in numbers: it stops at the first frequency.
  expect(doors.compilePlan(fighting)!.sweep(Float64Array.of(50), [])).toBe(0);
});
test('a meter is a joint: its flow is the sum, its potential none', () => {
  const given = networkOf(
    [
      source,
      part('resistor', 'a', ['in', 'sum'], 4),
      part('resistor', 'b', ['in', 'sum'], 6),
      { kind: 'meter', name: 'amperes', nodes: ['sum', 'ground'] },
    ],
    { sum: { of: 'flow', element: 'amperes' }, at: { of: 'potential', node: 'sum' } },
  );
  const out = [0, 1].map(() => ({ re: new Float64Array(1), im: new Float64Array(1) }));
  doors.compilePlan(given)!.sweep(Float64Array.of(50), out);
  expect(out[0]!.re[0]).toBeCloseTo(1 / 4 + 1 / 6, 15);
  expect(out[1]!.re[0]).toBe(0);
  const gradient = probeGradient(given, 'sum', 50)!;
  expect(gradient.byElement).not.toHaveProperty('amperes');
  expect(gradient.byElement.a!.re).toBeCloseTo(-1 / 4, 15);
});

test('an element of a kind that there is not is refused, not left out', () => {
  const odd = { kind: 'condenser', name: 'C', nodes: ['in', 'ground'] } as unknown as Numbered;
  for (const door of Object.values(doors)) {
    expect(refused(() => door(network(source, odd))).map(({ path }) => path)).toEqual(['elements[1] C']);
  }
});

describe('a resonance that nothing damps, met to the last bit', () => {
  const tuned = 1 / (2 * Math.PI * 50) ** 2;
  const v = { of: 'potential', node: 'out' } as const;
  const circuit = networkOf(
    [source, part('inductor', 'L', ['in', 'out'], 1), part('capacitor', 'C', ['out', 'ground'], tuned)],
    { v },
  );
  const quarterWave = networkOf([source, { ...losslessLine('tube', ['in', 'out']), values: [100, 1 / 400] }], { v });
  test.each([
    ['of mass and spring', circuit, 50],
    ['of a quarter wave', quarterWave, 100],
    ['of three quarter waves', quarterWave, 300],
  ])('%s has no answer, and a millionth beside it has one', (_, resonant, f) => {
    const out = [{ re: new Float64Array(2), im: new Float64Array(2) }];
    expect(doors.compilePlan(resonant)!.sweep(Float64Array.of(f * 0.999999, f), out)).toBe(1);
    expect(Math.abs(out[0]!.re[0]!)).toBeGreaterThan(1e5);
    expect(probeGradient(resonant, 'v', f)).toBeUndefined();
    expect(probeGradient(resonant, 'v', f * 0.999999)?.value.re).toBeCloseTo(out[0]!.re[0]!, -1);
  });
});

test('the polynomials of a resonance that nothing damps: refused where they are read, by name', () => {
  const tuned = 1 / (2 * Math.PI * 50) ** 2;
  const compiled = compileNetwork(
    networkOf([source, part('inductor', 'L', ['in', 'out'], 1), part('capacitor', 'C', ['out', 'ground'], tuned)], {
      v: { of: 'potential', node: 'out' },
    }),
  );
  const [fault] = refused(() => probeColumns(compiled, Float64Array.of(49, 50)));
  expect(fault).toMatchObject({ code: 'inconsistent', path: 'network', got: 50 });
  expect(probeColumns(compiled, Float64Array.of(49, 50 * 0.999999)).v!.re.every(Number.isFinite)).toBe(true);
});
test('couplings that cancel but for rounding are no pivot', () => {
  const coil = (name: string, from: string, to: string, Bl: number): Numbered => ({
    kind: 'motor',
    name,
    electrical: [from, to],
    mechanical: ['cone', 'ground'],
    values: Bl,
  });
  const against: Numbered = {
    kind: 'motor',
    name: 'three',
    electrical: ['b', 'ground'],
    mechanical: ['ground', 'cone'],
    values: 0.3,
  };
  const given = networkOf([source, coil('one', 'in', 'a', 0.1), coil('two', 'a', 'b', 0.2), against], {
    v: { of: 'potential', node: 'cone' },
  });
  // The source stands across coils that together give nothing: no current is right.
  const out = [{ re: new Float64Array(1), im: new Float64Array(1) }];
  const faults = refused(() => {
    if (doors.compilePlan(given)!.sweep(Float64Array.of(50), out) < 0) expect(out).toBe('refused or stopped');
  });
  for (const fault of faults) expect(fault).toMatchObject({ code: 'inconsistent' });
});
test('a netlist tells the sensor of a motor from a source of that name', () => {
  const elements: Numbered[] = [
    { ...source, name: 'sense_motor' },
    part('resistor', 'R', ['in', 'coil'], 4),
    motor(['coil', 'ground'], ['cone', 'ground']),
    part('mass', 'M', ['cone', 'ground'], 0.1),
  ];
  const names = netlist(network(...elements))
    .split('\n')
    .slice(1)
    .map((line) => line.split(' ')[0]!.toLowerCase());
  expect(new Set(names).size).toBe(names.length);
});
