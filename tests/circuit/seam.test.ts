/** The seam between topology and values: each network swept by both roads, differentiated, written down, and as states. */
import { compileGradient, compilePolynomials, gradientColumns, netlist, stateSpace } from '@airspring/core/network';
import { describe, expect, test } from 'vitest';
import { slopeByFrequency, slopeByNumber } from '../property/network/slopes.js';
import { byPlan, byPolynomials, worst } from './compare.js';
import { simulatedProbes } from './metered.js';
import { seamCases } from './seam-cases.js';
import { byStates } from './states.js';

const grid = Float64Array.from({ length: 61 }, (_, i) => 8 * 1.09 ** i);
const [FROM, TO, POINTS] = [10, 1000, 41];

describe.each(Object.entries(seamCases))('%s', (_name, { network, lumped, polynomials, unwritten }) => {
  const plan = byPlan(network, grid);
  const names = Object.keys(plan);

  test('has the road that it should have', () => {
    expect(compilePolynomials(network.topology) !== undefined).toBe(polynomials);
  });
  test.runIf(polynomials)('both roads say the same of every probe', () => {
    const other = byPolynomials(network, grid);
    for (const name of names) expect(worst(plan[name]!, other[name]!), name).toBeLessThan(1e-9);
  });
  test('slopes by every number and by frequency are those of differences', () => {
    for (const probe of names) {
      const gradient = compileGradient(network, probe);
      const out = gradientColumns(gradient, 3);
      const frequencies = Float64Array.of(19, 41, 230);
      expect(gradient.sweep(frequencies, out)).toBe(-1);
      frequencies.forEach((f, i) => {
        const size = Math.hypot(out.value.re[i]!, out.value.im[i]!);
        const found = out.byNumber.map(({ re, im }, k) => [re[i]!, im[i]!].map((x) => x * gradient.numbers[k]!.number));
        const slope = [out.byFrequency.re[i]!, out.byFrequency.im[i]!];
        const most = Math.max(size, Math.hypot(...slope), ...found.map((one) => Math.hypot(...one)));
        const apart = (got: readonly number[], want: readonly number[]) =>
          Math.hypot(got[0]! - want[0]!, got[1]! - want[1]!) / most;
        expect(apart(slope, slopeByFrequency(network, probe, f)), `${probe} by frequency`).toBeLessThan(1e-7);
        gradient.numbers.forEach((one, k) => {
          const want = slopeByNumber(network, probe, f, one, 1).map((x) => x * one.number);
          expect(apart(found[k]!, want), `${probe} by ${one.name}`).toBeLessThan(1e-7);
        });
      });
    }
  });
  test.runIf(unwritten === undefined)('the circuit simulator says the same of every probe', async () => {
    const { frequencies, columns } = await simulatedProbes(network, FROM, TO, POINTS);
    const ours = byPlan(network, frequencies);
    for (const name of names) expect(worst(columns[name]!, ours[name]!), name).toBeLessThan(1e-9);
  });
  test.runIf(unwritten !== undefined)('its netlist says what it cannot say', () => {
    const lines = netlist(network).split('\n');
    const silent = lines.filter((line) => line.startsWith('*'));
    expect(silent).toEqual(unwritten!.map((name) => `* ${name}: given over frequency, not written`));
  });
  test.runIf(lumped)('C (jω − A)⁻¹ B + D is the sweep, of every probe and of the flow of every element', () => {
    const states = byStates(network, grid);
    const { topology, values } = network;
    const flows = topology.elements.map(({ name }) => [`flow ${name}`, { of: 'flow', element: name }] as const);
    const all = { topology: { ...topology, probes: { ...topology.probes, ...Object.fromEntries(flows) } }, values };
    const swept = byPlan(all, grid);
    for (const name of Object.keys(swept)) expect(worst(swept[name]!, states[name]!), name).toBeLessThan(1e-9);
  });
  test.runIf(!lumped)('it has no states, and says why', () => {
    expect(stateSpace(network)).toMatchObject({ ok: false, because: [{ code: 'not-lumped' }] });
  });
});
