import { standardAir } from '@airspring/core/air';
import { driver, group } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  type Limit,
  limitChanges,
  lowestSafeFrequency,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';

/** Invented. */
const bare = driver({ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' });
const ten = driver({ ...bare, Xmax: '9 mm', Pe: '140 W' });
const closed = closedBox({ drivers: ten, netVolume: '40 L' });
const vented = ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', QL: 7, ventArea: '60 cm²' });
const faulty = (...faults: [string, string][]) =>
  expect.objectContaining({
    code: 'airspring-input',
    faults: faults.map(([code, path]) => expect.objectContaining({ code, path })),
  });

test('what a driver does not say limits nothing', () => {
  expect([travelLimit(bare), heatLimit(bare)]).toEqual([[], []]);
});
test('values are rms: travel by √2, heat by √(Pe/Re), of each driver of a group', () => {
  expect(travelLimit(ten)[0]!.greatestRms).toBeCloseTo(0.009 / Math.SQRT2, 15);
  expect(heatLimit(ten)[0]!.greatestRms).toBeCloseTo(5, 12);
  const four = group(ten, { series: 2, parallel: 2 });
  expect(travelLimit(four)).toEqual(travelLimit(ten));
  expect(heatLimit(four)[0]!.greatestRms).toBeCloseTo(10, 12); // two branches of 5 A
});
test('limits survive JSON', () => {
  const limits = [
    ...travelLimit(ten),
    ...heatLimit(ten),
    airSpeedLimit('12 m/s'),
    voltageLimit('20 V'),
    currentLimit('5 A'),
  ];
  expect(JSON.parse(JSON.stringify(limits))).toEqual(limits);
  expect(limits.map(({ name }) => name)).toEqual(['travel', 'heat', 'vent', 'amplifier voltage', 'amplifier current']);
});
test('which gives out first changes over frequency', () => {
  const { binding, least } = greatestLevel(vented, [...travelLimit(ten), voltageLimit('28 V')], [10, 28, 100]);
  expect(binding).toEqual(['travel', 'amplifier voltage', 'amplifier voltage']);
  expect(least).toMatchObject({ frequency: 10, binding: 'travel' });
});
test('of two equal limits the first is named', () => {
  expect(
    greatestLevel(closed, [voltageLimit('20 V'), { ...voltageLimit('20 V'), name: 'second' }], [40]).binding,
  ).toEqual(['amplifier voltage']);
});

describe('refusals', () => {
  test('values', () => {
    expect(() => airSpeedLimit('12 m' as never)).toThrow(faulty(['unit', 'airSpeedRms']));
    expect(() => voltageLimit('0 V', 'amplifier.voltage')).toThrow(faulty(['not-positive', 'amplifier.voltage']));
    expect(() => currentLimit(Number.NaN as never)).toThrow(faulty(['not-finite', 'currentRms']));
  });
  test('no limit at all', () => {
    for (const none of [[], undefined, voltageLimit('1 V')])
      expect(() => greatestLevel(closed, none as never, [40])).toThrow(faulty(['empty', 'limits']));
    expect(() => greatestLevel(closed, [null] as never, [40])).toThrow(faulty(['not-finite', 'limits[0].greatestRms']));
    expect(() => lowestSafeFrequency(closed, travelLimit(bare), { driveVoltageRms: '10 V' })).toThrow(
      faulty(['empty', 'limits']),
    );
  });
  test("a stranger's limit without a number", () => {
    const limit = (greatestRms: number): Limit => ({ name: 'own', greatestRms, basis: 'own' });
    expect(() =>
      greatestLevel(closed, [limit(Number.NaN), voltageLimit('1 V'), limit(0), limit(Number.POSITIVE_INFINITY)], [40]),
    ).toThrow(
      faulty(
        ['not-finite', 'limits[0].greatestRms'],
        ['not-positive', 'limits[2].greatestRms'],
        ['not-finite', 'limits[3].greatestRms'],
      ),
    );
  });
  test('a probe that the system does not tell', () => {
    expect(() => greatestLevel(closed, [airSpeedLimit('12 m/s')], [40])).toThrow(
      faulty(['empty', 'network.probes.ventAirSpeed']),
    );
  });
  test('a band that ends before it begins', () => {
    expect(() =>
      lowestSafeFrequency(closed, travelLimit(ten), { driveVoltageRms: '10 V', from: '50 Hz', to: '20 Hz' }),
    ).toThrow(expect.objectContaining({ code: 'airspring-input' }));
  });
});
test('too much everywhere and safe everywhere are results', () => {
  const at = (driveVoltageRms: '1 mV' | '90000 V') =>
    lowestSafeFrequency(closed, travelLimit(ten), { driveVoltageRms });
  expect(at('1 mV')).toMatchObject({ ok: false, because: [{ code: 'safe-throughout' }] });
  expect(at('90000 V')).toMatchObject({ ok: false, because: [{ code: 'above-at-end' }] });
});

test('a limit beyond every drive still binds where it is the only one', () => {
  const far = (probe?: string): Limit => ({ name: 'far', greatestRms: 1e308, basis: 'own', ...(probe && { probe }) });
  for (const limit of [far(), far('coneVelocity'), { ...far(), greatestRms: Number.MAX_VALUE }]) {
    const { binding, least, levelHalfSpace } = greatestLevel(closed, [limit], [20, 50]);
    expect(binding).toEqual(['far', 'far']);
    expect(Number.isFinite(least.driveVoltageRms + levelHalfSpace[1]!)).toBe(true);
    expect(greatestLevel(closed, [limit, voltageLimit('20 V')], [20]).binding).toEqual(['amplifier voltage']);
  }
});

test('its words carry no more digits than anybody reads', () => {
  const at = (driveVoltageRms: '9876.54321 V' | '1.23456 mV') => {
    const found = lowestSafeFrequency(closed, travelLimit(ten), {
      driveVoltageRms,
      from: '2.34567 Hz',
      to: '98.7654 Hz',
    });
    return found.ok ? '' : found.because.map(({ text }) => text).join();
  };
  expect(at('9876.54321 V')).toBe('9877 V is too much even at 98.77 Hz, the end of the band: travel');
  expect(at('1.23456 mV')).toBe('0.001235 V is safe down to 2.346 Hz, the beginning of the band');
});
test('a peak of travel narrower than the step from sample to sample is not taken for safe', () => {
  const [Sd, Mms, Cms, Rms, Bl, R] = [0.033, 0.086, 0.4e-3, 0.05, 0.8, 5.6];
  const light = driver({ Sd, Mms, Cms, Rms, Bl, Re: R, Xmax: 0.009 } as never);
  const stiffness = 1 / Cms + (standardAir.density * standardAir.speedOfSound ** 2 * Sd ** 2) / 0.04;
  const Q = Math.sqrt(stiffness * Mms) / (Rms + Bl ** 2 / R);
  const fc = Math.sqrt(stiffness / Mms) / (2 * Math.PI);
  // Travel over that at rest is Q at the peak; the drive lets it pass Xmax by 2 %.
  const drive = ((1.02 / Q) * 0.009 * R * stiffness) / Bl / Math.SQRT2;
  // Too much up to the greater root of (1 − u²)² + u²/Q² = (1.02/Q)², u = f/fc.
  const half = 1 - 1 / (2 * Q * Q);
  const upper = fc * Math.sqrt(half + Math.sqrt(half * half - 1 + (1.02 / Q) ** 2));
  let found = 0;
  for (let n = 0; n < 10; n++) {
    const from = 5 + 0.13 * n;
    const box = closedBox({ drivers: light, netVolume: '40 L' });
    const safe = lowestSafeFrequency(box, travelLimit(light), { driveVoltageRms: drive, from } as never);
    if (safe.ok && Math.abs(safe.frequency / upper - 1) < 1e-8) found++;
  }
  expect(found).toBe(10);
});

describe('where another limit begins to bind', () => {
  const limits = [...travelLimit(ten), voltageLimit('28 V'), airSpeedLimit('9 m/s')];
  test('by name, in the order of frequency, each where the one before ends', () => {
    const changes = limitChanges(vented, limits, { from: '5 Hz', to: '500 Hz' });
    expect(changes.map(({ below, above }) => `${below} → ${above}`)).toEqual([
      'travel → vent',
      'vent → travel',
      'travel → amplifier voltage',
    ]);
    const found = changes.map(({ frequency }) => frequency);
    expect(found).toEqual([...found].sort((a, b) => a - b));
  });
  test('none where one limit binds throughout', () => {
    expect(limitChanges(vented, [voltageLimit('28 V')])).toEqual([]);
  });
  test('limits that are equal throughout do not take turns by rounding', () => {
    const [travel] = travelLimit(ten) as [Limit];
    const same = { ...travel, name: 'the same', greatestRms: travel.greatestRms * (1 - 1e-13) };
    const named = (list: readonly Limit[]) =>
      limitChanges(vented, list, { from: '5 Hz', to: '500 Hz' }).map(({ driveVoltageRms: _, ...change }) => change);
    expect(named([...limits, same])).toEqual(named(limits));
  });
  test('two changes between two points of the grid are told apart', () => {
    const meet = limitChanges(vented, limits, { from: '5 Hz', to: '500 Hz' })[0]!;
    // Just below the drive at which travel gives way to the vent, the amplifier comes between them.
    const lower = voltageLimit(si('voltageRms', meet.driveVoltageRms * (1 - 1e-4)));
    const some = [...travelLimit(ten), lower, airSpeedLimit('9 m/s')];
    const [one, two] = limitChanges(vented, some, { from: '5 Hz', to: '500 Hz' });
    expect(one).toMatchObject({ below: 'travel', above: 'amplifier voltage' });
    expect(two).toMatchObject({ below: 'amplifier voltage', above: 'vent' });
    expect(two!.frequency / one!.frequency).toBeGreaterThan(1);
    expect(two!.frequency / one!.frequency).toBeLessThan(1.001);
  });
  test('a band the wrong way round, no limit, a probe that is not there', () => {
    expect(() => limitChanges(vented, limits, { from: '50 Hz', to: '20 Hz' })).toThrow(faulty(['unsorted', 'to']));
    expect(() => limitChanges(vented, [])).toThrow(faulty(['empty', 'limits']));
    expect(() => limitChanges(closed, [airSpeedLimit('9 m/s')])).toThrow(
      faulty(['empty', 'network.probes.ventAirSpeed']),
    );
  });
});
