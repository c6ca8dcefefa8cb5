import { type Air, readAir, standardAir } from '../air/index.js';
import { lumpedWarnings, resonanceWaveNumber } from '../duct/resonance.js';
import { type Fault, type Impossible, impossible, refuse, type Warning } from '../fault/index.js';
import {
  type AcousticMass,
  decimalText,
  type Frequency,
  type Length,
  readFields,
  si,
  type Volume,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type AirVolumeInput, airVolumeShape, type VolumeLine, volumeFaults, volumeLine } from './air-volume.js';
import { lengthFaults, movingLength } from './effective-length.js';
import type { VentGeometry } from './vent-geometry.js';
import { geometry, type VentInput, ventField } from './vent-input.js';
import { ventWarnings } from './vent-warnings.js';

export interface TuningInput extends AirVolumeInput {
  readonly vent: VentInput;
}

/** A vent, an air volume, and the frequency to which the vent tunes it. */
export interface Tuning {
  readonly ok: true;
  readonly fb: Frequency;
  /** Length of each vent, from the outer surface to the inner end. */
  readonly length: Length;
  readonly netVolume: Volume;
  readonly volumeBeforeVent: Volume;
  /** Effective length at fb. */
  readonly effectiveLength: Length;
  /** Acoustic mass of all vents together, at fb. */
  readonly acousticMass: AcousticMass;
  readonly warnings: readonly Warning[];
}

const tuningShape = { vent: ventField, ...airVolumeShape };

/** The wave number that solves $k^2\,V\,\ell(k) = nS$. */
export const tunedWaveNumber = (vent: VentGeometry, length: number, volume: number): number =>
  fixedWaveNumber((k) => resonanceWaveNumber(vent.area, volume, movingLength(vent, length, k)));

/**
 * Finds the fixed point of `next`, the wave number that `next` returns unchanged, for a `next` that hardly depends on it. Each
 * step inserts the last result. The root is kept between two bounds. Every fourth step, and every step that would leave the
 * bounds, is a bisection, so the search ends for any continuous end correction. It ends after two steps when the end
 * correction does not depend on $k$.
 */
export function fixedWaveNumber(next: (k: number) => number): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let k = next(0);
  for (let step = 1; step <= 400; step++) {
    const found = next(k);
    if (found > k) low = k;
    else high = k;
    if (Math.abs(found - k) <= 4e-16 * k) return found;
    const bracketed = Number.isFinite(high);
    if (bracketed && high - low <= 4e-16 * high) return high;
    k = bracketed && (step % 4 === 0 || found <= low || found >= high) ? (low + high) / 2 : found;
  }
  return k;
}

/** The record of a tuning, whether the length or the frequency was given. */
export function tuned(vent: VentGeometry, length: number, line: VolumeLine, k: number, air: Air): Tuning {
  const effectiveLength = movingLength(vent, length, k);
  const netVolume = line.constant - line.slope * length;
  return {
    ok: true,
    fb: si('frequency', (k * air.speedOfSound) / (2 * Math.PI)),
    length: si('length', length),
    netVolume: si('volume', netVolume),
    volumeBeforeVent: si('volume', netVolume + vent.outerArea * (length - line.panel)),
    effectiveLength: si('length', effectiveLength),
    acousticMass: si('acousticMass', (air.density * effectiveLength) / vent.area),
    warnings: [...lumpedWarnings(k, effectiveLength, netVolume), ...ventWarnings(vent, k)],
  };
}

/**
 * Frequency to which a vent tunes a box, and the net volume that remains beside the vent.
 *
 * $$ f_b = \frac{c}{2\pi}\sqrt{\frac{n S}{V\,\ell(k_b)}},\qquad V = V_0 - n S_o\,(L - t),\qquad k_b = 2\pi f_b/c $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air volume with the vent in place |
 * | $V_0$ | `volumeBeforeVent` | m³ | air volume without the vent |
 * | $\ell$ | `effectiveLength` | m | length with both end corrections |
 * | $L$ | `length` | m | length of the vent |
 * | $t$ | `panelThickness` | m | thickness of the panel |
 * | $S$ | `diameter` | m² | cross-section of one opening |
 * | $S_o$ | `wall` | m² | cross-section of one tube with its wall |
 * | $n$ | `count` | 1 | number of vents |
 * | $c$ | `speedOfSound` | m/s | speed of sound |
 *
 * @validity $k\ell$ and $kV^{1/3}$ at most 0.5, and $ka$ within the range of each end correction; otherwise warnings
 *   `outside-validity`.
 * @neglects losses, filling, a driver and its compliance, the flexing of panels; what `effectiveLength` neglects.
 * @returns a tuning, or why there is none: `vent-fills-box`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `conflict`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example tuning({ vent: { diameter: '75 mm', length: '150 mm' }, netVolume: '40 L' }) // fb 40.3 Hz
 */
export function tuning(input: TuningInput, air: Air = standardAir): Tuning | Impossible {
  readAir(air);
  const fields = readFields('', input, tuningShape);
  const { length } = fields.vent;
  const panel = fields.panelThickness ?? 0;
  const faults: Fault[] = volumeFaults(fields);
  const vent = geometry(faults, fields.vent);
  faults.push(...lengthFaults(vent, length));
  if (length < panel - NANOMETRE) {
    const expected = `at least the thickness of the panel, ${panel} m`;
    const remedy = 'Measure the length from the outer surface of the panel.';
    faults.push({ code: 'inconsistent', path: 'vent.length', got: length, expected, remedy });
  }
  refuse(faults);
  const line = volumeLine(vent, fields, panel);
  const volume = line.constant - line.slope * length;
  if (!(volume > 0)) {
    const taken = decimalText(1000 * (vent.outerArea * (length - panel)), 3);
    const text = `The vent takes up ${taken} L, but the box has ${decimalText(1000 * (fields.volumeBeforeVent ?? 0), 3)} L.`;
    return impossible('vent-fills-box', text);
  }
  return tuned(vent, length, line, tunedWaveNumber(vent, length, volume), air);
}
