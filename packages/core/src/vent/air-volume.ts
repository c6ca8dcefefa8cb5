import type { Fault } from '../fault/index.js';
import { type LengthInput, notNegative, optional, positive, type Volume, type VolumeInput } from '../quantity/index.js';
import type { VentGeometry } from './vent-geometry.js';

/** The air volume of the box. Exactly one of the two volumes must be given. */
export interface AirVolumeInput {
  /** Air volume with the vent in place. */
  readonly netVolume?: VolumeInput | undefined;
  /** Air volume with everything in place except the vent. */
  readonly volumeBeforeVent?: VolumeInput | undefined;
  /** Thickness of the panel that holds the vent. This part of the vent takes up no air volume. Default 0. */
  readonly panelThickness?: LengthInput | undefined;
}

export const airVolumeShape = {
  netVolume: optional(positive('volume')),
  volumeBeforeVent: optional(positive('volume')),
  panelThickness: optional(notNegative('length')),
};

interface AirVolume {
  readonly netVolume?: Volume;
  readonly volumeBeforeVent?: Volume;
}

/** The fault of giving both volumes, or neither. */
export function volumeFaults({ netVolume, volumeBeforeVent }: AirVolume): Fault[] {
  if ((netVolume === undefined) !== (volumeBeforeVent === undefined)) return [];
  const code = netVolume === undefined ? 'empty' : 'conflict';
  const expected = 'either netVolume or volumeBeforeVent';
  const remedy = 'Give the air volume with the vent in place, or the one without.';
  return [{ code, path: 'netVolume', got: netVolume, expected, remedy }];
}

/**
 * Net volume as a linear function of the vent's length, $V = a - bL$, in SI numbers. When `netVolume` is given, $b = 0$, so
 * that one formula solves both cases.
 */
export interface VolumeLine {
  readonly constant: number;
  readonly slope: number;
  readonly panel: number;
}

export function volumeLine(vent: VentGeometry, air: AirVolume, panel: number): VolumeLine {
  if (air.netVolume !== undefined) return { constant: air.netVolume, slope: 0, panel };
  return { constant: (air.volumeBeforeVent ?? 0) + vent.outerArea * panel, slope: vent.outerArea, panel };
}
