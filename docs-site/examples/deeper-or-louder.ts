import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import {
  greatestLevel,
  heatLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import {
  type Frequency,
  format,
  logarithmicGrid,
  si,
  type Volume,
} from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

/** What may be changed. Box and driver are invented. */
export const inputs = {
  netVolume: {
    kind: 'volume',
    label: 'Air in the box',
    value: '45 L',
    least: '25 L',
    greatest: '90 L',
    step: 1.02,
  },
  fb: {
    kind: 'frequency',
    label: 'Middle tuning',
    value: '32 Hz',
    least: '26 Hz',
    greatest: '42 Hz',
    step: 1.01,
  },
  lowest: {
    kind: 'frequency',
    label: 'Lowest tone that must be loud',
    value: '38 Hz',
    least: '26 Hz',
    greatest: '60 Hz',
    step: 1.01,
  },
} as const;

interface Wish {
  readonly netVolume: Volume;
  readonly fb: Frequency;
  readonly lowest: Frequency;
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
  Pe: '200 W',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const limits = [
  ...travelLimit(driver),
  ...heatLimit(driver),
  voltageLimit('28 V'),
];
export const frequencies = logarithmicGrid(16, 120, 90);

/**
 * One box at a low, a middle and a high tuning: how deep, and how loud at
 * each frequency.
 */
export const solve = ({ netVolume, fb, lowest }: Wish) =>
  [fb / 1.25, fb, fb * 1.25].map((tuning) => {
    const box = ventedBox({
      drivers: driver,
      netVolume,
      fb: si('frequency', tuning),
      QL: 7,
    });
    const most = greatestLevel(box, limits, frequencies);
    const { least } = greatestLevel(
      box,
      limits,
      logarithmicGrid(lowest, 120, 40),
    );
    return { tuning, reach: cutoff(box, { drop: 6 }), most, least };
  });

/** A difference of levels as people say it; half a decibel is none. */
const compared = (dB: number): string => {
  if (Math.abs(dB) < 0.5) return 'as loud as the low one';
  return `${format('level', Math.abs(dB), 'dB', 2)} ${dB > 0 ? 'louder' : 'softer'} than the low one`;
};

export function answers(wish: Wish, found = solve(wish)) {
  const [low, middle, high] = found as [
    (typeof found)[0],
    (typeof found)[0],
    (typeof found)[0],
  ];
  const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
  const reach = ({ reach: to }: typeof low) =>
    to.ok ? hertz(to.frequency) : 'no frequency in the band';
  const level = ({ least }: typeof low) =>
    `${Math.round(least.levelHalfSpace)} dB`;
  const deeper =
    low.reach.ok &&
    high.reach.ok &&
    low.reach.frequency < high.reach.frequency * 0.99;
  const louder = high.least.levelHalfSpace - low.least.levelHalfSpace;
  return {
    lowTuning: hertz(low.tuning),
    highTuning: hertz(high.tuning),
    lowReach: reach(low),
    middleReach: reach(middle),
    highReach: reach(high),
    lowLevel: level(low),
    middleLevel: level(middle),
    highLevel: level(high),
    lowBinding: low.least.binding,
    highBinding: high.least.binding,
    lowAt: hertz(low.least.frequency),
    highAt: hertz(high.least.frequency),
    deeper: deeper ? 'deeper' : 'no deeper',
    louder: compared(louder),
    verdict:
      deeper && louder >= 0.5
        ? 'Deeper or louder: not both'
        : 'Here it is no choice between the two',
  };
}
