/** A number of zero is a regular point where the element stands so that it may be: on both roads, and in the gradient. */
import { driver as driverOf, lr2Inductor } from '@airspring/core/driver';
import { type VentedBoxInput, ventedBox } from '@airspring/core/enclosure';
import { compileGradient, gradientColumns, type Network, netlist, stateSpace } from '@airspring/core/network';
import { describe, expect, test } from 'vitest';
import { withValue } from '../../arbitrary/network-of.js';
import { byPlan, byPolynomials, worst } from '../../circuit/compare.js';
import { simulatedProbes } from '../../circuit/metered.js';
import { driver, eddy, withEddy } from '../../circuit/seam-cases.js';
import { byStates } from '../../circuit/states.js';
import { slopeByFrequency, slopeByNumber } from '../../property/network/slopes.js';

const grid = Float64Array.from({ length: 40 }, (_, i) => 8 * 1.12 ** i);
const box: VentedBoxInput = {
  drivers: driverOf({ ...driver, coil: lr2Inductor({ Le: '1 mH', R2: '4 ohm', L2: '2 mH' }) }),
  netVolume: '45 L',
  fb: '28 Hz',
  QL: 7,
  QA: 60,
  QP: 80,
  sourceResistance: '0.5 ohm',
};
const whole = ventedBox(box).network;
const { Le: _1, ...bare } = driver;
const { QL: _4, QA: _5, QP: _6, sourceResistance: _7, ...lossless } = box;

/** The slot, the value that is nothing, the box made without it, and how large its number might be. */
const nothings: Readonly<Record<string, readonly [value: number, without: Network, scale: number]>> = {
  sourceResistance: [0, ventedBox({ ...box, sourceResistance: '0 ohm' }).network, 1],
  Le: [
    0,
    ventedBox({ ...box, drivers: driverOf({ ...driver, coil: lr2Inductor({ R2: '4 ohm', L2: '2 mH' }) }) }).network,
    1e-3,
  ],
  L2: [0, ventedBox({ ...box, drivers: driverOf({ ...bare, Le: '1 mH' }) }).network, 1e-3],
  leak: [Infinity, ventedBox({ ...lossless, QA: 60, QP: 80, sourceResistance: '0.5 ohm' }).network, 1e-5],
  absorption: [0, ventedBox({ ...lossless, QL: 7, QP: 80, sourceResistance: '0.5 ohm' }).network, 1e3],
  ventLoss: [0, ventedBox({ ...lossless, QL: 7, QA: 60, sourceResistance: '0.5 ohm' }).network, 1e3],
  Rms: [0, withValue(whole, 'Rms', 1e-300), 1],
};

describe.each(Object.entries(nothings))('%s', (name, [value, without, scale]) => {
  const network = withValue(whole, name, value);
  test('both roads say what the box without it says', () => {
    const expected = byPolynomials(without, grid);
    for (const road of [byPolynomials, byPlan]) {
      const got = road(network, grid);
      for (const probe of Object.keys(expected)) expect(worst(expected[probe]!, got[probe]!), probe).toBeLessThan(1e-9);
    }
  });
  test('the gradient by it is the difference towards what is there, and the others hold', () => {
    const gradient = compileGradient(network, 'radiatedFlow');
    const out = gradientColumns(gradient, 2);
    const frequencies = Float64Array.of(23, 120);
    expect(gradient.sweep(frequencies, out)).toBe(-1);
    expect(gradient.numbers.find((one) => one.name === name)?.number).toBe(0);
    frequencies.forEach((f, i) => {
      gradient.numbers.forEach((one, k) => {
        const by = one.number === 0 ? scale : one.number;
        const want = slopeByNumber(network, 'radiatedFlow', f, one, scale).map((x) => x * by);
        const got = [out.byNumber[k]!.re[i]! * by, out.byNumber[k]!.im[i]! * by];
        const size = Math.hypot(out.value.re[i]!, out.value.im[i]!, ...want);
        expect(Math.hypot(got[0]! - want[0]!, got[1]! - want[1]!) / size, `${one.name} at ${f}`).toBeLessThan(2e-7);
      });
      const want = slopeByFrequency(network, 'radiatedFlow', f);
      const got = [out.byFrequency.re[i]!, out.byFrequency.im[i]!];
      expect(Math.hypot(got[0]! - want[0]!, got[1]! - want[1]!) / Math.hypot(...want)).toBeLessThan(1e-7);
    });
  });
  test('so does the circuit simulator: a short, or no line', async () => {
    const { frequencies, columns } = await simulatedProbes(network, 10, 1000, 21);
    const ours = byPlan(network, frequencies);
    for (const probe of Object.keys(ours)) expect(worst(columns[probe]!, ours[probe]!), probe).toBeLessThan(1e-9);
    expect(netlist(network)).not.toMatch(/NaN|Infinity|undefined/);
  });
  test('and the states are those of the box without it', () => {
    const [got, expected] = [stateSpace(network), stateSpace(without)];
    expect(got).toMatchObject({ ok: true, size: expected.ok ? expected.size : 0 });
    const [swept, states] = [byPlan(network, grid), byStates(network, grid)];
    for (const probe of Object.keys(swept)) expect(worst(swept[probe]!, states[probe]!), probe).toBeLessThan(1e-9);
  });
});

test('all of them at once, and a law that the reference leaves out', () => {
  const none: Network = Object.entries(nothings).reduce((made, [name, [value]]) => withValue(made, name, value), whole);
  const plain = withValue(ventedBox({ ...lossless, drivers: driverOf(bare) }).network, 'Rms', 1e-300);
  const [a, b, c] = [byPolynomials(none, grid), byPlan(none, grid), byPolynomials(plain, grid)];
  for (const probe of Object.keys(a)) {
    expect(worst(a[probe]!, b[probe]!), probe).toBeLessThan(1e-9);
    expect(worst(c[probe]!, b[probe]!), probe).toBeLessThan(1e-9);
  }
  const lossy = withEddy(whole, [0.02, 0.7]);
  expect(eddy('coil', ['a', 'b']).inReference).toBe(false);
  const shorted = { ...whole, values: { ...whole.values, Le: 0, L2: 0, leak: Infinity } };
  for (const road of [byPolynomials, byPlan]) {
    const [got, expected] = [road(lossy, grid, true), byPolynomials(shorted, grid)];
    for (const probe of Object.keys(got)) expect(worst(expected[probe]!, got[probe]!), probe).toBeLessThan(1e-9);
  }
});
