import { type Programme, programme } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { powerBetween } from './power-between.js';
import type { Spectrum } from './welch.js';

/** Parts of an octave, as many as `pinkProgramme` of core has. */
const PARTS = 24;
/** Up to this line the constant part of a signal is seen, under the window of the spectrum. */
const LOWEST = 1.5;
/** The least frequency that there is, Hz. */
const LEAST = 1e-4;
/** Of the mean square: what is less is rounding. */
const ROUNDING = 1e-20;

/**
 * A measured spectrum and crest factor as the limits of core take them: shares of the mean square in parts of a 24th of an octave, from
 * one and a half lines to half the sample rate. Where parts are narrower than lines, the power of a line is spread evenly over its width.
 * A constant part moves no air and is left out, so that a signal that never changes has no programme.
 */
export function programmeOfSpectrum(spectrum: Spectrum, crestFactor: number, rms: number): Programme | undefined {
  const lowest = Math.max(LOWEST * spectrum.frequencies[1]!, LEAST);
  const parts = Math.max(1, Math.floor(PARTS * Math.log2(spectrum.frequencies.at(-1)! / lowest) + 1e-9));
  const edge = (i: number) => lowest * 2 ** (i / PARTS);
  const powers = Array.from({ length: parts }, (_, i) => powerBetween(spectrum, edge(i), edge(i + 1)));
  const sum = powers.reduce((total, power) => total + power, 0);
  if (!(sum > ROUNDING * rms * rms)) return undefined;
  return programme({
    frequencies: powers.map((_, i) => edge(i + 0.5)),
    share: powers.map((power) => power / sum),
    crestFactor: si('ratio', Math.max(1, crestFactor)),
  });
}
