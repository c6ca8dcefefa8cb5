import { powerBetween } from './power-between.js';
import type { Spectrum } from './welch.js';

/** The power of a third octave. */
export interface Band {
  /** Exact middle of the band, Hz: 1000 · 10^(n/10). */
  readonly frequency: number;
  /** Mean square within the band, in the square of the unit of the signal. */
  readonly meanSquare: number;
  /** The same as a fraction of the mean square of the whole signal. */
  readonly share: number;
}

/** Distances of frequencies that are told apart, which a band must hold, so that its neighbours' power is not taken for its own. */
const fewestLines = 4;

/**
 * Mean squares of third octaves, from a power spectral density that is constant around each of its lines.
 *
 * @source iec61260-1 (middles and edges by tenths of a decade)
 */
export function thirdOctaves(spectrum: Spectrum, meanSquare: number, resolved: number): readonly Band[] {
  const top = spectrum.frequencies.at(-1)!;
  const middleOf = (n: number) => 1000 * 10 ** (n / 10);
  const lowest = Math.ceil(10 * Math.log10((fewestLines * resolved) / (1000 * (10 ** 0.05 - 10 ** -0.05))));
  const bands: Band[] = [];
  for (let n = lowest; middleOf(n) * 10 ** 0.05 <= top; n++) {
    const power = powerBetween(spectrum, middleOf(n) * 10 ** -0.05, middleOf(n) * 10 ** 0.05);
    bands.push({ frequency: middleOf(n), meanSquare: power, share: power / meanSquare });
  }
  return bands;
}
