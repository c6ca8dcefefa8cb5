import { standardAir } from '@airspring/core/air';
import {
  type Driver,
  type DriverGroup,
  driver,
  driverParameters,
  group,
} from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { greatestLevel, heatLimit, travelLimit } from '@airspring/core/limit';
import {
  type Frequency,
  format,
  logarithmicGrid,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  netVolume: {
    kind: 'volume',
    label: 'Air in the box of one driver',
    value: '36 L',
    least: '15 L',
    greatest: '120 L',
    step: 1.02,
  },
  tone: {
    kind: 'frequency',
    label: 'Tone at which the greatest levels are compared',
    value: '40 Hz',
    least: '20 Hz',
    greatest: '150 Hz',
    step: 1.02,
  },
  chamber: {
    kind: 'volume',
    label: 'Air between the two cones',
    value: '3 L',
    least: '0.5 L',
    greatest: '30 L',
    step: 1.03,
  },
} as const;

interface Box {
  readonly netVolume: Volume;
  readonly tone: Frequency;
  readonly chamber: Volume;
}

export const one = driver({
  Sd: '330 cm²',
  Mms: '85 g',
  Cms: '0.41 mm/N',
  Rms: '4 kg/s',
  Re: '5.6 Ω',
  Bl: '12 T·m',
  Xmax: '8 mm',
  Pe: '150 W',
});
export const pair = group(one, { parallel: 2, isobaric: true });
const inSeries = group(one, { series: 2, isobaric: true });

export const grid = logarithmicGrid(15, 300, 101);

const equivalentOf = (drivers: Driver | DriverGroup): Driver =>
  'equivalent' in drivers ? drivers.equivalent : drivers;

/** The voltage that gives one watt in the resistance of the coils. */
const oneWatt = (drivers: Driver | DriverGroup) =>
  si('voltageRms', Math.sqrt(equivalentOf(drivers).Re));

export const closed = (drivers: Driver | DriverGroup, netVolume: number) =>
  closedBox({ drivers, netVolume: si('volume', netVolume) });

/**
 * How much louder the front cone plays with air between the cones than with
 * a rigid rod, dB. Newton's second law for two cones, a spring between them,
 * and the air of the box behind the second.
 */
export function softness({ netVolume, chamber }: Box, frequency: number) {
  const { density, speedOfSound } = standardAir;
  const w = 2 * Math.PI * frequency;
  const spring = (volume: number) =>
    (density * speedOfSound ** 2 * one.Sd ** 2) / (volume * w);
  const [b, c] = [spring(netVolume / 2), spring(chamber)];
  // The impedance of one cone: r + jx.
  const r = one.Rms + one.Bl ** 2 / one.Re;
  const x = w * one.Mms - 1 / (w * one.Cms);
  const rigid = Math.hypot(2 * r, 2 * x - b);
  const front = Math.hypot(r, x - b - 2 * c);
  const both = Math.hypot(
    r * r - x * (x - b) + c * (2 * x - b),
    r * (2 * x - b - 2 * c),
  );
  return 20 * Math.log10((front * rigid) / (2 * both));
}

/** Up to here the cones should move as one, Hz. */
const BASS = 100;

export function solve({ netVolume, tone }: Omit<Box, 'chamber'>) {
  const of = (drivers: Driver | DriverGroup, volume: number) => {
    const box = closed(drivers, volume);
    const limits = [...travelLimit(drivers), ...heatLimit(drivers)];
    const { f3, peaks } = features(box);
    return {
      f3,
      rise: Math.max(0, ...peaks.map(({ value }) => value)),
      watt: respond(box, grid, { driveVoltageRms: oneWatt(drivers) }),
      atTone: levelsAt(tone, drivers, volume),
      most: greatestLevel(box, limits, [tone]),
      Re: equivalentOf(drivers).Re,
    };
  };
  return {
    alone: of(one, netVolume),
    pair: of(pair, netVolume / 2),
    squeezed: of(one, netVolume / 2),
    inSeries: levelsAt(tone, inSeries, netVolume / 2),
  };
}

/** For one volt, and for one watt in the coils. */
function levelsAt(
  tone: Frequency,
  drivers: Driver | DriverGroup,
  netVolume: number,
) {
  const { levelHalfSpace } = respond(closed(drivers, netVolume), [tone]);
  const volt = levelHalfSpace[0]!;
  return { volt, watt: volt + 20 * Math.log10(oneWatt(drivers)) };
}

/** What it brings, in words; a twentieth of a decibel is nothing. */
const against = (dB: number): string =>
  Math.abs(dB) < 0.05
    ? 'as loud'
    : `${Math.abs(dB).toFixed(1)} dB ${dB > 0 ? 'louder' : 'softer'}`;

export function answers(at: Box, found = solve(at)) {
  const { alone, pair: both, squeezed } = found;
  const reach = ({ f3 }: typeof alone) =>
    f3 === undefined ? 'nowhere' : format('frequency', f3, 'Hz');
  const hump = ({ rise }: typeof alone) => `${rise.toFixed(1)} dB`;
  const most = ({ most }: typeof alone) => most.levelHalfSpace[0]!;
  const heat = ({ most: { driveVoltageRms }, Re }: typeof alone) =>
    driveVoltageRms[0]! ** 2 / Re;
  const apart = Array.from(grid)
    .filter((f) => f <= BASS)
    .map((f) => softness(at, f))
    .reduce((most, dB) => (Math.abs(dB) > Math.abs(most) ? dB : most), 0);
  return {
    total: format('volume', si('volume', at.netVolume / 2 + at.chamber), 'L'),
    half: format('volume', si('volume', at.netVolume / 2), 'L'),
    alone: reach(alone),
    pair: reach(both),
    squeezed: reach(squeezed),
    rise: hump(alone),
    pairRise: hump(both),
    squeezedRise: hump(squeezed),
    perWatt: against(both.atTone.watt - alone.atTone.watt),
    sameVoltage: against(both.atTone.volt - alone.atTone.volt),
    seriesVoltage: against(found.inSeries.volt - alone.atTone.volt),
    seriesWatt: against(found.inSeries.watt - alone.atTone.watt),
    most: format('level', si('level', most(both)), 'dB'),
    mostAlone:
      Math.abs(most(both) - most(alone)) < 0.05
        ? 'as loud as'
        : `${against(most(both) - most(alone))} than`,
    binding: both.most.binding[0] as string,
    watts: `${heat(both).toFixed(0)} W`,
    wattsAlone: `${heat(alone).toFixed(0)} W`,
    load: format('resistance', both.Re, 'Ω'),
    seriesLoad: format('resistance', inSeries.equivalent.Re, 'Ω'),
    oneLoad: format('resistance', alone.Re, 'Ω'),
    Vas: format('volume', driverParameters(one).Vas, 'L', 3),
    pairVas: format('volume', driverParameters(pair.equivalent).Vas, 'L', 3),
    bass: `${BASS} Hz`,
    apart: `${Math.abs(apart).toFixed(1)} dB ${apart < 0 ? 'softer' : 'louder'}`,
    stiff:
      Math.abs(apart) < 0.5
        ? 'The two cones move as one there'
        : Math.abs(apart) < 1.5
          ? 'The two cones move nearly as one there'
          : 'The two cones do not move as one there, and the numbers above are wrong',
  };
}
