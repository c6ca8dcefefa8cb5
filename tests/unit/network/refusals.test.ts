import {
  branch,
  compilePlan,
  compileTopology,
  type Element,
  type Network,
  netlist,
  withoutCoilInductance,
} from '@airspring/core/network';
import { describe, expect, test } from 'vitest';

const source: Element = { kind: 'source', name: 'drive', nodes: ['in', 'ground'] };
const load = branch('resistor', 'load', ['in', 'ground'], 4);
const network = (...elements: Element[]): Network => ({ elements, probes: {} });
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
  ['compileTopology', compileTopology],
  ['compilePlan', compilePlan],
  ['netlist', netlist],
] as const)('%s refuses', (_name, door) => {
  test.each<[string, Network, string[][]]>([
    [
      'a node that nothing holds',
      network(source, load, branch('resistor', 'R', ['a', 'b'], 1)),
      [
        ['inconsistent', 'node a'],
        ['inconsistent', 'node b'],
      ],
    ],
    ['no source', network(load), [['empty', 'elements']]],
    [
      'two of one name',
      network(source, load, { ...load, nodes: ['in', 'ground'] }),
      [['conflict', 'elements[2] load']],
    ],
    ['no number', network(source, { ...load, value: Number.NaN }), [['not-finite', 'elements[1] load']]],
    [
      'an infinite value',
      network(source, { ...load, value: Number.POSITIVE_INFINITY }),
      [['not-finite', 'elements[1] load']],
    ],
    [
      'zero and below',
      network(source, { ...load, value: 0 }, branch('mass', 'M', ['in', 'ground'], -1)),
      [
        ['not-positive', 'elements[1] load'],
        ['not-positive', 'elements[2] M'],
      ],
    ],
    [
      'an unknown element in a probe',
      { elements: [source, load], probes: { seen: { of: 'flow', element: 'Load' } } },
      [['unknown-field', 'probes.seen']],
    ],
    [
      'an unknown node in a probe',
      { elements: [source, load], probes: { seen: { of: 'potential', node: 'out' } } },
      [['unknown-field', 'probes.seen']],
    ],
    [
      'a factor that is no number',
      { elements: [source, load], probes: { seen: { of: 'potential', node: 'in', factor: Number.NaN } } },
      [['not-finite', 'probes.seen.factor']],
    ],
    [
      'a side of a motor that only the other side holds: the two couple differences, not levels',
      network(
        source,
        load,
        { kind: 'motor', name: 'second coil', electrical: ['a', 'b'], mechanical: ['in', 'ground'], Bl: 5 },
        branch('resistor', 'R', ['a', 'b'], 8),
      ),
      [
        ['inconsistent', 'node a'],
        ['inconsistent', 'node b'],
      ],
    ],
    [
      'every fault at once',
      {
        elements: [{ ...load, value: -1 }, branch('spring', 'load', ['x', 'y'], 1)],
        probes: { seen: { of: 'flow', element: 'none' } },
      },
      [
        ['not-positive', 'elements[0] load'],
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
  expect(faultsOf(() => compileTopology(twice))).toEqual([['inconsistent', 'elements[1] again']]);
});

describe('netlist text', () => {
  test('of each kind of element, value with all its digits', () => {
    const elements: Element[] = [
      source,
      branch('resistor', 'Re', ['in', 'coil'], 5.6),
      branch('inductor', 'Le', ['coil', 'gap'], 1e-3),
      branch('capacitor', 'C', ['in', 'ground'], 1e-6),
      { kind: 'motor', name: 'Bl', electrical: ['gap', 'ground'], mechanical: ['cone', 'ground'], Bl: 10 },
      branch('mass', 'Mms', ['cone', 'ground'], 0.05),
      branch('spring', 'Cms', ['cone', 'ground'], 5e-4),
      branch('damper', 'Rms', ['cone', 'ground'], 4),
      { kind: 'piston', name: 'Sd', mechanical: ['cone', 'ground'], front: 'ground', rear: 'box', Sd: 0.03 },
      branch('acousticCompliance', 'Cab', ['box', 'ground'], 2e-7),
      branch('acousticMass', 'vent', ['box', 'ground'], 100),
      branch('acousticResistance', 'leak', ['box', 'ground'], 1e5),
      { kind: 'admittance', name: 'lining', nodes: ['box', 'ground'], admittance: () => {} },
    ];
    expect(netlist({ elements, probes: {} }, 'a box\nin two lines')).toBe(
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
  test('names that a simulator takes for one are told apart, and none of them is its ground', () => {
    const elements: Element[] = [
      { kind: 'source', name: 'a', nodes: ['box one', 'ground'] },
      branch('resistor', 'A', ['box one', 'box-one'], 1),
      branch('resistor', 'r', ['box-one', 'BOX ONE'], 1),
      branch('resistor', 'R', ['BOX ONE', '0'], 1),
      branch('resistor', 'last', ['0', 'ground'], 1),
    ];
    expect(netlist({ elements, probes: {} }).split('\n').slice(1, -1)).toEqual([
      'V_a box_one 0 DC 0 AC 1',
      'R_A_2 box_one box_one_2 1.0000000000000000e+0',
      'R_r box_one_2 BOX_ONE_3 1.0000000000000000e+0',
      'R_R_2 BOX_ONE_3 0_2 1.0000000000000000e+0',
      'R_last 0_2 0 1.0000000000000000e+0',
    ]);
  });
});

describe('without coil inductance', () => {
  test('nodes join, what lay beside an inductor falls away, probes follow', () => {
    const { elements, probes } = withoutCoilInductance({
      elements: [
        source,
        branch('inductor', 'Le', ['in', 'a'], 1e-3),
        branch('inductor', 'L2', ['a', 'b'], 1e-3),
        branch('resistor', 'R2', ['a', 'b'], 3),
        branch('resistor', 'Re', ['b', 'ground'], 5),
      ],
      probes: {
        end: { of: 'potential', node: 'b' },
        lost: { of: 'flow', element: 'L2' },
        current: { of: 'flow', element: 'Re' },
      },
    });
    expect(elements.map(({ name }) => name)).toEqual(['drive', 'Re']);
    const [{ nodes: driven }, { nodes: left }] = elements as unknown as [{ nodes: string[] }, { nodes: string[] }];
    expect(left[0]).toBe(driven[0]);
    expect(probes).toEqual({ end: { of: 'potential', node: driven[0] }, current: { of: 'flow', element: 'Re' } });
  });
});
