import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { format, logarithmicGrid, si } from '@airspring/core/quantity';
import {
  compileBuilds,
  normal,
  summaryOf,
  within,
} from '@airspring/core/tolerance';

/** What may be changed. The driver is invented. */
export const inputs = {
  suspension: {
    kind: 'ratio',
    label: 'Scatter of the suspension',
    value: '8 %',
    least: '1 %',
    greatest: '10 %',
    step: '1 %',
  },
  motor: {
    kind: 'ratio',
    label: 'Scatter of the motor',
    value: '3 %',
    least: '1 %',
    greatest: '10 %',
    step: '1 %',
  },
  vent: {
    kind: 'ratio',
    label: 'Scatter of the air in the vent',
    value: '3 %',
    least: '1 %',
    greatest: '10 %',
    step: '1 %',
  },
} as const;

interface Wish {
  readonly suspension: number;
  readonly motor: number;
  readonly vent: number;
}

export const box = ventedBox({
  drivers: driver({
    Sd: '330 cm²',
    Mms: '87 g',
    Cms: '0.4 mm/N',
    Rms: '4 kg/s',
    Re: '5.6 Ω',
    Bl: '14.3 T·m',
  }),
  netVolume: '45 L',
  fb: '27 Hz',
  QL: 7,
});

export const grid = logarithmicGrid(15, 120, 40);

const scatterFor = ({ suspension, motor, vent }: Wish) => ({
  Cms: normal(suspension),
  Bl: normal(motor),
  vent: normal(vent),
  Cab: normal(0.02),
  leak: within(0.5),
});

/** Four hundred builds in parts. A build depends on the seed and its own number alone: the parts may be done in any order. */
const PARTS = 8;
const EACH = 50;
export const parts = Array.from(
  { length: PARTS },
  (_, i) => (at: Wish) =>
    compileBuilds(box, scatterFor(at), grid)(1, i * EACH, EACH),
);

export const solve = (at: Wish, some = parts.map((part) => part(at))) =>
  summaryOf(box, scatterFor(at), grid, some);

/** What each number of the network is to a builder. */
const called: Readonly<Record<string, string>> = {
  Cms: 'the suspension',
  Bl: 'the motor',
  vent: 'the vent',
  Cab: 'the volume of air',
  leak: 'leaks',
};

export function answers(at: Wish, found = solve(at)) {
  const { f3, firstOrder, level } = found;
  if (!f3.ok) throw new Error(f3.because[0]?.text);
  if (!firstOrder.ok) throw new Error(firstOrder.because[0]?.text);
  const hertz = (f: number) =>
    format('frequency', si('frequency', f), 'Hz', 3);
  const [[most, share] = ['', 0], [next] = ['']] = Object.entries(
    firstOrder.shares,
  ).sort(([, a], [, b]) => b - a);
  // Where the builds lie farthest apart.
  const apart = level.high.map((high, i) => high - level.low[i]!);
  const widest = apart.indexOf(Math.max(...apart));
  const builds = f3.standardDeviation;
  const slopes = firstOrder.standardDeviation;
  return {
    low: hertz(f3.low),
    high: hertz(f3.high),
    middle: hertz(f3.middle),
    most: called[most]!,
    share: `${Math.round(100 * share)} %`,
    next: called[next]!,
    apart: `${apart[widest]!.toFixed(1)} dB`,
    where: hertz(grid[widest]!),
    builds: `${builds.toFixed(2)} Hz`,
    slopes: `${slopes.toFixed(2)} Hz`,
    agree:
      found.warnings.length === 0
        ? 'They agree: the slopes tell the truth here'
        : 'They do not agree: only the builds tell the truth here',
  };
}
