/** State matrices where states are tied to each other, and where there are none. */
import { type Network, stateSpace } from '@airspring/core/network';
import { describe, expect, test } from 'vitest';
import { type Numbered, networkOf, part, type Scaled } from '../../arbitrary/network-of.js';
import { byPlan, worst } from '../../circuit/compare.js';
import { byStates } from '../../circuit/states.js';

const grid = Float64Array.from({ length: 50 }, (_, i) => 1.3 ** i / 10);
const source: Numbered = { kind: 'source', name: 'drive', nodes: ['in', 'ground'] };
const motor: readonly Numbered[] = [
  part('resistor', 'Re', ['in', 'coil'], 5),
  { kind: 'motor', name: 'Bl', electrical: ['coil', 'ground'], mechanical: ['cone', 'ground'], values: 8 },
];
const current = { of: 'flow', element: 'drive' } as const;
const at = (node: string): Scaled => ({ of: 'potential', node });

const tied: Readonly<Record<string, readonly [size: number, network: Network]>> = {
  'two masses on one node': [
    2,
    networkOf(
      [
        source,
        ...motor,
        part('mass', 'cone', ['cone', 'ground'], 0.04),
        part('mass', 'added', ['cone', 'ground'], 0.02),
        part('spring', 'Cms', ['cone', 'ground'], 1e-3),
        part('damper', 'Rms', ['cone', 'ground'], 2),
      ],
      { current, cone: at('cone') },
    ),
  ],
  'two inductors in series': [
    1,
    networkOf(
      [
        source,
        part('resistor', 'R', ['in', 'a'], 4),
        part('inductor', 'one', ['a', 'b'], 0.3),
        part('inductor', 'two', ['b', 'ground'], 0.5),
      ],
      { current, between: at('b') },
    ),
  ],
  'two inductors in series, stood as admittances, with a resistor across one': [
    2,
    networkOf(
      [
        source,
        part('resistor', 'R', ['in', 'a'], 4),
        part('inductor', 'one', ['a', 'b'], 0.3, { stands: 'admittance' }),
        part('resistor', 'across', ['a', 'b'], 9),
        part('inductor', 'two', ['b', 'ground'], 0.5, { stands: 'admittance' }),
      ],
      { current, between: at('b') },
    ),
  ],
  'a floating capacitor': [
    1,
    networkOf(
      [
        source,
        part('resistor', 'R', ['in', 'a'], 4),
        part('capacitor', 'C', ['a', 'b'], 0.02),
        part('resistor', 'load', ['b', 'ground'], 7),
      ],
      { current, out: at('b') },
    ),
  ],
  'three capacitors around a loop': [
    2,
    networkOf(
      [
        source,
        part('resistor', 'R', ['in', 'a'], 4),
        part('capacitor', 'C1', ['a', 'ground'], 0.02),
        part('capacitor', 'C2', ['a', 'b'], 0.03),
        part('capacitor', 'C3', ['b', 'ground'], 0.05),
        part('resistor', 'load', ['b', 'ground'], 7),
      ],
      { current, out: at('b') },
    ),
  ],
  'three inductors at a node': [
    2,
    networkOf(
      [
        source,
        part('resistor', 'R', ['in', 'a'], 4),
        part('inductor', 'L1', ['a', 'star'], 0.2),
        part('inductor', 'L2', ['star', 'b'], 0.3),
        part('inductor', 'L3', ['star', 'ground'], 0.5),
        part('resistor', 'load', ['b', 'ground'], 7),
      ],
      { current, star: at('star'), out: at('b') },
    ),
  ],
  'two cones that one air holds together, without any compliance': [
    3,
    networkOf(
      [
        source,
        ...motor,
        part('mass', 'first mass', ['cone', 'ground'], 0.04),
        part('spring', 'first spring', ['cone', 'ground'], 1e-3),
        { kind: 'piston', name: 'Sd', mechanical: ['cone', 'ground'], front: 'ground', rear: 'tube', values: 0.03 },
        {
          kind: 'piston',
          name: 'other',
          mechanical: ['second', 'ground'],
          front: 'tube',
          rear: 'ground',
          values: 0.05,
        },
        part('mass', 'second mass', ['second', 'ground'], 0.1),
        part('spring', 'second spring', ['second', 'ground'], 2e-3),
        part('damper', 'loss', ['second', 'ground'], 2),
      ],
      { current, cone: at('cone'), second: at('second') },
    ),
  ],
};

describe.each(Object.entries(tied))('%s', (_, [size, network]) => {
  test(`has so many states as can be chosen: ${size}`, () => {
    expect(stateSpace(network)).toMatchObject({ ok: true, size });
  });
  test('answers what the sweep answers', () => {
    const [swept, states] = [byPlan(network, grid), byStates(network, grid)];
    for (const name of Object.keys(swept)) expect(worst(swept[name]!, states[name]!), name).toBeLessThan(1e-9);
  });
});

test('a network without any state is its drive, times a number', () => {
  const plain = networkOf([source, part('resistor', 'R', ['in', 'ground'], 4)], { current });
  expect(stateSpace(plain)).toMatchObject({ ok: true, size: 0 });
  expect(byStates(plain, grid).current!.re[7]).toBeCloseTo(0.25, 15);
});
test('a capacitor across the source, or a mass that the drive dictates, jumps with the drive', () => {
  const across = networkOf([source, part('capacitor', 'C', ['in', 'ground'], 0.1)], { current });
  const through = networkOf(
    [source, { ...motor[1]!, electrical: ['in', 'ground'] } as Numbered, part('mass', 'M', ['cone', 'ground'], 1)],
    { current },
  );
  for (const one of [across, through]) {
    const found = stateSpace(one);
    expect(found).toMatchObject({ ok: false, because: [{ code: 'jumps' }] });
    expect(!found.ok && found.because[0]?.text).toContain('resistance');
  }
});
