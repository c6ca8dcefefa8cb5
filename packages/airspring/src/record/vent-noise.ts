import type { Air } from '@airspring/core/air';
import type { System } from '@airspring/core/enclosure';
import { type FrequencyGrid, si } from '@airspring/core/quantity';
import {
  type BoxResonance,
  compileAtLevel,
  compiledSystem,
  type LossByVent,
  probeColumns,
  tuningAtLevel,
} from '@airspring/core/response';
import { onsetSpan, openingOf, type SharedOpening, type VentInput, ventLoss } from '@airspring/core/vent';
import type { BoxOpening } from '../kind/box-kind.js';
import { worst } from './worst.js';

/** A level at a tone, and the published onset that is reached there. */
export interface OnsetTold {
  readonly level: number;
  readonly frequency: number;
  readonly onset: string;
  /** Where it is reached, of several unlike vents: 'the vent of the front chamber'. */
  readonly where?: string;
}

/** What is known of the noise of a vent, or of several, and of their losses. */
export interface OpeningTold {
  /** As a sentence calls it where there is one: 'the vent'. */
  readonly called: string;
  readonly noise: VentNoiseTold;
  /** Left out where no published loss suits the opening. */
  readonly compression?: CompressionTold;
  /** Left out also where several unlike vents or cones share the box. */
  readonly tuning?: TuningTold;
}

/** How the resonance of a box and its vent changes at a drive, V rms: without the loss of the vent and by its steady loss. */
export interface TuningTold {
  readonly drive: number;
  readonly small: BoxResonance;
  readonly large: BoxResonance;
}

/** Up to which level a vent is quiet by every published onset, and from which on one vent passes all of them, each at its worst tone. */
export interface VentNoiseTold {
  readonly quiet: OnsetTold;
  readonly noisy: OnsetTold;
}

/** How far the sound falls behind since the vent loses, dB, at the tone at which it is worst: by steady losses, and the least and the greatest by any published loss. */
export interface CompressionTold {
  readonly frequency: number;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** Openings that one probe tells the air speed of: its peak, m/s, at each tone of a band, for the drive that gives `levels`. */
interface Heard {
  readonly openings: readonly SharedOpening[];
  readonly airSpeedPeak: Float64Array;
  readonly where?: string;
}

/** The probe of the air speed in an opening. */
export const probeOf = ({ of }: Pick<BoxOpening, 'of'>): string =>
  of === undefined ? 'ventAirSpeed' : `ventAirSpeed ${of}`;

/** What is known of the noise of vents in a swept band: the opening that comes to an onset first counts. */
export function ventNoiseOf(
  heard: readonly Heard[],
  band: FrequencyGrid,
  levels: Float64Array,
  air: Air,
): VentNoiseTold {
  const each = heard.map(({ openings, airSpeedPeak, where }) => {
    const spans = Array.from(band, onsetSpan(openings, air));
    const told = (side: 'quiet' | 'noisy'): OnsetTold => {
      const column = levels.map((level, i) => level + 20 * Math.log10(spans[i]![side].airSpeedPeak / airSpeedPeak[i]!));
      const { value, frequency } = worst(band, column, -1);
      const { onset } = spans[band.indexOf(frequency as never)]![side];
      return { level: value, frequency, onset: onset.name, ...(where !== undefined && { where }) };
    };
    return { quiet: told('quiet'), noisy: told('noisy') };
  });
  const first = (side: 'quiet' | 'noisy') =>
    each.map((one) => one[side]).reduce((least, one) => (one.level < least.level ? one : least));
  return { quiet: first('quiet'), noisy: first('noisy') };
}

/** How far the sound falls behind at a drive for each tone of a band. */
export function compressionOf(
  system: System,
  vents: readonly { readonly of?: string | undefined; readonly vent: VentInput }[],
  band: FrequencyGrid,
  drive: Float64Array,
): CompressionTold {
  const losses = vents.map(({ of, vent }) => ({ of, loss: ventLoss({ vent }) }));
  const { at } = compileAtLevel(system, band);
  const columns = (['low', 'nominal', 'high'] as const).map((which) => {
    const [only] = losses;
    const each: LossByVent = Object.fromEntries(losses.map(({ of, loss }) => [of, loss[which]]));
    return at(only!.of === undefined ? only!.loss[which] : each, drive).compression;
  }) as [Float64Array, Float64Array, Float64Array];
  const { frequency } = worst(band, columns[1]);
  const i = band.indexOf(frequency as never);
  const behind = columns.map((column) => column[i]!) as [number, number, number];
  // Below the tuning the vent works against the cone: a greater loss may then leave more sound.
  return { frequency, low: Math.min(...behind), nominal: behind[1], high: Math.max(...behind) };
}

/** What becomes of the tuning at the drive that gives the wanted level where the sound falls behind most. */
export function tuningOf(system: System, vent: VentInput, drive: number): TuningTold | undefined {
  if (!compiledSystem(system).probes.includes('coneVelocity')) return undefined;
  const loss = ventLoss({ vent }).nominal;
  const told = tuningAtLevel(system, { driveVoltageRms: si('voltageRms', drive), loss });
  return told.ok ? { drive, small: told.small, large: told.large } : undefined;
}

/** What is known of the openings of a box, from its levels for 1 V and from the drives for the wanted level; nothing without openings. */
export function openingTold(
  system: System,
  openings: readonly BoxOpening[],
  band: FrequencyGrid,
  levels: Float64Array,
  drive: Float64Array,
): OpeningTold | undefined {
  const [first] = openings;
  if (first === undefined) return undefined;
  const swept = probeColumns(compiledSystem(system), band);
  const heard = openings.map((one): Heard => {
    const { re, im } = swept[probeOf(one)]!;
    return {
      openings: [{ opening: openingOf(one.section), share: 1 }],
      airSpeedPeak: re.map((part, i) => Math.SQRT2 * Math.hypot(part, im[i]!)),
      ...(openings.length > 1 && { where: one.called }),
    };
  });
  const vents = openings.flatMap(({ of, section, length }) =>
    length === undefined ? [] : [{ of, vent: { ...section, length } }],
  );
  const compression = vents.length === openings.length ? compressionOf(system, vents, band, drive) : undefined;
  const [only, ...others] = vents;
  const tuning =
    compression && others.length === 0
      ? tuningOf(system, only!.vent, drive[band.indexOf(compression.frequency as never)]!)
      : undefined;
  return {
    called: first.called,
    noise: ventNoiseOf(heard, band, levels, system.air),
    ...(compression && { compression }),
    ...(tuning && { tuning }),
  };
}
