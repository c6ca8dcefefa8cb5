import { driver, driverParameters, group } from '@airspring/core/driver';
import { expect, test } from 'vitest';

const one = driver({
  name: 'ten',
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Le: '0.9 mH',
  Xmax: '9 mm',
  Pe: '200 W',
  depth: '118 mm',
  displacedVolume: '2 L',
});

test('one driver is its own equivalent', () => {
  const { equivalent, count, fronts, share } = group(one);
  const { depth: _, ...rest } = one;
  expect(equivalent).toEqual(rest);
  expect({ count, fronts, share }).toEqual({ count: 1, fronts: 1, share: { voltage: 1, current: 1 } });
});

test.each([
  [{ parallel: 2 }, { Re: 2.8, Bl: 14.3, Le: 0.45e-3, Sd: 0.066 }],
  [{ series: 2 }, { Re: 11.2, Bl: 28.6, Le: 1.8e-3, Sd: 0.066 }],
  [
    { series: 2, parallel: 2 },
    { Re: 5.6, Bl: 28.6, Le: 0.9e-3, Sd: 0.132 },
  ],
  [
    { parallel: 2, isobaric: true },
    { Re: 2.8, Bl: 14.3, Le: 0.45e-3, Sd: 0.033 },
  ],
])('wiring %j', (wiring, expected) => {
  const { equivalent, count, series, parallel, share } = group(one, wiring);
  for (const [field, value] of Object.entries(expected)) {
    expect(equivalent[field as 'Re']).toBeCloseTo(value, 12);
  }
  expect(equivalent.Pe).toBeCloseTo(200 * count, 12);
  expect(equivalent.displacedVolume).toBeCloseTo(0.002 * count, 12);
  expect(equivalent).toMatchObject({ Xmax: one.Xmax, name: `${count} × ten` });
  expect(share).toEqual({ voltage: 1 / series, current: 1 / parallel });
});

test('an isobaric pair keeps fs and the Q values, at half the efficiency', () => {
  const alone = driverParameters(one);
  const pair = driverParameters(group(one, { series: 2, isobaric: true }).equivalent);
  for (const field of ['fs', 'Qms', 'Qes', 'Qts'] as const) expect(pair[field] / alone[field]).toBeCloseTo(1, 12);
  expect(pair.referenceEfficiency / alone.referenceEfficiency).toBeCloseTo(0.5, 12);
});

test('an odd number cannot be paired; faults of driver and wiring come together', () => {
  expect(() => group({ ...one, Re: -1 as never }, { parallel: 3, isobaric: true })).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'not-positive', path: 'driver.Re' }),
        expect.objectContaining({ code: 'inconsistent', path: 'group.isobaric' }),
      ],
    }),
  );
  expect(() => group(one, { series: 0, isobaric: 'yes' as never })).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'out-of-range', path: 'group.series' }),
        expect.objectContaining({ code: 'unit', path: 'group.isobaric' }),
      ],
    }),
  );
});
