import type { Fault } from '../fault/index.js';
import { type LengthInput, notNegative, optional, positive, type Volume, type VolumeInput } from '../quantity/index.js';
import type { VentGeometry } from './vent-geometry.js';

/** The air that a vent works on: exactly one of the two volumes. */
export interface AirVolumeInput {
  /** Air volume with the vent in place. */
  readonly netVolume?: VolumeInput | undefined;
  /** Air volume with everything in place but the vent. */
  readonly volumeBeforeVent?: VolumeInput | undefined;
  /** Thickness of the panel that holds the vent: this part of its length takes no air. Default 0. */
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

/** Exactly one of the two volumes must be given. */
export function volumeFaults({ netVolume, volumeBeforeVent }: AirVolume): Fault[] {
  if ((netVolume === undefined) !== (volumeBeforeVent === undefined)) return [];
  const code = netVolume === undefined ? 'empty' : 'conflict';
  const expected = 'either netVolume or volumeBeforeVent';
  const remedy = 'Give the air volume with the vent in place, or the one without.';
  return [{ code, path: 'netVolume', got: netVolume, expected, remedy }];
}

/**
 * Net volume as a straight line in the vent's length, $V = a - bL$: SI numbers. With `netVolume` given, $b = 0$, and the
 * solution of a tuning is one formula for both.
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
