import { completeDriver, group } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import {
  currentLimit,
  greatestLevel,
  heatLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import {
  type CurrentRms,
  format,
  logarithmicGrid,
  si,
  type VoltageRms,
  type Volume,
} from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

/** What may be changed. Box, driver and amplifier are invented. */
export const inputs = {
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '35 L',
    least: '15 L',
    greatest: '80 L',
    step: 1.02,
  },
  voltage: {
    kind: 'voltageRms',
    label: 'Greatest voltage of the amplifier',
    value: '22 V',
    least: '8 V',
    greatest: '45 V',
    step: '0.5 V',
  },
  current: {
    kind: 'currentRms',
    label: 'Greatest current of the amplifier',
    value: '6 A',
    least: '2 A',
    greatest: '15 A',
    step: '0.1 A',
  },
} as const;

interface Wish {
  readonly netVolume: Volume;
  readonly voltage: VoltageRms;
  readonly current: CurrentRms;
}

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.45,
  Qes: 0.5,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
  Xmax: '8 mm',
  Pe: '150 W',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
export const frequencies = logarithmicGrid(20, 160, 82);
/** A low tone and a high one at which the boxes are compared, Hz. */
const [low, high] = [30, 100];

/** One driver, two in parallel in the same air, two with twice the air. */
export const solve = ({ netVolume, voltage, current }: Wish) =>
  (
    [
      [1, 1],
      [2, 1],
      [2, 2],
    ] as const
  ).map(([count, times]) => {
    const drivers = group(driver, { parallel: count });
    const box = closedBox({
      drivers,
      netVolume: si('volume', netVolume * times),
    });
    const limits = [
      ...travelLimit(drivers),
      ...heatLimit(drivers),
      voltageLimit(voltage),
      currentLimit(current),
    ];
    return {
      f3: cutoff(box),
      most: greatestLevel(box, limits, frequencies),
      tones: greatestLevel(box, limits, [low, high]),
      Re: drivers.equivalent.Re,
    };
  });

/** What it brings, in words; half a decibel is nothing. */
const gain = (dB: number): string =>
  Math.abs(dB) < 0.5
    ? 'as loud'
    : `${format('level', Math.abs(dB), 'dB', 2)} ${dB > 0 ? 'louder' : 'softer'}`;

export function answers(wish: Wish, found = solve(wish)) {
  const [one, same, twice] = found as [
    (typeof found)[0],
    (typeof found)[0],
    (typeof found)[0],
  ];
  const reach = ({ f3 }: typeof one) =>
    f3.ok ? format('frequency', f3.frequency, 'Hz') : 'nowhere';
  const level = ({ tones }: typeof one, i: number) =>
    tones.levelHalfSpace[i] as number;
  const binding = ({ tones }: typeof one, i: number) =>
    tones.binding[i] as string;
  const shallower =
    one.f3.ok && same.f3.ok && same.f3.frequency > one.f3.frequency * 1.01;
  const high2 = level(twice, 1) - level(one, 1);
  return {
    one: reach(one),
    same: reach(same),
    twice: reach(twice),
    shallower: shallower ? 'less deep' : 'as deep',
    low: `${low} Hz`,
    high: `${high} Hz`,
    sameLow: gain(level(same, 0) - level(one, 0)),
    sameHigh: gain(level(same, 1) - level(one, 1)),
    twiceLow: gain(level(twice, 0) - level(one, 0)),
    twiceHigh: gain(high2),
    oneLimit: binding(one, 0),
    sameLimit: binding(same, 0),
    twiceLimit: binding(twice, 0),
    oneHigh: binding(one, 1),
    twiceHighLimit: binding(twice, 1),
    twiceVolume: format('volume', 2 * wish.netVolume, 'L'),
    load: format('resistance', same.Re, 'Ω'),
    loadOne: format('resistance', one.Re, 'Ω'),
    full:
      high2 > 5.5
        ? 'the full 6 dB'
        : high2 > 0.5
          ? 'a part of 6 dB'
          : 'nothing',
  };
}
