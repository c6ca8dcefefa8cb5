/** Outlets heard later than the nearest: their sum, its slopes, and what has no states any more. */
import { compile, compileGradient, gradientColumns, stateSpace } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { type Heard, networkOf, outletsOf, partsOf, probesOf, withValue } from '../../arbitrary/network-of.js';
import { byPlan, byPolynomials, minus, scaled, worst } from '../../circuit/compare.js';
import { simulatedProbes } from '../../circuit/metered.js';
import { seamVented, withEddy } from '../../circuit/seam-cases.js';
import { slopeByFrequency, slopeByNumber } from '../../property/network/slopes.js';

const grid = Float64Array.from({ length: 300 }, (_, i) => 8 * 1.015 ** i);
const { network } = seamVented;
const flows = {
  cone: { of: 'flow', element: 'Sd' },
  leak: { of: 'flow', element: 'leak' },
  vent: { of: 'flow', element: 'vent' },
} as const;
const later = (delay: number, given = network) =>
  networkOf(
    partsOf(given),
    { ...probesOf(given), ...flows },
    outletsOf(given).map((one): Heard => (one.name === 'vent' ? { ...one, later: delay } : one)),
  );
const delayed = later(3e-3);
const lossy = later(3e-3, withEddy(network, [0.02, 0.7]));

test.each([
  ['lumped', delayed],
  ['with a lossy coil', lossy],
])('both roads, %s: cone and leak at once, the vent turned by its delay', (_, one) => {
  for (const road of [byPolynomials, byPlan]) {
    const { cone, leak, vent, radiatedFlow } = road(one, grid);
    const turned = complexColumn(grid.length);
    grid.forEach((f, i) => {
      const [c, s] = [Math.cos(2 * Math.PI * f * 3e-3), -Math.sin(2 * Math.PI * f * 3e-3)];
      turned.re[i] = vent!.re[i]! * c - vent!.im[i]! * s;
      turned.im[i] = vent!.re[i]! * s + vent!.im[i]! * c;
    });
    const sum = minus(minus(cone!, scaled(leak!, -1)), scaled(turned, -1));
    expect(worst(sum, radiatedFlow!)).toBeLessThan(1e-9);
  }
});

test('the circuit simulator gives the same parts', async () => {
  const { frequencies, columns } = await simulatedProbes(delayed, 10, 1000, 41);
  const ours = byPolynomials(delayed, frequencies);
  for (const name of Object.keys(ours)) expect(worst(columns[name]!, ours[name]!), name).toBeLessThan(1e-9);
});

test('a delay of zero is none, and a delay is a number of the gradient', () => {
  const [none, zero] = [byPolynomials(network, grid), byPolynomials(later(0), grid)];
  expect(worst(none.radiatedFlow!, zero.radiatedFlow!)).toBeLessThan(1e-12);
  for (const one of [delayed, later(0), lossy]) {
    const gradient = compileGradient(one, 'radiatedFlow');
    const out = gradientColumns(gradient, 2);
    const frequencies = Float64Array.of(29, 130);
    gradient.sweep(frequencies, out);
    const k = gradient.numbers.findIndex(({ name }) => name === 'delay of vent');
    frequencies.forEach((f, i) => {
      const want = slopeByNumber(one, 'radiatedFlow', f, gradient.numbers[k]!, 1e-4);
      const got = [out.byNumber[k]!.re[i]!, out.byNumber[k]!.im[i]!];
      expect(Math.hypot(got[0]! - want[0]!, got[1]! - want[1]!) / Math.hypot(...want)).toBeLessThan(1e-6);
      const change = slopeByFrequency(one, 'radiatedFlow', f);
      const slope = [out.byFrequency.re[i]!, out.byFrequency.im[i]!];
      expect(Math.hypot(slope[0]! - change[0]!, slope[1]! - change[1]!) / Math.hypot(...change)).toBeLessThan(1e-7);
    });
  }
});

test('group delay of a system that plays all of it later is longer by that', () => {
  const all = (delay: number) =>
    networkOf(
      partsOf(network),
      probesOf(network),
      outletsOf(network).map((one) => ({ ...one, later: delay })),
    );
  const columns = (delay: number) => respond({ ...seamVented, compile, network: all(delay) }, grid);
  const [now, then] = [columns(0), columns(4e-3)];
  grid.forEach((_, i) => expect(then.groupDelay[i]! - now.groupDelay[i]!).toBeCloseTo(4e-3, 10));
  then.levelHalfSpace.forEach((level, i) => expect(level).toBeCloseTo(now.levelHalfSpace[i]!, 10));
});

test('a delay has no states, a delay of zero has', () => {
  expect(stateSpace(delayed)).toMatchObject({ ok: false, because: [{ code: 'delayed' }] });
  expect(stateSpace(withValue(delayed, 'delay of vent', 0))).toMatchObject({ ok: true });
});
