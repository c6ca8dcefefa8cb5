import { completeDriver, driverParameters } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  logarithmicGrid,
  type Volume,
} from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';

/**
 * How the box was built: what the reading below must find again. Box and
 * driver are invented.
 */
export const inputs = {
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
  QL: {
    kind: 'ratio',
    label: 'Quality factor of its leaks',
    value: '7 1',
    least: '3 1',
    greatest: '30 1',
    step: 1.03,
  },
} as const;

interface Built {
  readonly fb: Frequency;
  readonly netVolume: Volume;
  readonly QL: number;
}

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: woofer } = sheet;
const { fs, Qes, Qms, Vas } = driverParameters(woofer);
const frequencies = logarithmicGrid(9, 120, 260);

/**
 * What is measured: the impedance with the vent open, and with the vent
 * shut.
 */
export function measure({ fb, netVolume, QL }: Built) {
  // The same leak, its quality told where the shut box rings.
  const sameLeak = ((QL * fs) / fb) * Math.sqrt(1 + Vas / netVolume);
  const open = ventedBox({ drivers: woofer, netVolume, fb, QL });
  const shut = closedBox({ drivers: woofer, netVolume, QL: sameLeak });
  const { impedanceMaxima: peaks, impedanceMinima: dips } = features(open);
  return {
    frequencies,
    open: respond(open, frequencies).impedance,
    shut: respond(shut, frequencies).impedance,
    low: peaks[0]!,
    high: peaks[1]!,
    valley: dips[0]!,
    only: features(shut).impedanceMaxima[0]!,
  };
}

/**
 * What the measured curves tell; of the driver its fs, Qes, Qms, Vas must
 * be known.
 */
export function reading({
  low,
  high,
  valley,
  only,
}: ReturnType<typeof measure>) {
  const [fL, fH] = [low.frequency, high.frequency];
  const fb = Math.sqrt(fL ** 2 + fH ** 2 - only.frequency ** 2);
  // Vas over the air in the box.
  const ratio = ((fH ** 2 - fb ** 2) * (fb ** 2 - fL ** 2)) / (fH * fL) ** 2;
  const rise = valley.value / woofer.Re - 1;
  return {
    fb,
    netVolume: Vas / ratio,
    QL: ((1 / (Qes * rise) - 1 / Qms) * fb) / (fs * ratio),
  };
}

export function answers(built: Built, measured = measure(built)) {
  const { low, high, valley, only } = measured;
  const read = reading(measured);
  const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
  const off = (got: number, is: number) => {
    const part = Math.abs(got / is - 1) * 100;
    return part < 1
      ? 'right within 1 %'
      : `${Math.round(part)} % ${got > is ? 'too high' : 'too low'}`;
  };
  return {
    low: hertz(low.frequency),
    valley: hertz(valley.frequency),
    high: hertz(high.frequency),
    only: hertz(only.frequency),
    least: format('resistance', valley.value, 'Ω'),
    fb: hertz(read.fb),
    fbOff: off(read.fb, built.fb),
    valleyOff: off(valley.frequency, built.fb),
    netVolume: format('volume', read.netVolume, 'L'),
    netVolumeOff: off(read.netVolume, built.netVolume),
    QL: read.QL.toFixed(2),
    QLOff: off(read.QL, built.QL),
    tight:
      read.QL < 5
        ? 'leaks more than most'
        : read.QL > 10
          ? 'is tighter than most'
          : 'is about as tight as most',
  };
}
