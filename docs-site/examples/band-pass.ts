import { driver, driverParameters } from '@airspring/core/driver';
import {
  closedBox,
  closedResonance,
  fourthOrderBandPass,
} from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  logarithmicGrid,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { features, passband, respond } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  rear: {
    kind: 'volume',
    label: 'Air in the closed chamber',
    value: '6.5 L',
    least: '2 L',
    greatest: '40 L',
    step: 1.02,
  },
  front: {
    kind: 'volume',
    label: 'Air in the vented chamber',
    value: '14 L',
    least: '3 L',
    greatest: '60 L',
    step: 1.02,
  },
  fb: {
    kind: 'frequency',
    label: 'Tuning of the vented chamber',
    value: '76 Hz',
    least: '35 Hz',
    greatest: '150 Hz',
    step: 1.01,
  },
} as const;

interface Box {
  readonly rear: Volume;
  readonly front: Volume;
  readonly fb: Frequency;
}

export const drivers = driver({
  Sd: '214 cm²',
  Mms: '46 g',
  Cms: '0.54 mm/N',
  Rms: '2.7 kg/s',
  Re: '5.4 Ω',
  Bl: '11.3 T·m',
});

export const bandPass = ({ rear, front, fb }: Box) =>
  fourthOrderBandPass({
    drivers,
    rearVolume: rear,
    frontVolume: front,
    frontTuning: fb,
    frontQL: 7,
  });

/** All its air, in a closed box. */
export const closed = ({ rear, front }: Box) =>
  closedBox({ drivers, netVolume: si('volume', rear + front) });

/** Where its level is judged. */
const range = { from: '15 Hz', to: '500 Hz' } as const;

export const grid = logarithmicGrid(20, 300, 121);

/** Its passband, and the frequencies at which it is the louder one. */
export function solve(box: Box) {
  const options = { driveVoltageRms: '2.83 V' } as const;
  const system = bandPass(box);
  const [open, shut] = [system, closed(box)].map((one) =>
    respond(one as typeof system, grid, options),
  ) as [ReturnType<typeof respond>, ReturnType<typeof respond>];
  const passed = passband(system, range);
  const at = (one: ReturnType<typeof closed> | typeof system) =>
    respond(one as typeof system, [box.fb], options);
  const louder = grid.filter(
    (_, i) => open.levelHalfSpace[i]! > shut.levelHalfSpace[i]!,
  );
  return {
    open,
    shut,
    lower: passed.ok ? passed.lower : undefined,
    upper: passed.ok ? passed.upper : undefined,
    difference:
      at(system).levelHalfSpace[0]! - at(closed(box)).levelHalfSpace[0]!,
    travel: [system, closed(box)].map(
      (one) => at(one).displacementPeak[0] as number,
    ),
    peaks: features(system, { ...range, reference: { frequency: box.fb } })
      .peaks,
    louder: [louder[0], louder.at(-1)],
    ...closedResonance({ drivers, netVolume: box.rear }),
  };
}

/** The terms of the textbook: damping S of the low-pass that is mapped. */
export function symmetrical({ rear, front }: Box) {
  const { Qts, Vas } = driverParameters(drivers);
  const { fc, Qtc } = closedResonance({ drivers, netVolume: rear });
  const S = Math.sqrt(front / Vas) / (2 * Qts);
  return { S, fc, Qtc, gain: 40 * Math.log10(2 * S * Qtc) };
}

export function answers(box: Box, found = solve(box)) {
  const { S, fc, Qtc, gain } = symmetrical(box);
  const hertz = (f: number | undefined) =>
    f === undefined ? 'beyond the range' : format('frequency', f, 'Hz');
  const by = Math.abs(found.difference).toFixed(1);
  const [own, others] = found.travel as [number, number];
  const off = 12 * Math.log2(box.fb / fc);
  return {
    lower: hertz(found.lower),
    upper: hertz(found.upper),
    difference: `${by} dB ${found.difference < 0 ? 'softer' : 'louder'}`,
    calmer: own < others ? 'less' : 'more',
    travel: `${(own * 1e3).toFixed(2)} mm`,
    others: `${(others * 1e3).toFixed(2)} mm`,
    louder:
      found.louder[0] === undefined
        ? 'nowhere'
        : `from ${hertz(found.louder[0])} to ${hertz(found.louder[1])}`,
    fc: hertz(fc),
    Qtc: Qtc.toFixed(2),
    S: S.toFixed(2),
    gain: `${gain < 0 ? '−' : ''}${Math.abs(gain).toFixed(1)} dB`,
    even:
      S < Math.SQRT1_2
        ? 'has two tops with a dip between them'
        : 'has one top',
    tuned:
      Math.abs(off) < 1
        ? 'close to it'
        : off > 0
          ? 'above it, so that the upper end of the band is louder'
          : 'below it, so that the lower end of the band is louder',
  };
}
