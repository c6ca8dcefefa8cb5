import { closedBox, type Family, systemOf } from '@airspring/core/enclosure';
import { compile, losslessLine } from '@airspring/core/network';
import { referenceLevel } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { ten } from '../../circuit/cases.js';

test('a line whose delay is a whole number of periods at each megahertz is no asymptote', () => {
  const closed = closedBox({ drivers: ten, netVolume: '40 L' });
  const { topology } = closed.network;
  const family: Family<{ readonly delay: number }> = {
    name: 'a tube behind the cone',
    compile,
    read: (spec) => spec,
    topology: () => ({
      ...topology,
      elements: [
        ...topology.elements.filter(({ name }) => name !== 'Cab'),
        losslessLine('tube', ['box', 'mouth']),
        { kind: 'meter', name: 'mouth', nodes: ['mouth', 'ground'] },
      ],
      outlets: [...topology.outlets, { name: 'mouth', flow: { of: 'flow', element: 'mouth' } }],
    }),
    values: ({ delay }, _air, set) => {
      for (const [name, value] of Object.entries(closed.network.values))
        if (name !== 'Cab') set(name, ...[value].flat());
      set('tube', 1e5, delay);
    },
  };
  for (const delay of [0.5e-3, 0.4873e-3])
    expect(() => referenceLevel(systemOf(family, { delay }))).toThrow(/still changes|undamped|damps/);
});
