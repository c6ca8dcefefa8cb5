import { driver } from '@airspring/core/driver';
import {
  capacitorBox,
  closedBox,
  closedResonance,
  type System,
} from '@airspring/core/enclosure';
import {
  type Capacitance,
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
    label: 'Air in the box',
    value: '12 L',
    least: '5 L',
    greatest: '40 L',
    step: 1.02,
  },
  capacitance: {
    kind: 'capacitance',
    label: 'Capacitor in series with the driver',
    value: '680 µF',
    least: '220 µF',
    greatest: '4700 µF',
    step: 1.03,
  },
  tone: {
    kind: 'frequency',
    label: 'Tone below the band',
    value: '20 Hz',
    least: '12 Hz',
    greatest: '40 Hz',
    step: 1.01,
  },
} as const;

interface Box {
  readonly netVolume: Volume;
  readonly capacitance: Capacitance;
  readonly tone: Frequency;
}

export const drivers = driver({
  Sd: '214 cm²',
  Mms: '46 g',
  Cms: '0.9 mm/N',
  Rms: '2 kg/s',
  Re: '5.4 Ω',
  Bl: '8.6 T·m',
});

export const boxes = ({ netVolume, capacitance }: Box) => ({
  shut: closedBox({ drivers, netVolume }),
  behind: capacitorBox({
    drivers,
    netVolume,
    seriesCapacitance: capacitance,
  }),
});

/** Where a shut box is 3 dB down. */
function shutReach(netVolume: Volume): number {
  const { fc, Qtc } = closedResonance({ drivers, netVolume });
  const half = 1 / (2 * Qtc ** 2) - 1;
  return fc * Math.sqrt(half + Math.sqrt(half ** 2 + 1));
}

/** The smallest shut box that reaches as deep; none where none does. */
export function shutBoxFor(reach: number): Volume | undefined {
  const volumes = Array.from({ length: 61 }, (_, i) =>
    si('volume', 1e-3 * 1000 ** (i / 60)),
  );
  const first = volumes.findIndex((volume) => shutReach(volume) <= reach);
  if (first < 1) return undefined;
  let [small, large] = [volumes[first - 1]!, volumes[first]!];
  for (let i = 0; i < 30; i++) {
    const middle = si('volume', Math.sqrt(small * large));
    if (shutReach(middle) <= reach) large = middle;
    else small = middle;
  }
  return large;
}

export const grid = logarithmicGrid(12, 300, 121);

/** What the cone is driven by, and what the capacitor is bought for. */
const driveVoltageRms = '10 V' as const;
const STRONGER = 3;

/** Greatest value of a column, and where it is. */
function greatest(column: Float64Array) {
  const at = column.indexOf(Math.max(...column));
  return { value: column[at]!, at: grid[at]!, i: at };
}

export function solve(at: Box) {
  const of = (system: System) => {
    const { f3, peaks } = features(system, { to: '2000 Hz' });
    const swept = respond(system, grid, { driveVoltageRms });
    const [toneLevel] = respond(system, [at.tone]).levelHalfSpace;
    const tone = respond(system, [at.tone], { driveVoltageRms });
    return {
      f3,
      rise: Math.max(0, ...peaks.map(({ value }) => value)),
      swept,
      toneLevel: toneLevel as number,
      toneTravel: tone.displacementPeak[0]!,
    };
  };
  const { shut, behind } = boxes(at);
  return { shut: of(shut as System), behind: of(behind as System) };
}

export function answers(at: Box, found = solve(at)) {
  const { shut, behind } = found;
  const hertz = (f: number | undefined) =>
    f === undefined ? 'nowhere' : format('frequency', f, 'Hz', 3);
  const decibels = (value: number) => `${Math.abs(value).toFixed(1)} dB`;
  const millimetres = (value: number) =>
    format('length', si('length', value), 'mm', 3);
  const ohms = (value: number) =>
    format('resistance', si('resistance', value), 'Ω', 3);
  const equal = behind.f3 === undefined ? undefined : shutBoxFor(behind.f3);
  const isDeeper =
    behind.f3 !== undefined && shut.f3 !== undefined && behind.f3 < shut.f3;
  const lost = behind.toneLevel - shut.toneLevel;
  const [most, shutMost] = [behind, shut].map(({ swept }) =>
    greatest(swept.displacementPeak),
  ) as [ReturnType<typeof greatest>, ReturnType<typeof greatest>];
  // The lowest tones put the whole voltage of the amplifier on it.
  const stress = behind.swept.currentRms.map(
    (current, i) =>
      (Math.SQRT2 * current) / (2 * Math.PI * grid[i]! * at.capacitance),
  );
  const voltage = STRONGER * Math.max(Math.SQRT2 * 10, ...stress);
  // Behind the terminals is Re at least.
  const current = (STRONGER * 10) / drivers.Re;
  return {
    shutReach: hertz(shut.f3),
    reach: hertz(behind.f3),
    equal:
      equal === undefined
        ? 'is beyond this driver in any closed box'
        : `takes a closed box with ${format('volume', equal, 'L', 3)} of air`,
    takes: isDeeper ? 'takes it down to' : 'takes it up to',
    shutRise: decibels(shut.rise),
    rise: decibels(behind.rise),
    tone: hertz(at.tone),
    travel: millimetres(behind.toneTravel),
    shutTravel: millimetres(shut.toneTravel),
    holds:
      behind.toneTravel < shut.toneTravel
        ? 'the capacitor holds the cone'
        : 'the capacitor does not hold the cone here',
    lost: `${decibels(lost)} ${lost < 0 ? 'softer' : 'louder'}`,
    most: millimetres(most.value),
    mostAt: hertz(most.at),
    shutMost: millimetres(shutMost.value),
    load: ohms(behind.swept.impedance[most.i]!),
    shutLoad: ohms(shut.swept.impedance[most.i]!),
    mostly: most.value > shutMost.value ? 'farther' : 'less far',
    voltage: `${Math.ceil(voltage)} V`,
    current: `${(Math.ceil(10 * current) / 10).toFixed(1)} A`,
  };
}
