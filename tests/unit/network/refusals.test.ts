import {
  compilePlan,
  compilePolynomials,
  type Network,
  netlist,
  probeGradient,
  valuesOf,
} from '@airspring/core/network';
import { describe, expect, test } from 'vitest';
import { listed, type Numbered, networkOf, part } from '../../arbitrary/network-of.js';

const source: Numbered = { kind: 'source', name: 'drive', nodes: ['in', 'ground'] };
const load = part('resistor', 'load', ['in', 'ground'], 4);
const network = (...elements: Numbered[]): Network => networkOf(elements);
const faultsOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    expect(error).toMatchObject({ name: 'InputError', code: 'airspring-input' });
    return (error as { faults: { code: string; path: string }[] }).faults.map(({ code, path }) => [code, path]);
  }
  return [];
};

describe.each([
  [
    'compilePolynomials',
    ({ topology, values }: Network) => {
      const compiled = compilePolynomials(topology);
      compiled?.network(valuesOf(compiled.slots, values));
    },
  ],
  [
    'compilePlan',
    ({ topology, values }: Network) => {
      const { slots, network } = compilePlan(topology);
      network(valuesOf(slots, values));
    },
  ],
  ['probeGradient', (network: Network) => probeGradient(network, 'seen', 50)],
  ['netlist', netlist],
] as const)('%s refuses', (_name, door) => {
  test.each<[string, Network, string[][]]>([
    [
      'a node that nothing holds',
      network(source, load, part('resistor', 'R', ['a', 'b'], 1)),
      [
        ['inconsistent', 'node a'],
        ['inconsistent', 'node b'],
      ],
    ],
    ['no source', network(load), [['empty', 'elements']]],
    [
      'two of one name',
      network(source, load, part('resistor', 'load', ['in', 'ground'], 4)),
      [['conflict', 'elements[2] load']],
    ],
    ['no number', network(source, { ...load, values: Number.NaN }), [['not-finite', 'elements[1] load']]],
    [
      'an infinite value where impedances stand',
      network(source, { ...load, values: Number.POSITIVE_INFINITY, stands: 'impedance' } as Numbered),
      [['not-finite', 'elements[1] load']],
    ],
    [
      'zero and below',
      network(source, { ...load, values: 0 }, part('mass', 'M', ['in', 'ground'], -1)),
      [
        ['not-positive', 'elements[1] load'],
        ['not-positive', 'elements[2] M'],
      ],
    ],
    [
      'an unknown element in a probe',
      networkOf([source, load], { seen: { of: 'flow', element: 'Load' } }),
      [['unknown-field', 'probes.seen']],
    ],
    [
      'an unknown node in a probe',
      networkOf([source, load], { seen: { of: 'potential', node: 'out' } }),
      [['unknown-field', 'probes.seen']],
    ],
    [
      'a factor that is no number',
      networkOf([source, load], { seen: { of: 'potential', node: 'in', by: Number.NaN } }),
      [['not-finite', 'values.factor of seen']],
    ],
    [
      'a side of a motor that only the other side holds: the two couple differences, not levels',
      network(
        source,
        load,
        { kind: 'motor', name: 'second coil', electrical: ['a', 'b'], mechanical: ['in', 'ground'], values: 5 },
        part('resistor', 'R', ['a', 'b'], 8),
      ),
      [
        ['inconsistent', 'node a'],
        ['inconsistent', 'node b'],
      ],
    ],
    [
      'every fault at once',
      networkOf([load, part('spring', 'load', ['x', 'y'], 1)], { seen: { of: 'flow', element: 'none' } }),
      [
        ['conflict', 'elements[1] load'],
        ['inconsistent', 'node x'],
        ['inconsistent', 'node y'],
        ['empty', 'elements'],
        ['unknown-field', 'probes.seen'],
      ],
    ],
  ])('%s', (_what, given, expected) => {
    expect(faultsOf(() => door(given)).sort()).toEqual([...expected].sort());
  });
});

test('two sources in one loop have no solution', () => {
  const twice = network(source, { ...source, name: 'again' });
  expect(faultsOf(() => compilePolynomials(twice.topology))).toEqual([['inconsistent', 'elements[1] again']]);
});

describe('netlist text', () => {
  test('of each kind of element, value with all its digits', () => {
    const elements: Numbered[] = [
      source,
      part('resistor', 'Re', ['in', 'coil'], 5.6),
      part('inductor', 'Le', ['coil', 'gap'], 1e-3),
      part('capacitor', 'C', ['in', 'ground'], 1e-6),
      { kind: 'motor', name: 'Bl', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], values: 10 },
      part('mass', 'Mms', ['cone', 'ground'], 0.05),
      part('spring', 'Cms', ['cone', 'ground'], 5e-4),
      part('damper', 'Rms', ['cone', 'ground'], 4),
      { kind: 'piston', name: 'Sd', mechanical: ['cone', 'ground'], front: 'ground', rear: 'box', values: 0.03 },
      part('acousticCompliance', 'Cab', ['box', 'ground'], 2e-7),
      part('acousticMass', 'vent', ['box', 'ground'], 100),
      part('acousticResistance', 'leak', ['box', 'ground'], 1e5),
      listed('lining', ['box', 'ground'], () => {}),
    ];
    expect(netlist(networkOf(elements), 'a box\nin two lines')).toBe(
      [
        'a box in two lines',
        'V_drive in 0 DC 0 AC 1',
        'R_Re in coil 5.5999999999999996e+0',
        'L_Le coil gap 1.0000000000000000e-3',
        'C_C in 0 9.9999999999999995e-7',
        'V_sense_Bl gap sensed_Bl 0',
        'E_Bl sensed_Bl 0 cone 0 1.0000000000000000e+1',
        'F_Bl 0 cone V_sense_Bl 1.0000000000000000e+1',
        'C_Mms cone 0 5.0000000000000003e-2',
        'L_Cms cone 0 5.0000000000000001e-4',
        'R_Rms cone 0 2.5000000000000000e-1', // a damper conducts
        'G_Sd_flow box 0 cone 0 2.9999999999999999e-2',
        'G_Sd_force cone 0 0 box 2.9999999999999999e-2',
        'C_Cab box 0 1.9999999999999999e-7',
        'L_vent box 0 1.0000000000000000e+2',
        'R_leak box 0 1.0000000000000000e+5',
        '* lining: given over frequency, not written',
        '.options noopac',
      ].join('\n'),
    );
  });
  test('an element that yields without end is a short, and one that does not yield is left out', () => {
    const elements: Numbered[] = [
      source,
      part('resistor', 'load', ['in', 'ground'], 4),
      part('capacitor', 'boundless', ['in', 'a'], Number.POSITIVE_INFINITY),
      part('resistor', 'after', ['a', 'ground'], 8),
      part('inductor', 'open', ['a', 'ground'], Number.POSITIVE_INFINITY),
    ];
    const lines = netlist(networkOf(elements)).split('\n');
    expect(lines).toContain('V_boundless_short in a 0');
    expect(lines).toContain('* open: nothing');
  });
  test('names that a simulator takes for one are told apart, and none of them is its ground', () => {
    const elements: Numbered[] = [
      { kind: 'source', name: 'a', nodes: ['box one', 'ground'] },
      part('resistor', 'A', ['box one', 'box-one'], 1),
      part('resistor', 'r', ['box-one', 'BOX ONE'], 1),
      part('resistor', 'R', ['BOX ONE', '0'], 1),
      part('resistor', 'last', ['0', 'ground'], 1),
    ];
    expect(netlist(networkOf(elements)).split('\n').slice(1, -1)).toEqual([
      'V_a box_one 0 DC 0 AC 1',
      'R_A_2 box_one box_one_2 1.0000000000000000e+0',
      'R_r box_one_2 BOX_ONE_3 1.0000000000000000e+0',
      'R_R_2 BOX_ONE_3 0_2 1.0000000000000000e+0',
      'R_last 0_2 0 1.0000000000000000e+0',
    ]);
  });
});

test('what is below zero has a wrong sign; what is zero may be left out', () => {
  const wrong = network(source, { ...load, values: 0 }, part('mass', 'M', ['in', 'ground'], -1));
  expect(() => netlist(wrong)).toThrow(/load: .* Leave 'load' out.*\n.*M: .* Correct its sign\./);
});
