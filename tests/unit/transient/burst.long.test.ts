/** The greatest burst: what binds, on which side of it the bursts lie, and where there is none. */
import { passiveRadiatorBox, ventedBox } from '@airspring/core/enclosure';
import { airSpeedLimit, currentLimit, type Limit, radiatorTravelLimit, voltageLimit } from '@airspring/core/limit';
import {
  burstFrequencies,
  type DistortionThresholds,
  type GreatestBurst,
  type GreatestBurstsOptions,
  greatestBursts,
  narrowerThresholds,
  playBurst,
  widerThresholds,
} from '@airspring/transient/burst';
import type { Simulated } from '@airspring/transient/simulation';
import { forceFactorCurve, quadraticVentLoss, stiffnessCurve, stop } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';
import { closed, plainVented, tenInch, vented } from './boxes.js';

const travel: Limit = {
  name: 'travel',
  probe: 'coneVelocity',
  integrated: true,
  greatestRms: 0.008 / Math.SQRT2,
  basis: 'a test',
};
const models = {
  forceFactor: forceFactorCurve({ reach: '12 mm', coefficients: [0.02, -0.4] }),
  stiffness: stiffnessCurve({ reach: '12 mm', coefficients: [0.1, 0.8] }),
};
/** Short bursts are as good for what must hold of any; their transform is half as long as that of 4.5 cycles. */
const cycles = 4;
const losses = { vent: quadraticVentLoss({ area: '60 cm²', outward: 1.5, inward: 1.1 }) };
const at = (system: Simulated, limits: readonly Limit[], frequency: number, options: Partial<GreatestBurstsOptions>) =>
  greatestBursts(system, limits, [frequency], { driveVoltageRms: '60 V', ...options })[0]!;
function found(...given: Parameters<typeof at>): GreatestBurst {
  const one = at(...given);
  if (!one.ok) throw new Error(one.because[0]!.text);
  return one;
}
const louder = (volts: number, decibels: number) => `${volts * 10 ** (decibels / 20)} V` as const;

test('without models each limit binds where the peak of one volt says', () => {
  const per = playBurst(closed, { frequency: '40 Hz', driveVoltageRms: '1 V', cycles });
  const far = 0.008 / per.displacementPeak;
  expect(found(closed, [travel], 40, { cycles }).driveVoltageRms / far).toBeCloseTo(1, 2);
  expect(found(closed, [travel, voltageLimit('7 V')], 40, { cycles })).toMatchObject({
    binding: 'amplifier voltage',
    driveVoltageRms: expect.closeTo(7, 12),
  });
  expect(found(closed, [travel, voltageLimit('80 V')], 40, { cycles }).binding).toBe('travel');
  expect(found(closed, [], 40, { driveVoltageRms: '9 V', cycles })).toMatchObject({ binding: 'greatest drive' });
  expect(found(closed, [currentLimit('1 A')], 40, { cycles }).binding).toBe('amplifier current');
  const heat: Limit = { name: 'heat', probe: 'current', averaged: true, greatestRms: 1e-6, basis: 'a test' };
  expect(found(closed, [heat], 40, { driveVoltageRms: '9 V', cycles }).binding).toBe('greatest drive');
});

test('a linear box has in its bands what the window alone has, at any drive', () => {
  for (const system of [closed, vented])
    for (const frequency of [system === closed ? 20 : 40]) {
      const quiet = playBurst(system, { frequency: `${frequency} Hz`, driveVoltageRms: '0.1 V' });
      const loud = found(system, [], frequency, { driveVoltageRms: '20 V' });
      loud.bands.slice(0, 3).forEach(({ level, linear }, i) => {
        expect(level).toBeCloseTo(linear, 6);
        expect(level).toBeCloseTo(quiet.bands[i]!.level, 6);
      });
      expect(loud.levelHalfSpace - quiet.levelHalfSpace).toBeCloseTo(20 * Math.log10(loud.driveVoltageRms / 0.1), 6);
    }
});

test.each([
  ['curves', closed, models, []],
  ['vent', plainVented, { losses }, [airSpeedLimit('12 m/s')]],
  [
    'curves, vent and stop',
    vented,
    { ...models, losses, stop: stop({ outward: '9 mm', inward: '9 mm', stiffness: 100 }) },
    [],
  ],
] as const)(
  'below the drive that is told nothing is passed, and just above it what binds is: %s',
  (_, system, own, limits) => {
    for (const thresholds of [widerThresholds, narrowerThresholds])
      for (const frequency of thresholds === widerThresholds ? [25] : [50]) {
        const one = found(system, limits, frequency, { ...own, thresholds, driveVoltageRms: '400 V', cycles });
        const play = (decibels: number) =>
          playBurst(system, {
            ...own,
            thresholds,
            cycles,
            frequency: `${frequency} Hz`,
            driveVoltageRms: louder(one.driveVoltageRms, decibels),
          });
        const passed = (decibels: number) =>
          play(decibels)
            .bands.filter(({ level, threshold }) => level > threshold)
            .map(({ name }) => name);
        for (const decibels of [-12, -4, -1, 0]) expect(passed(decibels), `${decibels} dB`).toEqual([]);
        if (one.bands.some(({ name }) => name === one.binding)) expect(passed(0.03)).toContain(one.binding);
        else if (one.binding === 'stop') expect(play(0.03).displacementPeak).toBeGreaterThan(0.009);
        else expect(limits.map(({ name }) => name)).toContain(one.binding);
      }
  },
);

test('narrower thresholds allow no more than wider ones, at any frequency', () => {
  const of = (thresholds: DistortionThresholds) =>
    greatestBursts(closed, [], burstFrequencies.slice(1, 4), {
      ...models,
      thresholds,
      cycles,
      driveVoltageRms: '60 V',
    });
  const [wide, narrow] = [of(widerThresholds), of(narrowerThresholds)];
  wide.forEach((one, i) => {
    const other = narrow[i]!;
    if (!one.ok || !other.ok) throw new Error('none');
    expect(other.driveVoltageRms).toBeLessThanOrEqual(one.driveVoltageRms * 1.003);
  });
});

test('a stop binds where the cone meets it', () => {
  const thresholds = { ...widerThresholds, bands: [{ name: 'any', from: 2, to: 4, level: 40 }] };
  const one = found(closed, [], 40, {
    stop: stop({ outward: '6 mm', inward: '30 mm', stiffness: 100 }),
    thresholds,
    // The farthest way is outwards, to the stop.
    cycles: 4.5,
  });
  expect(one.binding).toBe('stop');
  expect(one.displacementPeak).toBeLessThanOrEqual(0.006);
  expect(one.displacementPeak).toBeGreaterThan(0.0059);
});

test('a passive radiator binds by its own travel', () => {
  const radiator = { Sd: '480 cm²', Mms: '180 g', Cms: '0.5 mm/N', Rms: '2 N·s/m', Xmax: '5 mm' } as const;
  const box = passiveRadiatorBox({ drivers: tenInch, netVolume: '50 L', radiator, QL: 10 });
  expect(found(box, [...radiatorTravelLimit(radiator)], 31.5, { ...models, cycles }).binding).toBe('radiator travel');
});

test('where even the least drive passes a threshold, it is told why, with what the window alone has', () => {
  const high = ventedBox({ drivers: tenInch, netVolume: '30 L', fb: '60 Hz', QL: 7 });
  const thresholds = {
    ...narrowerThresholds,
    bands: narrowerThresholds.bands.map((band) => ({ ...band, level: -35 })),
  };
  const none = at(high, [], 20, { thresholds });
  expect(none).toMatchObject({ ok: false, frequency: 20 });
  if (none.ok) return;
  expect(none.because[0]!.code).toBe('least-drive-passes');
  const [, level, alone] = /: (-?[\d.]+) dB .* alone has (-?[\d.]+) dB/.exec(none.because[0]!.text)!;
  expect(level).toBe(alone);
  const limited = at(closed, [{ ...travel, greatestRms: 1e-6 }], 20, {});
  expect(limited).toMatchObject({ ok: false, because: [{ text: expect.stringContaining('travel is passed') }] });
  const most = at(closed, [travel], 20, { driveVoltageRms: '100000 V' });
  expect(most).toMatchObject({ ok: false, because: [{ text: expect.stringMatching(/tried, 1000 V$/) }] });
});

test('a curve beyond its reach is told', () => {
  const short = { stiffness: stiffnessCurve({ reach: '1 mm', coefficients: [0, 0.01] }) };
  expect(found(closed, [], 25, { ...short, driveVoltageRms: '20 V' }).beyondReach).toBe(true);
  expect(found(closed, [travel], 25, models).beyondReach).toBe(false);
});

test('what does not fit is refused with its path', () => {
  const play = (options: object) => faultsOf(() => at(closed, [], 25, options as never)).map(({ path }) => path);
  expect(play({ leastVoltageRms: '90 V' })).toEqual(['burst.leastVoltageRms']);
  expect(play({ driveVoltageRms: '0 V' })).toEqual(['burst.driveVoltageRms']);
  expect(play({ cycles: 1000 })).toEqual(['burst.cycles']);
  expect(play({ thresholds: { bands: [] } })).toEqual(['burst.thresholds.bands']);
  const bands = [{ name: 'upside down', from: 3, to: 2, level: Number.NaN }];
  expect(play({ thresholds: { bands } })).toEqual(['burst.thresholds.bands[0]', 'burst.thresholds.bands[0].level']);
  expect(play({ losses })).toEqual(['nonlinear.losses.vent']);
  expect(faultsOf(() => at(closed, [{ ...travel, greatestRms: 0 }], 25, {})).map(({ path }) => path)).toEqual([
    'burst.limits[0].greatestRms',
  ]);
  const spelt = { ...travel, probe: 'coneSpeed', integrated: false };
  expect(faultsOf(() => at(closed, [voltageLimit('60 V'), travel, spelt], 25, {}))).toMatchObject([
    { path: 'burst.limits[2].probe', got: 'coneSpeed' },
  ]);
});
