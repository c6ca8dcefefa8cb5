import { driver, group, lr2Inductor } from '@airspring/core/driver';
import {
  asGroup,
  closedBox,
  equivalentDriver,
  infiniteBaffle,
  type System,
  ventedBox,
  ventedRatios,
} from '@airspring/core/enclosure';
import { stepResponse } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';

/** Invented. */
const ten = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Le: '0.9 mH',
});
const faulty = (...faults: [string, string][]) =>
  expect.objectContaining({
    code: 'airspring-input',
    faults: faults.map(([code, path]) => expect.objectContaining({ code, path })),
  });

describe('a box refuses with every fault at its path', () => {
  test('closed', () => {
    expect(() => closedBox({ drivers: ten, netVolume: '40 gallons' as never, QL: 0, fb: 3 } as never)).toThrow(
      faulty(['unknown-field', 'box.fb'], ['unit', 'box.netVolume'], ['not-positive', 'box.QL']),
    );
    expect(() => closedBox({} as never)).toThrow(faulty(['empty', 'box.drivers'], ['empty', 'box.netVolume']));
  });
  test('vented', () => {
    expect(() =>
      ventedBox({ drivers: ten, netVolume: '40 L', fb: '0 Hz', ventArea: '-1 cm²', QP: Number.NaN }),
    ).toThrow(faulty(['not-positive', 'box.fb'], ['not-positive', 'box.ventArea'], ['not-finite', 'box.QP']));
  });
  test('infinite baffle', () => {
    expect(() => infiniteBaffle({ drivers: ten, netVolume: '40 L', sourceResistance: '-1 ohm' } as never)).toThrow(
      faulty(['unknown-field', 'baffle.netVolume'], ['not-positive', 'baffle.sourceResistance']),
    );
    expect(() => infiniteBaffle({} as never)).toThrow(faulty(['empty', 'baffle.drivers']));
  });
  test('its ratios', () => {
    expect(() => ventedRatios({ drivers: ten, netVolume: '40 L' } as never)).toThrow(faulty(['empty', 'box.fb']));
  });
  test.each([null, 3, 'ten'])('%j for drivers', (drivers) => {
    expect(() => closedBox({ drivers: drivers as never, netVolume: '40 L' })).toThrow(
      expect.objectContaining({ code: 'airspring-input' }),
    );
  });
  test('a driver with a fault', () => {
    expect(() => closedBox({ drivers: { ...ten, Mms: -1 as never }, netVolume: '40 L' })).toThrow(
      faulty(['not-positive', 'driver.Mms']),
    );
  });
});

const names = ({ network }: System) => network.topology.elements.map(({ name }) => name);
test('an element that is nothing is left out', () => {
  const { Le: _, ...bare } = ten;
  const closed = ['drive', 'Re', 'Bl', 'Mms', 'Rms', 'Cms', 'Sd', 'Cab'];
  expect(names(closedBox({ drivers: bare, netVolume: '40 L' }))).toEqual(closed);
  expect(
    names(closedBox({ drivers: { ...bare, Le: 0 as never }, netVolume: '40 L', sourceResistance: '0 ohm' })),
  ).toEqual(closed);
  expect(names(ventedBox({ drivers: bare, netVolume: '40 L', fb: '30 Hz' }))).toEqual([...closed, 'vent']);
  expect(
    names(
      ventedBox({
        drivers: { ...bare, coil: lr2Inductor({ Le: '1 mH', R2: '3 ohm', L2: '1 mH' }) },
        netVolume: '40 L',
        fb: '30 Hz',
        QL: 7,
        QA: 50,
        QP: 60,
        sourceResistance: '0.1 ohm',
      }),
    ),
  ).toEqual([
    'drive',
    'sourceResistance',
    'Re',
    'Le',
    'R2',
    'L2',
    'Bl',
    'Mms',
    'Rms',
    'Cms',
    'Sd',
    'Cab',
    'absorption',
    'leak',
    'vent',
    'ventLoss',
  ]);
});
test('the air speed is told only where the section is known', () => {
  const box = { drivers: ten, netVolume: '40 L', fb: '30 Hz' } as const;
  expect(ventedBox(box).network.topology.probes).not.toHaveProperty('ventAirSpeed');
  const { topology, values } = ventedBox({ ...box, ventArea: '50 cm²' }).network;
  expect(topology.probes.ventAirSpeed).toEqual({ of: 'flow', element: 'vent', factor: 'perVentArea' });
  expect(values.perVentArea).toBe(200);
});
test('a driver is a group of one, and a group stays what it is', () => {
  const pair = group(ten, { parallel: 2 });
  expect(asGroup(ten)).toEqual(group(ten));
  expect(asGroup(pair)).toEqual(pair);
  expect(equivalentDriver(pair).Re).toBe(2.8);
});

test('a step in a wall is that in a boundless box', () => {
  const { pressure } = stepResponse(infiniteBaffle({ drivers: ten }), { until: '0.1 s', points: 11 });
  const huge = closedBox({ drivers: ten, netVolume: '1000 m³', fillGain: 1000 });
  const other = stepResponse(huge, { until: '0.1 s', points: 11 }).pressure;
  expect(Math.abs(other[1]!)).toBeGreaterThan(1e-4);
  pressure.forEach((one, i) => expect(Math.abs(one - other[i]!)).toBeLessThan(1e-6 * Math.max(...other.map(Math.abs))));
});
