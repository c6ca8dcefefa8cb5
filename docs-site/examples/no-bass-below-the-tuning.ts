import { completeDriver, driverParameters } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  logarithmicGrid,
  read,
  type Volume,
} from '@airspring/core/quantity';
import {
  compiledSystem,
  levelColumn,
  probeColumns,
  probeNamed,
} from '@airspring/core/response';

/** What may be changed. Box and driver are invented. */
export const inputs = {
  tone: {
    kind: 'frequency',
    label: 'Tone',
    value: '15 Hz',
    least: '12 Hz',
    greatest: '80 Hz',
    step: 1.01,
  },
  fb: {
    kind: 'frequency',
    label: 'Tuning',
    value: '30 Hz',
    least: '22 Hz',
    greatest: '45 Hz',
    step: 1.01,
  },
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '50 L',
    least: '25 L',
    greatest: '90 L',
    step: 1.02,
  },
} as const;

interface Wish {
  readonly tone: Frequency;
  readonly fb: Frequency;
  readonly netVolume: Volume;
}

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
  Xmax: '8 mm',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const { fs, Vas } = driverParameters(driver);
export const drive = 15; // V rms
export const Xmax = driver.Xmax ?? 0;
const ventArea = read('area', '50 cm²');
const QL = 7;

/**
 * Flow of the cone and of the vent, what they do together, and the same
 * box with its vent shut.
 */
export function solve(
  { fb, netVolume }: Omit<Wish, 'tone'>,
  frequencies: Float64Array = logarithmicGrid(10, 100, 120),
) {
  const vented = ventedBox({
    drivers: driver,
    netVolume,
    fb,
    QL,
    ventArea,
  });
  // The same leak, its quality told where the shut box rings.
  const sameLeak = ((QL * fs) / fb) * Math.sqrt(1 + Vas / netVolume);
  const closed = closedBox({ drivers: driver, netVolume, QL: sameLeak });
  const columns = probeColumns(compiledSystem(vented), frequencies);
  const velocity = probeNamed(columns, 'coneVelocity');
  const times = ({ re, im }: typeof velocity, area: number) => ({
    re: re.map((v) => v * area),
    im: im.map((v) => v * area),
  });
  const [cone, vent] = [
    times(velocity, driver.Sd),
    times(probeNamed(columns, 'ventAirSpeed'), ventArea),
  ];
  const shut = probeColumns(compiledSystem(closed), frequencies);
  const level = (flow: typeof velocity) => {
    const out = new Float64Array(frequencies.length);
    levelColumn(frequencies, flow, vented.air.density, drive, out);
    return out;
  };
  return {
    frequencies,
    cone,
    vent,
    coneLevel: level(cone),
    ventLevel: level(vent),
    level: level(probeNamed(columns, 'radiatedFlow')),
    closedLevel: level(probeNamed(shut, 'radiatedFlow')),
    travel: frequencies.map(
      (f, i) =>
        (Math.SQRT2 * drive * Math.hypot(velocity.re[i]!, velocity.im[i]!)) /
        (2 * Math.PI * f),
    ),
  };
}

export function answers({ tone, ...box }: Wish) {
  const at = solve(box, Float64Array.of(tone));
  const [low, lower] = solve(box, Float64Array.of(box.fb / 8, box.fb / 4))
    .level as unknown as [number, number];
  const value = (column: Float64Array) => column[0] as number;
  const angle = ({ re, im }: typeof at.cone) =>
    Math.atan2(value(im), value(re));
  const turn = Math.abs(angle(at.vent) - angle(at.cone)) * (180 / Math.PI);
  const apart = Math.min(turn, 360 - turn);
  const dB = (level: number) => format('level', level, 'dB');
  const gain = value(at.level) - value(at.coneLevel);
  const open = value(at.level) - value(at.closedLevel);
  const step = (difference: number, more: string, less: string) =>
    Math.abs(difference) < 0.5
      ? 'as loud as'
      : `${format('level', Math.abs(difference), 'dB', 2)} ${difference > 0 ? more : less} than`;
  return {
    cone: dB(value(at.coneLevel)),
    vent: dB(value(at.ventLevel)),
    both: dB(value(at.level)),
    apart: `${Math.round(apart)}°`,
    against:
      apart > 120
        ? 'against the cone'
        : apart > 60
          ? 'neither with nor against the cone'
          : 'with the cone',
    effect: step(gain, 'louder', 'softer'),
    open: step(open, 'louder', 'softer'),
    slope: `${Math.round(lower - low)} dB`,
    travel: format('displacementPeak', value(at.travel), 'mm', 2),
    room: value(at.travel) > Xmax ? 'more than its Xmax' : 'within its Xmax',
    Xmax: format('displacementPeak', Xmax, 'mm', 2),
    drive: `${drive} V`,
  };
}
