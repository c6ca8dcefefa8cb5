import type { System } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';
import { loadOf } from './load.js';
import type { Played } from './played.js';
import { worst } from './worst.js';

/** Frequencies between which the impedance is told, Hz. */
export const IMPEDANCE_RANGE = [5, 500] as const;

/** The peaks and dips of the impedance of a box, and what it is for an amplifier up to a frequency. */
export function impedanceTold(system: System, highest: number): Played['impedance'] {
  const [from, to] = IMPEDANCE_RANGE;
  // The reference concerns levels alone; every system has a maximum.
  const found = features(system, { from: si('frequency', from), to: si('frequency', to), reference: 'maximum' });
  const { frequencies, impedance } = respond(system, logarithmicGrid(from, to, 500));
  return {
    maxima: found.impedanceMaxima,
    minima: found.impedanceMinima,
    least: worst(frequencies, impedance, -1),
    load: loadOf(system, highest),
  };
}
