import { completeDriver } from '@airspring/core/driver';
import { closedBox, lineBox, type System, ventedBox } from '@airspring/core/enclosure';
import { probeGradient } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  complexGradient,
  greatestGradient,
  groupDelayGradient,
  levelGradient,
  lowerEndGradient,
  probePhase,
  respond,
} from '@airspring/core/response';
import { expect, test } from 'vitest';

const found = completeDriver({ fs: '24 Hz', Qts: 0.36, Qes: 0.4, Vas: '70 L', Sd: '330 cm²', Re: '5.6 Ω' });
if (!found.ok) throw new Error('not enough');
const box = closedBox({ drivers: found.driver, netVolume: '40 L' });
const fault = (code: string, path: string) =>
  expect.objectContaining({ faults: [expect.objectContaining({ code, path })] });

test('a band the wrong way round is refused, not narrowed to its lower end', () => {
  const options = { probe: 'coneVelocity', from: '100 Hz', to: '50 Hz' } as const;
  expect(() => greatestGradient(box, options)).toThrow(fault('unsorted', 'to'));
});

test('a probe that is not there is named, not called undamped', () => {
  const options = { probe: 'nobody', from: '30 Hz', to: '50 Hz' } as const;
  expect(() => greatestGradient(box, options)).toThrow(fault('empty', 'network.probes.nobody'));
  for (const name of ['nobody', 'constructor']) {
    expect(() => probeGradient(box.network, name, 30)).toThrow(fault('empty', `network.probes.${name}`));
  }
});

test('a lower end that lies beyond the band is no gradient but a reason', () => {
  expect(lowerEndGradient(box, { from: '90 Hz', to: '180 Hz' })).toMatchObject({ ok: false });
});

test('two neighbours of equal value are one extremum: no kink', () => {
  const options = { probe: 'terminalVoltage', from: '30 Hz', to: '50 Hz' } as const;
  const flat = greatestGradient(box, options);
  expect(flat).toMatchObject({ ok: true, value: expect.closeTo(1, 14) });
  expect(flat).not.toHaveProperty('oneSided');
});

test('the real part of the relative slope of the flow is that of its level', () => {
  const [flow, level] = [complexGradient(box, 'radiatedFlow', '37 Hz'), levelGradient(box, '37 Hz')];
  if (!flow.ok || !level.ok) throw new Error('damped');
  const { re, im } = flow.value;
  for (const [name, slope] of Object.entries(flow.byElement)) {
    const relative = (slope.re * re + slope.im * im) / (re * re + im * im);
    expect(level.byElement[name]).toBeCloseTo((20 / Math.LN10) * relative, 11);
  }
});
test('a complex gradient refuses a probe that is not there and a frequency that is none', () => {
  expect(() => complexGradient(box, 'nobody', '30 Hz')).toThrow(fault('empty', 'network.probes.nobody'));
  expect(() => complexGradient(box, 'current', '0 Hz')).toThrow(fault('not-positive', 'frequency'));
});

test('a phase lies between −π and π, lags by a quarter turn when integrated, and names a missing probe', () => {
  const grid = [5, 20, 40, 80, 400];
  const velocity = probePhase(box, grid, { probe: 'coneVelocity' });
  const displacement = probePhase(box, grid, { probe: 'coneVelocity', integrated: true });
  velocity.forEach((angle, i) => expect(displacement[i]).toBeCloseTo(angle - Math.PI / 2, 12));
  // Below resonance the cone follows the voltage, and far above it is opposed to it.
  expect(displacement[0]).toBeGreaterThan(-0.3);
  expect(displacement[4]).toBeLessThan(-2.5);
  expect(() => probePhase(box, grid, { probe: 'ventAirSpeed' })).toThrow(fault('empty', 'network.probes.ventAirSpeed'));
});

test('the delay of a gradient is that of the response, also in a line, and its slopes say how it moves', () => {
  const grid = [20, 33, 60, 110];
  for (const system of [
    box,
    lineBox({ drivers: found.driver, parts: [{ length: '2.4 m', area: '200 cm²' }], opening: {} }),
  ]) {
    const { groupDelay } = respond(system, grid as never);
    grid.forEach((f, i) => {
      const slopes = groupDelayGradient(system, si('frequency', f));
      if (!slopes.ok) throw new Error('damped');
      expect(slopes.value).toBeCloseTo(groupDelay[i]!, 10);
      const step = 1e-5;
      const [below, above] = [f * (1 - step), f * (1 + step)].map(
        (at) => respond(system, [at] as never).groupDelay[0]!,
      );
      expect(slopes.byFrequency).toBeCloseTo((above! - below!) / (2 * step), 6);
    });
  }
  expect(() => groupDelayGradient(box, '0 Hz')).toThrow(fault('not-positive', 'frequency'));
});

test('a ripple and the greatest delay of a band change as the results where they are', () => {
  const vented = ventedBox({ drivers: found.driver, netVolume: '90 L', fb: '26 Hz', QL: 7 });
  const grid = Float64Array.from({ length: 4001 }, (_, i) => 20 * 6 ** (i / 4000));
  const greatest = (values: ArrayLike<number>) => {
    const i = Array.from(values).reduce((best, value, k) => (value > values[best]! ? k : best), 0);
    // A parabola through three samples: the top lies between them.
    const [a, b, c] = [values[i - 1]!, values[i]!, values[i + 1]!];
    const shift = (a - c) / (2 * (a - 2 * b + c));
    return { at: grid[i]! * (grid[1]! / grid[0]!) ** shift, value: b - ((a - c) * shift) / 4 };
  };
  const of = (system: System) => {
    const { levelHalfSpace, groupDelay } = respond(system, grid as never);
    return { top: greatest(levelHalfSpace), end: levelHalfSpace.at(-1)!, delay: greatest(groupDelay) };
  };
  const { top, delay } = of(vented);
  const [atTop, atEnd, late] = [
    levelGradient(vented, si('frequency', top.at)),
    levelGradient(vented, si('frequency', grid.at(-1)!)),
    groupDelayGradient(vented, si('frequency', delay.at)),
  ];
  if (!atTop.ok || !atEnd.ok || !late.ok) throw new Error('undamped');
  const { values } = vented.network;
  for (const name of ['Mms', 'Bl', 'Cab', 'Re', 'vent']) {
    const [less, more] = [-1e-4, 1e-4].map((by) =>
      of({
        ...vented,
        network: { ...vented.network, values: { ...values, [name]: (values[name] as number) * Math.exp(by) } },
      } as System),
    );
    const slope = (result: (one: ReturnType<typeof of>) => number) => (result(more!) - result(less!)) / 2e-4;
    expect(atTop.byElement[name]! - atEnd.byElement[name]!, name).toBeCloseTo(
      slope(({ top, end }) => top.value - end),
      4,
    );
    expect(late.byElement[name], name).toBeCloseTo(
      slope(({ delay }) => delay.value),
      5,
    );
  }
});
