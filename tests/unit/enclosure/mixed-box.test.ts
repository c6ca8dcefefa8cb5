import { driver, group } from '@airspring/core/driver';
import { type DriverNet, driversOf, type MixedBoxInput, mixedBox } from '@airspring/core/enclosure';
import { limitsOfEach } from '@airspring/core/limit';
import { compiledSystem, lowestLoad, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';

/** Invented. */
const ten = driver({
  ...{ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' },
  ...{ Xmax: '9 mm', Pe: '140 W' },
});
const six = driver({ Sd: '130 cm²', Mms: '14 g', Cms: '0.8 mm/N', Rms: '1 N·s/m', Re: '6.2 ohm', Bl: '7 T·m' });
const leaf = (name: string, chamber?: string): DriverNet => ({ name, driver: ten, ...(chamber && { chamber }) });
const input: MixedBoxInput = {
  drivers: { parallel: [leaf('left', 'low'), { name: 'right', driver: six, chamber: 'high' }] },
  chambers: { low: { netVolume: '60 L', fb: '28 Hz', ventArea: '60 cm²', QL: 7 }, high: { netVolume: '8 L' } },
};
const faulty = (...faults: [string, string][]) =>
  expect.objectContaining({
    code: 'airspring-input',
    faults: expect.toSatisfy((got: { code: string; path: string }[]) => {
      expect(got.map(({ code, path }) => [code, path]).sort()).toEqual(faults.sort());
      return true;
    }),
  });

test('probes for each driver and each vent, one sum for all volumes', () => {
  expect([...compiledSystem(mixedBox(input)).probes].sort()).toEqual(
    [
      'radiatedFlow',
      'current',
      'terminalVoltage',
      'coneVelocity left',
      'current left',
      'coneVelocity right',
      'current right',
      'ventAirSpeed low',
    ].sort(),
  );
});
test('the spec survives JSON and makes the same system again', () => {
  const { spec, network } = mixedBox(input);
  const { family: _, ...again } = JSON.parse(JSON.stringify(spec));
  expect(mixedBox(again).network).toEqual(network);
});
test('drivers from left to right, groups as groups', () => {
  const drivers: DriverNet = {
    series: [leaf('a'), { parallel: [{ name: 'b', driver: group(six, { series: 2 }) }, leaf('c')] }],
  };
  const { spec } = mixedBox({ drivers, chambers: { box: { netVolume: '40 L' } } });
  expect(driversOf(spec.drivers).map(({ name, chamber, driver: { count } }) => [name, chamber, count])).toEqual([
    ['a', 'box', 1],
    ['b', 'box', 2],
    ['c', 'box', 1],
  ]);
});
test('limits bear the name of their part; what is not said limits nothing', () => {
  const { spec } = mixedBox(input);
  expect(limitsOfEach(spec, { airSpeedRms: '9 m/s' }).map(({ name, probe }) => [name, probe])).toEqual([
    ['travel of left', 'coneVelocity left'],
    ['heat of left', 'current left'],
    ['vent of low', 'ventAirSpeed low'],
  ]);
  expect(limitsOfEach(spec)).toHaveLength(2);
});
test('a response of all, and the load that the amplifier sees', () => {
  const system = mixedBox(input);
  expect(respond(system, [28, 60]).airSpeedPeak).toHaveLength(2);
  const { impedance, angle } = lowestLoad(system, { from: '20 Hz', to: '100 Hz' });
  expect(impedance.value).toBeGreaterThan(1 / (1 / 5.6 + 1 / 6.2));
  expect(Math.abs(angle.value)).toBeLessThan(Math.PI / 2);
});

describe('refusals', () => {
  const air = { netVolume: '40 L' } as const;
  test.each<[string, unknown, [string, string][]]>([
    [
      'nothing',
      {},
      [
        ['empty', 'box.drivers'],
        ['empty', 'box.chambers'],
      ],
    ],
    ['no chamber', { drivers: leaf('a'), chambers: {} }, [['empty', 'box.chambers']]],
    ['a list of chambers', { drivers: leaf('a'), chambers: [air] }, [['empty', 'box.chambers']]],
    ['an empty list', { drivers: { series: [] }, chambers: { box: air } }, [['empty', 'box.drivers.series']]],
    [
      'both wirings at once',
      { drivers: { series: [leaf('a')], parallel: [leaf('b')] }, chambers: { box: air } },
      [['conflict', 'box.drivers']],
    ],
    [
      'two of one name',
      { drivers: { series: [leaf('a'), leaf('a')] }, chambers: { box: air } },
      [['conflict', 'box.drivers.series[1].name']],
    ],
    [
      'no name and a bad driver, each at its path',
      { drivers: { parallel: [leaf(''), { name: 'b', driver: { ...six, Re: 0 } }] }, chambers: { box: air } },
      [
        ['empty', 'box.drivers.parallel[0].name'],
        ['not-positive', 'box.drivers.parallel[1].driver.Re'],
      ],
    ],
    [
      'a chamber that is not there',
      { drivers: leaf('a', 'cellar'), chambers: { box: air } },
      [['unknown-field', 'box.drivers.chamber']],
    ],
    [
      'two chambers, and no word which',
      { drivers: leaf('a'), chambers: { one: air, two: air } },
      [['empty', 'box.drivers.chamber']],
    ],
    [
      'a chamber without a driver',
      { drivers: leaf('a', 'one'), chambers: { one: air, two: air } },
      [['inconsistent', 'box.chambers.two']],
    ],
    [
      "a vent's loss without a vent, filling in a vented one",
      {
        drivers: { series: [leaf('a', 'one'), leaf('b', 'two')] },
        chambers: { one: { ...air, QP: 5 }, two: { ...air, fb: '30 Hz', fillGain: 1.2 } },
      },
      [
        ['unknown-field', 'box.chambers.one.QP'],
        ['unknown-field', 'box.chambers.two.fillGain'],
      ],
    ],
  ])('%s', (_what, given, faults) => {
    expect(() => mixedBox(given as MixedBoxInput)).toThrow(faulty(...faults));
  });
  test('lists too deep and drivers too many', () => {
    let deep = leaf('a');
    for (let i = 0; i < 40; i++) deep = { series: [deep] };
    const many = (n: number, at: number) => Array.from({ length: n }, (_, i) => leaf(`${at + i}`));
    const chambers = { box: air };
    const tooDeep = `box.drivers${'.series[0]'.repeat(32)}`;
    expect(() => mixedBox({ drivers: deep, chambers })).toThrow(faulty(['out-of-range', tooDeep]));
    expect(() => mixedBox({ drivers: { series: many(65, 0) }, chambers })).toThrow(
      faulty(['out-of-range', 'box.drivers']),
    );
    const twice: DriverNet = { series: [{ parallel: many(40, 0) }, { parallel: many(40, 40) }] };
    expect(() => mixedBox({ drivers: twice, chambers })).toThrow(faulty(['out-of-range', 'box.drivers']));
  });
});

test('a net that holds itself twice is refused at once', () => {
  const net: { series: DriverNet[] } = { series: [] };
  net.series.push(net, net);
  const chambers = { box: { netVolume: '40 L' } } as const;
  expect(() => mixedBox({ drivers: net, chambers })).toThrow(expect.objectContaining({ code: 'airspring-input' }));
}, 5000);
