import { driver, driverParameters } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  type Level,
  type Mass,
  si,
} from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  reach: {
    kind: 'frequency',
    label: 'Lowest frequency, three decibels down',
    value: '45 Hz',
    least: '35 Hz',
    greatest: '80 Hz',
    step: 1.01,
  },
  rise: {
    kind: 'level',
    label: 'Rise of the level that is allowed',
    value: '1 dB',
    least: '0.1 dB',
    greatest: '6 dB',
    step: '0.1 dB',
  },
  Mms: {
    kind: 'mass',
    label: 'Moving mass of the driver',
    value: '95 g',
    least: '60 g',
    greatest: '180 g',
    step: '1 g',
  },
} as const;

interface Wish {
  readonly reach: Frequency;
  readonly rise: Level;
  readonly Mms: Mass;
}

export const driverOf = (Mms: Mass) =>
  driver({
    Sd: '330 cm²',
    Mms,
    Cms: '0.46 mm/N',
    Rms: '3 kg/s',
    Re: '5.6 Ω',
    Bl: '12.7 T·m',
  });

/**
 * A closed box by Small: the air stiffens the suspension, and with it rise
 * resonance, quality, cut-off.
 */
export function closed(Mms: Mass) {
  const { fs, Qts, Vas } = driverParameters(driverOf(Mms));
  return (netVolume: number) => {
    const stiffer = Math.sqrt(1 + Vas / netVolume);
    const [fc, Qtc] = [fs * stiffer, Qts * stiffer];
    const half = 1 / (2 * Qtc ** 2) - 1;
    const f3 = fc * Math.sqrt(half + Math.sqrt(half ** 2 + 1));
    const rise =
      Qtc ** 2 > 0.5
        ? 20 * Math.log10(Qtc ** 2 / Math.sqrt(Qtc ** 2 - 0.25))
        : 0;
    return { f3, rise, fc, Qtc };
  };
}

/** Net volumes that are looked at, m³. */
export const volumes = Array.from(
  { length: 121 },
  (_, i) => 0.003 * 100 ** (i / 120),
);

/** The smallest closed box with the reach and no more than the rise. */
export function solve({ reach, rise, Mms }: Wish) {
  const box = closed(Mms);
  const reaches = (volume: number) => box(volume).f3 <= reach;
  const even = (volume: number) => box(volume).rise <= rise;
  const first = volumes.findIndex(
    (volume) => reaches(volume) && even(volume),
  );
  if (first < 0)
    return {
      ok: false,
      because: volumes.some(reaches) ? 'the rise' : 'the reach',
    } as const;
  let [small, large] = [
    volumes[first - 1] ?? 0.001,
    volumes[first] as number,
  ];
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(small * large);
    if (reaches(middle) && even(middle)) large = middle;
    else small = middle;
  }
  return {
    ok: true,
    netVolume: si('volume', large),
    ...box(large),
    because: reaches(small) ? 'the rise' : 'the reach',
  } as const;
}

export function answers(wish: Wish, found = solve(wish)) {
  const { levelHalfSpace2V83: level } = driverParameters(driverOf(wish.Mms));
  const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
  const texts = {
    level: format('level', level, 'dB'),
    because: found.because,
  };
  if (!found.ok) {
    const none = 'none';
    const words = `No closed box up to ${format('volume', volumes.at(-1) as number, 'L')} does it with this driver`;
    return {
      ...texts,
      words,
      netVolume: none,
      edge: none,
      f3: none,
      swept: none,
      rise: none,
      fc: none,
      Qtc: none,
      half: 'nothing to halve',
      deeper: none,
    };
  }
  const { netVolume, f3, rise, fc, Qtc } = found;
  const swept = cutoff(closedBox({ drivers: driverOf(wish.Mms), netVolume }));
  const half = closed(wish.Mms)(netVolume / 2);
  return {
    ...texts,
    words: `${format('volume', netVolume, 'L')} of air will do`,
    netVolume: format('volume', netVolume, 'L'),
    edge: format('length', Math.cbrt(netVolume), 'mm'),
    f3: hertz(f3),
    swept: swept.ok ? hertz(swept.frequency) : 'nowhere',
    fc: hertz(fc),
    Qtc: Qtc.toFixed(2),
    rise: `${rise.toFixed(1)} dB`,
    half: `half of that reaches ${hertz(half.f3)} and rises ${half.rise.toFixed(1)} dB`,
    deeper: format('volume', netVolume * 8, 'L'),
  };
}
