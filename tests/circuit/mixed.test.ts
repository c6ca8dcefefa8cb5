/** Drivers unlike each other: the circuit simulator solves each of their parts apart. */
import type { Driver } from '@airspring/core/driver';
import { mixedBox } from '@airspring/core/enclosure';
import type { ComplexColumn } from '@airspring/core/numeric';
import { describe, expect, test } from 'vitest';
import { boxes, low, small } from '../literature/enclosure/mixed-box.js';
import { byPlan, byPolynomials, scaled, worst } from './compare.js';
import { simulate } from './simulator.js';

describe.each(Object.entries(boxes))('%s', async (_name, { network }) => {
  const run = await simulate(network, 10, 1000, 41);
  const named = (name: string) => run.get(name) as ComplexColumn;
  const frequencies = named('frequency').re;
  const each = ['low', 'wide', 'small'].flatMap((one): [string, ComplexColumn][] => [
    [`coneVelocity ${one}`, named(`v(cone_${one})`)],
    [`current ${one}`, named(`i(v_sense_bl_${one})`)],
  ]);
  const expected: Readonly<Record<string, ComplexColumn>> = {
    radiatedFlow: scaled(named('i(v_walls)'), -1),
    current: scaled(named('i(v_drive)'), -1), // SPICE counts it into the plus pole
    terminalVoltage: named('v(terminals)'),
    'ventAirSpeed main': scaled(named('i(l_vent_main)'), network.probes['ventAirSpeed main']?.factor ?? Number.NaN),
    ...Object.fromEntries(each),
  };
  const ours = byPlan(network, frequencies);
  test.each(Object.keys(network.probes))('%s', (probe) => {
    expect(worst(expected[probe] as ComplexColumn, ours[probe] as ComplexColumn)).toBeLessThan(1e-9);
  });
});

test('with few enough parts the polynomials say the same', async () => {
  const bare = ({ Le: _1, R2: _2, L2: _3, ...driver }: Driver) => driver;
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
  const flow = scaled(run.get('i(v_walls)') as ComplexColumn, -1);
  expect(worst(flow, byPolynomials(network, frequencies).radiatedFlow as ComplexColumn)).toBeLessThan(1e-9);
});
