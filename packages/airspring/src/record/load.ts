import type { System } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { lowestLoad } from '@airspring/core/response';
import { LEAST_OF_NOMINAL, loadRange } from '../job/load.js';

/** Nominal impedances by which loads are named (common practice), Ω. */
const NOMINALS = [32, 16, 12, 8, 6, 4, 3, 2, 1, 0.5];

/** A value and the frequency at which it occurs. */
export interface At {
  readonly frequency: number;
  readonly value: number;
}

/** The load on the amplifier. */
export interface LoadTold {
  /** The least impedance from 20 Hz to the end of the band, or to 200 Hz if the band ends before. */
  readonly least: At;
  /** The greatest customary nominal load that allows this least impedance, Ω; left out below half an ohm. */
  readonly nominal?: number;
}

/** The least impedance of a system in the audible bass, and the nominal load that it may be called. */
export function loadOf(system: System, highest: number): LoadTold {
  const [from, to] = loadRange(highest);
  const { impedance } = lowestLoad(system, { from: si('frequency', from), to: si('frequency', to) });
  const least = { frequency: impedance.frequency as number, value: impedance.value };
  const nominal = NOMINALS.find((one) => LEAST_OF_NOMINAL * one <= least.value);
  return { least, ...(nominal !== undefined && { nominal }) };
}
