/** Ours obey; planted liars are caught, each by the law that is named. */
import { finiteFlange, flanged, flared, pistonInFlange, unflanged, withNeighbours } from '@airspring/core/duct';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { endCorrectionLaws, systemLaws } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';
import { listed, partsOf, probesOf, withParts, withProbes, withValue } from '../../arbitrary/network-of.js';

const driver = {
  Sd: si('coneArea', 0.033),
  Mms: si('mass', 0.086),
  Cms: si('compliance', 4e-4),
  Rms: si('mechanicalResistance', 3.6),
  Re: si('resistance', 5.6),
  Bl: si('forceFactor', 14.3),
  Le: si('inductance', 9e-4),
};
type By = (dimension: readonly [number, number, number, number]) => number;
const scaledDriver = (by: By) => ({
  Sd: si('coneArea', driver.Sd * by([2, 0, 0, 0])),
  Mms: si('mass', driver.Mms * by([0, 1, 0, 0])),
  Cms: si('compliance', driver.Cms * by([0, -1, 2, 0])),
  Rms: si('mechanicalResistance', driver.Rms * by([0, 1, -1, 0])),
  Re: si('resistance', driver.Re * by([2, 1, -3, -2])),
  Bl: si('forceFactor', driver.Bl * by([1, 1, -2, -1])),
  Le: si('inductance', driver.Le * by([2, 1, -2, -2])),
});
const box = { drivers: driver, netVolume: si('volume', 0.045), fb: si('frequency', 29), QL: 7, QA: 60, QP: 80 };
const vented = (spec: typeof box) => ventedBox(spec);
const scaledAir = (air: System['air'], by: By) => ({
  ...air,
  density: si('density', air.density * by([-3, 1, 0, 0])),
  speedOfSound: si('speed', air.speedOfSound * by([1, 0, -1, 0])),
});

const brokenLaws = (results: readonly { law: string; holds: boolean }[]) =>
  results.filter(({ holds }) => !holds).map(({ law }) => law);

describe('ours obey', () => {
  test.each([flanged, unflanged, finiteFlange, pistonInFlange])('%o', (correction) => {
    expect(brokenLaws(endCorrectionLaws(correction))).toEqual([]);
  });
  test('ends with lengths of their own', () => {
    const neighbours = (factor: number) => withNeighbours(flanged, [si('length', 0.1 * factor)]);
    const flare = (factor: number) => flared({ radius: si('length', 0.02 * factor) });
    const radii = [0.005, 0.03];
    for (const scaled of [neighbours, flare]) {
      expect(brokenLaws(endCorrectionLaws(scaled(1), { scaled, radii }))).toEqual([]);
      // Scaled without them they are no length, and that is told.
      expect(brokenLaws(endCorrectionLaws(scaled(1), { radii }))).toEqual(['a length: scales with size']);
    }
  });
  test('vented box', () => {
    const rescaled = (by: By) => {
      const spec = {
        ...box,
        drivers: scaledDriver(by),
        netVolume: si('volume', box.netVolume * by([3, 0, 0, 0])),
        fb: si('frequency', box.fb * by([0, 0, -1, 0])),
      };
      return ventedBox(spec, scaledAir(vented(box).air, by));
    };
    expect(brokenLaws(systemLaws({ family: vented, spec: box, rescaled, frequencies: [29, 0.999999 * 29] }))).toEqual(
      [],
    );
  });
  test('closed box', () => {
    const spec = { drivers: driver, netVolume: si('volume', 0.03), QL: 12, QA: 30 };
    const rescaled = (by: By) => {
      const netVolume = si('volume', spec.netVolume * by([3, 0, 0, 0]));
      return closedBox({ ...spec, drivers: scaledDriver(by), netVolume }, scaledAir(closedBox(spec).air, by));
    };
    expect(brokenLaws(systemLaws({ family: (s: typeof spec) => closedBox(s), spec, rescaled }))).toEqual([]);
  });
});

/** A vented box with one more element at the box, given over frequency. */
const withLoad =
  (admittance: (f: number) => number) =>
  (spec: typeof box): System => {
    const system = ventedBox(spec);
    const load = listed('load', ['box', 'ground'], (frequencies, re) => {
      for (let i = 0; i < frequencies.length; i++) re[i] = admittance(frequencies[i] as number);
    });
    return { ...system, network: withParts(system.network, [...partsOf(system.network), load]) };
  };

describe('liars are caught', () => {
  test('an active network gives power', () => {
    const laws = brokenLaws(systemLaws({ family: withLoad(() => -1e-4), spec: box }));
    expect(laws).toContain('takes power, gives none');
  });
  test('NaN at the tuning alone', () => {
    const family = withLoad((f) => (f === 29 ? NaN : 1e-9));
    expect(brokenLaws(systemLaws({ family, spec: box, frequencies: [29] }))).toContain('answers at every frequency');
  });
  test('a spec that JSON loses', () => {
    const family = (spec: typeof box): System => ({ ...ventedBox(spec), spec: { ...spec, QL: Infinity } });
    expect(brokenLaws(systemLaws({ family, spec: box }))).toEqual(['spec survives JSON']);
  });
  test('a family that forgets a probe', () => {
    const family = (spec: typeof box): System => {
      const system = ventedBox(spec);
      const { terminalVoltage: _, ...probes } = probesOf(system.network);
      return { ...system, network: withProbes(system.network, probes) };
    };
    expect(brokenLaws(systemLaws({ family, spec: box }))).toContain('probes are there');
  });
  test('an unscaled formula in a family', () => {
    const family = (spec: typeof box): System => {
      const system = ventedBox(spec);
      const { network } = system;
      return { ...system, network: withValue(network, 'vent', (network.values.vent as number) + 3) };
    };
    const rescaled = (by: By) =>
      family({
        ...box,
        drivers: scaledDriver(by) as unknown as typeof driver,
        netVolume: si('volume', box.netVolume * by([3, 0, 0, 0])),
        fb: si('frequency', box.fb * by([0, 0, -1, 0])),
      });
    expect(brokenLaws(systemLaws({ family, spec: box, rescaled }))).toContain('values scale as their units');
  });
  test('an end correction in millimetres, negative, or without a source', () => {
    const liar = (f: (o: { radius: number }, k: number) => number, sources = ['own']) =>
      endCorrectionLaws(Object.assign((o: { radius: number }, k: number) => f(o, k), { sources }));
    expect(brokenLaws(liar(() => 0.01))).toContain('a length: scales with size');
    expect(brokenLaws(liar(({ radius }) => -radius))).toContain('finite and not negative');
    expect(brokenLaws(liar(({ radius }, k) => (k === 0 ? 0 : radius)))).toContain('smooth toward long waves');
    expect(brokenLaws(liar(({ radius }) => radius, []))).toEqual(['sources named']);
  });
});
