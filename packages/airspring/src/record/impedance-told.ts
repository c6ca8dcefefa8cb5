import type { System } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { type Extremum, features, respond } from '@airspring/core/response';
import { loadOf } from './load.js';
import type { Played } from './played.js';
import { worst } from './worst.js';

/** Frequencies between which the impedance is told, Hz. */
export const IMPEDANCE_RANGE = [5, 500] as const;

/** A peak must be higher by this share than the dips beside it, or a measurement does not show it: common practice. */
const MEASURABLE = 0.02;

/** The peaks and dips that a measurement can show: a peak that hardly rises above a dip beside it goes, and that dip with it. */
function measurable(maxima: readonly Extremum[], minima: readonly Extremum[]) {
  const left = [...maxima, ...minima].sort((a, b) => a.frequency - b.frequency);
  for (;;) {
    const rises = left.slice(1).map(({ value }, i) => Math.abs(Math.log(value / left[i]!.value)));
    const least = rises.indexOf(Math.min(...rises));
    if (least < 0 || rises[least]! > Math.log1p(MEASURABLE)) break;
    left.splice(least, 2);
  }
  return { maxima: left.filter((one) => maxima.includes(one)), minima: left.filter((one) => minima.includes(one)) };
}

/** The peaks and dips of the impedance of a box, and what it is for an amplifier up to a frequency. */
export function impedanceTold(system: System, highest: number): Played['impedance'] {
  const [from, to] = IMPEDANCE_RANGE;
  // The reference concerns levels alone; every system has a maximum.
  const found = features(system, { from: si('frequency', from), to: si('frequency', to), reference: 'maximum' });
  const { frequencies, impedance } = respond(system, logarithmicGrid(from, to, 500));
  return {
    ...measurable(found.impedanceMaxima, found.impedanceMinima),
    least: worst(frequencies, impedance, -1),
    load: loadOf(system, highest),
  };
}
