import { driver } from '@airspring/core/driver';
import {
  fourthOrderBandPass,
  parallelBandPass,
  type System,
  seriesBandPass,
} from '@airspring/core/enclosure';
import {
  type Frequency,
  format,
  logarithmicGrid,
  type Volume,
} from '@airspring/core/quantity';
import { passband, respond } from '@airspring/core/response';

/** What may be changed. The driver is invented. */
export const inputs = {
  rear: {
    kind: 'volume',
    label: 'Air in the rear chamber',
    value: '30 L',
    least: '8 L',
    greatest: '80 L',
    step: 1.02,
  },
  low: {
    kind: 'frequency',
    label: 'Tuning of the rear chamber',
    value: '32 Hz',
    least: '20 Hz',
    greatest: '50 Hz',
    step: 1.01,
  },
  high: {
    kind: 'frequency',
    label: 'Tuning of the front chamber',
    value: '75 Hz',
    least: '55 Hz',
    greatest: '150 Hz',
    step: 1.01,
  },
} as const;

interface Box {
  readonly rear: Volume;
  readonly low: Frequency;
  readonly high: Frequency;
}

const drivers = driver({
  Sd: '214 cm²',
  Mms: '46 g',
  Cms: '0.54 mm/N',
  Rms: '2.7 kg/s',
  Re: '5.4 Ω',
  Bl: '11.3 T·m',
});

/** One vent, two vents to the room, and one vent from chamber to chamber. */
export function boxes({ rear, low, high }: Box) {
  const ahead = {
    frontVolume: '12 L',
    frontTuning: high,
    frontQL: 7,
  } as const;
  const two = { ...ahead, rearVolume: rear, rearTuning: low, rearQL: 7 };
  return {
    closed: fourthOrderBandPass({ drivers, rearVolume: rear, ...ahead }),
    parallel: parallelBandPass({ drivers, ...two }),
    series: seriesBandPass({ drivers, ...two }),
  };
}

/** Where its level is judged. */
const range = { from: '15 Hz', to: '400 Hz' } as const;

export const grid = logarithmicGrid(15, 300, 121);

const ofEach = <T>(box: Box, of: (system: System) => T) => {
  const { closed, parallel, series } = boxes(box);
  return {
    closed: of(closed as System),
    parallel: of(parallel as System),
    series: of(series as System),
  };
};

/** How low a tone below the band is asked for. */
const below = 0.5;

export const solve = (box: Box) =>
  ofEach(box, (system) => {
    const passed = passband(system, range);
    const tone = below * box.low;
    const [travel] = respond(system, [tone]).displacementPeak;
    return {
      swept: respond(system, grid, { driveVoltageRms: '2.83 V' }),
      lower: passed.ok ? passed.lower : undefined,
      upper: passed.ok ? passed.upper : undefined,
      travel: travel as number,
    };
  });

export function answers(box: Box, found = solve(box)) {
  const hertz = (f: number | undefined) =>
    f === undefined ? 'beyond the range' : format('frequency', f, 'Hz');
  const { closed, parallel, series } = found;
  const deeper =
    parallel.lower !== undefined &&
    closed.lower !== undefined &&
    parallel.lower < closed.lower;
  const times = parallel.travel / closed.travel;
  return {
    closedLow: hertz(closed.lower),
    closedHigh: hertz(closed.upper),
    parallelLow: hertz(parallel.lower),
    parallelHigh: hertz(parallel.upper),
    seriesLow: hertz(series.lower),
    seriesHigh: hertz(series.upper),
    deeper: deeper ? 'reaches deeper' : 'does not reach deeper',
    tone: hertz(below * box.low),
    times: `${times.toFixed(1)} times as far`,
    price: times > 1 ? 'farther' : 'less far',
  };
}
