import type { Air } from '@airspring/core/air';
import type { System } from '@airspring/core/enclosure';
import type { FrequencyGrid } from '@airspring/core/quantity';
import { compileAtLevel } from '@airspring/core/response';
import { onsetSpan, type SharedOpening, type VentInput, ventLoss } from '@airspring/core/vent';
import { worst } from './worst.js';

/** A level at a tone, and the published onset that is reached there. */
export interface OnsetTold {
  readonly level: number;
  readonly frequency: number;
  readonly onset: string;
}

/** What is known of the noise and of the losses of a vent. */
export interface VentedTold {
  readonly noise: VentNoiseTold;
  readonly compression: CompressionTold;
}

/** Up to which level a vent is quiet by every published onset, and from which on one vent passes all of them, each at its worst tone. */
export interface VentNoiseTold {
  readonly quiet: OnsetTold;
  readonly noisy: OnsetTold;
}

/** How far the sound falls behind since the vent loses, dB, at the tone at which it is worst: by least, steady and greatest losses. */
export interface CompressionTold {
  readonly frequency: number;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** What is known of the noise of vents, from a swept band: level and peak air speed for one drive. */
export function ventNoiseOf(
  openings: readonly SharedOpening[],
  band: FrequencyGrid,
  levels: Float64Array,
  airSpeedPeak: Float64Array,
  air: Air,
): VentNoiseTold {
  const spanAt = onsetSpan(openings, air);
  const spans = Array.from(band, spanAt);
  const told = (side: 'quiet' | 'noisy'): OnsetTold => {
    const column = levels.map((level, i) => level + 20 * Math.log10(spans[i]![side].airSpeedPeak / airSpeedPeak[i]!));
    const { value, frequency } = worst(band, column, -1);
    const { onset } = spans[band.indexOf(frequency as never)]![side];
    return { level: value, frequency, onset: onset.name };
  };
  return { quiet: told('quiet'), noisy: told('noisy') };
}

/** How far the sound falls behind at a drive for each tone of a band. */
export function compressionOf(
  system: System,
  vent: VentInput,
  band: FrequencyGrid,
  drive: Float64Array,
): CompressionTold {
  const losses = ventLoss({ vent });
  const { at } = compileAtLevel(system, band);
  const columns = (['low', 'nominal', 'high'] as const).map((which) => at(losses[which], drive).compression) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const { frequency } = worst(band, columns[1]);
  const i = band.indexOf(frequency as never);
  const [low, nominal, high] = columns.map((column) => column[i]!) as [number, number, number];
  return { frequency, low, nominal, high };
}
