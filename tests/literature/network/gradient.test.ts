import { probeGradient } from '@airspring/core/network';
import { networkOf, part } from '../../arbitrary/network-of.js';
import { check } from '../../ledger/check.js';

/** A series circuit has one current i = 1/(R + jωL + 1/jωC), so that ∂i/∂ln R = −R i², and so on. */
const [R, L, C] = [3.2, 4.1e-3, 350e-6];
const frequencies = [20, 1 / (2 * Math.PI * Math.sqrt(L * C)), 1000];
const network = networkOf(
  [
    { kind: 'source', name: 'drive', nodes: ['in', 'ground'] },
    part('resistor', 'R', ['in', 'a'], R),
    part('inductor', 'L', ['a', 'b'], L),
    part('capacitor', 'C', ['b', 'ground'], C),
  ],
  { current: { of: 'flow', element: 'drive' } },
);
/** Real and imaginary part of i² z. */
const expected = (f: number): number[] => {
  const w = 2 * Math.PI * f;
  const x = w * L - 1 / (w * C);
  const size = R * R + x * x;
  const [a, b] = [R / size, -x / size];
  const [re, im] = [a * a - b * b, 2 * a * b];
  const times = (c: number, d: number) => [re * c - im * d, re * d + im * c];
  return [...times(-R, 0), ...times(0, -w * L), ...times(0, -1 / (w * C)), ...times(0, -w * L - 1 / (w * C))];
};
check('network.gradient', {
  formula: 'network/compileGradient',
  source: {
    key: 'director1969',
    locator: 'sensitivity of a branch current: minus product of the currents of network and adjoint',
  },
  status: 'derived',
  kind: 'example',
  given: {
    R: { value: R, unit: 'Ω' },
    L: { value: L, unit: 'H' },
    C: { value: C, unit: 'F' },
    frequency: { value: '20, resonance, 1000', unit: 'Hz' },
  },
  got: () => {
    return frequencies.flatMap((f) => {
      const { byElement, byFrequency } = probeGradient(network, 'current', f)!;
      return [byElement.R, byElement.L, byElement.C, byFrequency].flatMap((slope) => [slope!.re, slope!.im]);
    });
  },
  expected: frequencies.flatMap(expected),
  unit: 'A per V, by relative changes of R, L, C and f: real, imaginary',
  tolerance: { absolute: 1e-14, why: 'rounding of values up to 2' },
});
