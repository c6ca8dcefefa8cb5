/** Drivers unlike each other: the circuit simulator solves each of their parts apart. */
import type { Driver } from '@airspring/core/driver';
import { mixedBox } from '@airspring/core/enclosure';
import type { Network } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { describe, expect, test } from 'vitest';
import { boxes, low, small } from '../literature/enclosure/mixed-box.js';
import { byPlan, byPolynomials, minus, scaled, worst } from './compare.js';
import { simulate } from './simulator.js';

/** What leaves all volumes together: −jω Cab p for each of them, p across its air. */
function radiated({ topology, values }: Network, named: (name: string) => ComplexColumn): ComplexColumn {
  const frequencies = named('frequency').re;
  let sum = complexColumn(frequencies.length);
  for (const element of topology.elements) {
    if (element.kind !== 'acousticCompliance') continue;
    const [inside, behind] = element.nodes.map((node) =>
      node === 'ground' ? undefined : named(`v(${node.replace(/ /g, '_')})`.toLowerCase()),
    );
    const across = behind === undefined ? (inside as ComplexColumn) : minus(inside as ComplexColumn, behind);
    sum = minus(sum, scaled(across, values[element.name] as number, frequencies));
  }
  return sum;
}

describe.each(Object.entries(boxes))('%s', async (_name, { network }) => {
  const run = await simulate(network, 10, 1000, 41);
  const named = (name: string) => run.get(name) as ComplexColumn;
  const frequencies = named('frequency').re;
  const each = ['low', 'wide', 'small'].flatMap((one): [string, ComplexColumn][] => [
    [`coneVelocity ${one}`, named(`v(cone_${one})`)],
    [`current ${one}`, named(`i(v_sense_bl_${one})`)],
  ]);
  const expected: Readonly<Record<string, ComplexColumn>> = {
    radiatedFlow: radiated(network, named),
    current: scaled(named('i(v_drive)'), -1), // SPICE counts it into the plus pole
    terminalVoltage: named('v(terminals)'),
    'ventAirSpeed main': scaled(named('i(l_vent_main)'), network.values['perVentArea main'] as number),
    ...Object.fromEntries(each),
  };
  const ours = byPlan(network, frequencies);
  test.each(['radiatedFlow', ...Object.keys(network.topology.probes)])('%s', (probe) => {
    expect(worst(expected[probe] as ComplexColumn, ours[probe] as ComplexColumn)).toBeLessThan(1e-9);
  });
});

test('with few enough parts the polynomials say the same', async () => {
  const bare = ({ Le: _1, coil: _2, ...driver }: Driver) => driver;
  const { network } = mixedBox({
    drivers: {
      series: [
        { name: 'low', driver: bare(low), chamber: 'lower' },
        { name: 'small', driver: bare(small), chamber: 'upper' },
      ],
    },
    chambers: { lower: { netVolume: '70 L', fb: '29 Hz' }, upper: { netVolume: '9 L', QL: 12 } },
  });
  const run = await simulate(network, 10, 1000, 41);
  const frequencies = (run.get('frequency') as ComplexColumn).re;
  const flow = radiated(network, (name) => run.get(name) as ComplexColumn);
  expect(worst(flow, byPolynomials(network, frequencies).radiatedFlow as ComplexColumn)).toBeLessThan(1e-9);
});
