import type { BranchKind, Network } from '@airspring/core/network';
import * as fc from 'fast-check';
import { type Numbered, networkOf, part, type Scaled } from './network-of.js';

const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));

const kinds: readonly BranchKind[] = [
  'resistor',
  'inductor',
  'capacitor',
  'mass',
  'spring',
  'damper',
  'acousticMass',
  'acousticCompliance',
  'acousticResistance',
];

const node = fc.constantFrom('ground', 'a', 'b', 'c', 'd', 'e');
const pair = fc.tuple(node, node);

/** Elements joined at random, most of them without meaning: what must be refused or answered, and nothing else. */
export const anyNetworkArbitrary: fc.Arbitrary<Network> = fc
  .array(
    fc.oneof(
      { weight: 5, arbitrary: fc.record({ kind: fc.constantFrom(...kinds), nodes: pair, values: spread(1e-9, 1e9) }) },
      { weight: 1, arbitrary: fc.record({ kind: fc.constant('source' as const), nodes: pair }) },
      {
        weight: 1,
        arbitrary: fc.record({
          kind: fc.constant('motor' as const),
          electrical: pair,
          mechanical: pair,
          values: spread(1e-3, 1e3),
        }),
      },
      {
        weight: 1,
        arbitrary: fc.record({
          kind: fc.constant('piston' as const),
          mechanical: pair,
          front: node,
          rear: node,
          values: spread(1e-5, 1),
        }),
      },
    ),
    { minLength: 1, maxLength: 9 },
  )
  .map((parts): Network => {
    const elements = parts.map((one, i) => ({ ...one, name: `part ${i}` }) as Numbered);
    const probes: Record<string, Scaled> = { first: { of: 'flow', element: 'part 0' } };
    for (const name of ['a', 'b']) {
      if (JSON.stringify(parts).includes(`"${name}"`)) probes[name] = { of: 'potential', node: name };
    }
    return networkOf(elements, probes);
  });

/**
 * Ladders of one domain: a source, series branches, and a branch to ground at each rung. All are damped.
 * The first series branch is a resistor, so that the source sees one.
 */
export const ladderArbitrary: fc.Arbitrary<{ readonly network: Network; readonly rungs: number }> = fc
  .array(
    fc.record({
      series: fc.constantFrom<BranchKind>('resistor', 'inductor'),
      shunt: fc.constantFrom<BranchKind>('resistor', 'capacitor', 'inductor'),
      a: spread(0.1, 10),
      b: spread(0.1, 10),
      loss: spread(10, 1000),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((rungs) => {
    // Values in ohms at 100 Hz.
    const w = 2 * Math.PI * 100;
    const value = (kind: BranchKind, ohms: number) =>
      kind === 'inductor' ? ohms / w : kind === 'capacitor' ? 1 / (ohms * w) : ohms;
    const elements: Numbered[] = [
      { kind: 'source', name: 'source', nodes: ['n0', 'ground'] },
      ...rungs.flatMap(({ series, shunt, a, b, loss }, i) => {
        const kind = i === 0 ? 'resistor' : series;
        return [
          part(kind, `series ${i}`, [`n${i}`, `n${i + 1}`], value(kind, a)),
          part(shunt, `shunt ${i}`, [`n${i + 1}`, 'ground'], value(shunt, b)),
          part('resistor', `loss ${i}`, [`n${i + 1}`, 'ground'], loss),
        ];
      }),
    ];
    const probes: Record<string, Scaled> = {
      current: { of: 'flow', element: 'source' },
      end: { of: 'potential', node: `n${rungs.length}` },
    };
    return { network: networkOf(elements, probes), rungs: rungs.length };
  });
