import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, type Impossible, impossible, refuse } from '../fault/index.js';
import { decimalText, type FrequencyInput, positive, readFields } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type AirVolumeInput, airVolumeShape, type VolumeLine, volumeFaults, volumeLine } from './air-volume.js';
import { compileEnd, endLength, flareLength } from './effective-length.js';
import { type Tuning, tuned, tunedWaveNumber } from './tuning.js';
import type { VentGeometry } from './vent-geometry.js';
import { geometry, sectionField, type VentSection } from './vent-input.js';

export interface LengthForTuningInput extends AirVolumeInput {
  readonly vent: VentSection;
  readonly fb: FrequencyInput;
}

const lengthShape = { vent: sectionField, fb: positive('frequency'), ...airVolumeShape };

/**
 * Length of a vent that tunes a box to fb. When the volume without the vent is given, the vent reduces that volume, so the
 * length is the solution of a quadratic equation. The shorter solution is taken.
 *
 * $$ k^2\,(L + \delta)\,(W - n S_o L) = n S \quad\Rightarrow\quad
 *    L = \frac{2\,(n S/k^2 - \delta W)}{b + \sqrt{b^2 - 4\,n S_o\,(n S/k^2 - \delta W)}},\qquad b = W - n S_o\,\delta $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `length` | m | length of each vent |
 * | $W$ | `volumeBeforeVent` | m³ | volume without the vent $+\,n S_o t$; or `netVolume`, with $S_o = 0$ |
 * | $t$ | `panelThickness` | m | thickness of the panel |
 * | $\delta$ | `innerEnd`, `outerEnd` | m | both end corrections, at fb |
 * | $S$ | `diameter` | m² | cross-section of one opening |
 * | $S_o$ | `wall` | m² | cross-section of one tube with its wall |
 * | $n$ | `count` | 1 | number of vents |
 * | $k$ | `fb` | rad/m | $2\pi f_b/c$ |
 *
 * @validity as `tuning`.
 * @neglects as `tuning`.
 * @returns a tuning, or why there is none: `tuning-too-high`, `tuning-too-low` (both state the bound that can be reached),
 *   `vent-fills-box`, `bend-too-long`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `conflict`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example lengthForTuning({ vent: { diameter: '75 mm' }, netVolume: '40 L', fb: '40 Hz' }) // length 0.1531 m
 */
export function lengthForTuning(input: LengthForTuningInput, air: Air = standardAir): Tuning | Impossible {
  readAir(air);
  const fields = readFields('', input, lengthShape);
  const faults: Fault[] = volumeFaults(fields);
  const vent = geometry(faults, fields.vent);
  refuse(faults);
  const line = volumeLine(vent, fields, fields.panelThickness ?? 0);
  const k = (2 * Math.PI * fields.fb) / air.speedOfSound;
  const hertz = (waveNumber: number) => `${decimalText((waveNumber * air.speedOfSound) / (2 * Math.PI), 4)} Hz`;
  const ends = endLength(vent, k);
  const { constant: W, slope } = line;
  const shortest = Math.max(line.panel, flareLength(vent));
  // The length that gives the lowest tuning. A longer vent takes up volume faster than it gains mass.
  const longest = slope > 0 ? (W / slope - ends) / 2 : Number.POSITIVE_INFINITY;
  if (longest <= shortest)
    return impossible('vent-fills-box', 'The tubes are so wide that a longer vent would only raise the tuning.');
  const length = shorterSolution(line, ends, vent.area / k ** 2);
  if (length === undefined) {
    const lowest = hertz(tunedWaveNumber(vent, longest, W - slope * longest));
    const text = `The lowest tuning is ${lowest}, with a vent of ${decimalText(longest, 3)} m. A longer vent takes up too much volume.`;
    return impossible('tuning-too-low', text);
  }
  if (length <= 0 || length < shortest - NANOMETRE) return tooHigh(vent, line, shortest, hertz);
  const taken = vent.bendLength + flareLength(vent);
  if (vent.bendLength > 0 && length < taken - NANOMETRE) {
    const sizes = [taken, length].map((size) => `${decimalText(size, 3)} m`);
    return impossible(
      'bend-too-long',
      `The bends ${taken > vent.bendLength ? 'and flares' : 'alone'} need ${sizes[0]}, but the whole vent must be ${sizes[1]} long.`,
    );
  }
  return tuned(vent, Math.max(length, shortest), line, k, air);
}

/** The shorter solution of the quadratic equation, in a form without cancellation; `undefined` when there is none. */
function shorterSolution({ constant, slope }: VolumeLine, ends: number, mass: number): number | undefined {
  const b = constant - slope * ends;
  const c = mass - ends * constant;
  const discriminant = b * b - 4 * slope * c;
  return discriminant < 0 ? undefined : (2 * c) / (b + Math.sqrt(discriminant));
}

function tooHigh(
  vent: VentGeometry,
  { constant, slope, panel }: VolumeLine,
  shortest: number,
  hertz: (k: number) => string,
): Impossible {
  const highest = hertz(tunedWaveNumber(vent, shortest, constant - slope * shortest));
  const least = shortest > panel ? 'the length of its flares' : 'the thickness of the panel';
  const hole = shortest > 0 ? `with a vent of ${decimalText(shortest, 3)} m, ${least}` : 'without any tube';
  return impossible('tuning-too-high', `The highest tuning is ${highest}, ${hole}. Use a wider vent or more vents.`);
}

/**
 * Compiles {@link lengthForTuning} for a search. The function takes SI numbers, allocates nothing and checks nothing.
 *
 * $$ L = \frac{n S}{k^2 V} - \delta(k),\qquad k = \frac{2\pi f_b}{c} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air volume with the vent in place |
 * | $f_b$ | `fb` | Hz | tuning |
 * | $S$ | `diameter` | m² | cross-section of one opening |
 * | $n$ | `count` | 1 | number of vents |
 * | $\delta$ | `innerEnd`, `outerEnd` | m | both end corrections |
 *
 * @validity as `tuning`, without warnings.
 * @neglects as `tuning`.
 * @returns a function of (netVolume, fb) that gives the length of each vent in m. It gives zero or less when no vent, or no vent
 *   as long as its flares and bends, tunes so high
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example compileLengthForTuning({ diameter: '75 mm' })(0.04, 40) // 0.1531 m
 */
export function compileLengthForTuning(
  section: VentSection,
  air: Air = standardAir,
): (netVolume: number, fb: number) => number {
  readAir(air);
  const faults: Fault[] = [];
  const vent = geometry(faults, readFields('', { vent: section }, { vent: sectionField }).vent);
  refuse(faults);
  const { area } = vent;
  const inner = compileEnd(vent.innerEnd, vent.inner);
  const outer = compileEnd(vent.outerEnd, vent.outer);
  const taken = vent.bendLength + flareLength(vent);
  const perHertz = (2 * Math.PI) / air.speedOfSound;
  // The air that a vent takes is found by asking for one tuning in several volumes: its ends stay as they are.
  let [k, outerAt, innerAt] = [Number.NaN, 0, 0];
  return (netVolume, fb) => {
    if (perHertz * fb !== k) {
      k = perHertz * fb;
      outerAt = outer(k);
      innerAt = inner(k);
    }
    const length = area / (k * k * netVolume) - outerAt - innerAt;
    return length < taken - NANOMETRE ? length - taken : length;
  };
}
