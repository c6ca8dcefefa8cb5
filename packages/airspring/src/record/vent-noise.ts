import type { Air } from '@airspring/core/air';
import type { System } from '@airspring/core/enclosure';
import type { FrequencyGrid } from '@airspring/core/quantity';
import { compileAtLevel } from '@airspring/core/response';
import { noiseOnsets, onsetSpeed, type VentInput, ventLoss } from '@airspring/core/vent';
import type { SharedOpening } from '../kind/quiet-vent.js';
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

/** Up to which level a vent is quiet by every published onset, and from which on it passes all of them, each at its worst tone. */
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
  const speeds = noiseOnsets.map((onset) => {
    const of = openings.map(({ opening, share }) => [onset.at(opening, air), share] as const);
    return band.map((f) => Math.min(...of.map(([at, share]) => onsetSpeed(at, f, air) / share)));
  });
  const told = (pick: (...values: number[]) => number): OnsetTold => {
    const column = band.map((_, i) => {
      const speed = pick(...speeds.map((one) => one[i]!));
      return levels[i]! + 20 * Math.log10(speed / airSpeedPeak[i]!);
    });
    const { value, frequency } = worst(band, column, -1);
    const i = band.indexOf(frequency as never);
    const speed = pick(...speeds.map((one) => one[i]!));
    const place = speeds.findIndex((one) => one[i] === speed);
    return { level: value, frequency, onset: noiseOnsets[place]!.name };
  };
  return { quiet: told(Math.min), noisy: told(Math.max) };
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
