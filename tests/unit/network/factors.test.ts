/** How many elements the expansion tells apart: a row of resistors, whose current is one over their sum. */
import { compilePlan, compilePolynomials, type Network, valuesOf } from '@airspring/core/network';
import { probeColumns } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { type Numbered, networkOf, part } from '../../arbitrary/network-of.js';

const inRow = (count: number): Network => {
  const node = (k: number) => (k === count ? 'ground' : `node ${k}`);
  const resistors = Array.from({ length: count }, (_, k) =>
    part('resistor', `R${k}`, [node(k), node(k + 1)], k + 1, { stands: 'impedance' }),
  );
  const source: Numbered = { kind: 'source', name: 'drive', nodes: [node(0), 'ground'] };
  return networkOf([source, ...resistors], {
    current: { of: 'flow', element: 'drive' },
    last: { of: 'potential', node: node(count - 1) },
  });
};

test.each([
  [1, true],
  [30, true],
  [31, true],
  [32, false],
  [60, false],
])('%i resistors in a row: polynomials %s', (count, are) => {
  const { topology, values } = inRow(count);
  const polynomials = compilePolynomials(topology);
  expect(polynomials !== undefined).toBe(are);
  const { slots, network } = polynomials ?? compilePlan(topology);
  const { current, last } = probeColumns(network(valuesOf(slots, values)), Float64Array.of(50));
  const sum = (count * (count + 1)) / 2;
  expect(current!.re[0]).toBeCloseTo(1 / sum, 14);
  expect(last!.re[0]).toBeCloseTo(count / sum, 14);
});
