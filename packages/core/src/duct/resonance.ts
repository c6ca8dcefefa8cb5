import { type Air, readAir, standardAir } from '../air/index.js';
import type { Warning } from '../fault/index.js';
import {
  type AreaInput,
  type Frequency,
  type LengthInput,
  positive,
  readFields,
  si,
  type VolumeInput,
} from '../quantity/index.js';

/** A cavity with one neck. */
export interface ResonatorInput {
  /** Air volume of the cavity. */
  readonly volume: VolumeInput;
  /** Cross-section of the neck; for several equal necks, the sum. */
  readonly area: AreaInput;
  /** Effective length of the neck, both end corrections included. */
  readonly length: LengthInput;
}

export interface Resonance {
  readonly frequency: Frequency;
  readonly warnings: readonly Warning[];
}

const resonatorShape = { volume: positive('volume'), area: positive('area'), length: positive('length') };

/**
 * Helmholtz resonance of a cavity with a neck: the air in the neck is a mass, and the air in the cavity is a spring.
 *
 * $$ f_0 = \frac{c}{2\pi}\sqrt{\frac{S}{V\,\ell}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `volume` | m³ | air volume |
 * | $S$ | `area` | m² | cross-section of the neck |
 * | $\ell$ | `length` | m | effective length of the neck |
 * | $c$ | `speedOfSound` | m/s | speed of sound |
 *
 * @validity $k\,\max(\ell, V^{1/3}) \le 0.5$ with $k = 2\pi f_0/c$, otherwise the warning `outside-validity`. At this bound the
 *   result is up to 4 % too high, because the air in the neck is taken to be incompressible.
 * @neglects losses, radiation, flow, the cavity's own modes.
 * @returns Hz, with warnings
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example resonance({ volume: '30 L', area: '40 cm²', length: '12 cm' }) // 57.7 Hz
 */
export function resonance(input: ResonatorInput, air: Air = standardAir): Resonance {
  readAir(air);
  const { volume, area, length } = readFields('resonator', input, resonatorShape);
  const k = resonanceWaveNumber(area, volume, length);
  return {
    frequency: si('frequency', (k * air.speedOfSound) / (2 * Math.PI)),
    warnings: lumpedWarnings(k, length, volume),
  };
}

/** $k = \sqrt{S/(V\ell)}$ in rad/m, for unchecked SI numbers. */
export const resonanceWaveNumber = (area: number, volume: number, length: number): number =>
  Math.sqrt(area / (volume * length));

/** Warns when the neck or the cavity is not small compared with the wavelength. */
export function lumpedWarnings(k: number, length: number, volume: number): Warning[] {
  const sizes = [
    ['k·length', k * length],
    ['k·volume^(1/3)', k * Math.cbrt(volume)],
  ] as const;
  return sizes
    .filter(([, size]) => size > 0.5)
    .map(([path, got]) => ({
      code: 'outside-validity',
      path,
      got,
      expected: 'at most 0.5, small compared with the wavelength',
    }));
}
