import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { type Length, NANOMETRE, readFields, si } from '../quantity/index.js';
import { compileEnd, flareLength } from './effective-length.js';
import { hydraulicDiameter } from './opening-size.js';
import { geometry, sectionField, type VentSection } from './vent-input.js';

/** A vent along which waves travel, as a tube between two masses of air: what `lineVentedBox` takes. */
export interface WaveTube {
  /** Of a circle of its area. */
  readonly diameter: Length;
  /** Of its straight part. */
  readonly length: Length;
  readonly count: number;
  /** By its perimeter: 1 for a round tube. */
  readonly wallLoss: number;
  /** What each end adds to the straight part; a flare counts as such an end. */
  readonly innerCorrection: Length;
  readonly outerCorrection: Length;
}

/** Its two functions take SI numbers and check nothing. */
export interface VentWithWaves {
  /** The length of each vent that tunes an air volume, m³, to a frequency, Hz; in m, zero or less where none does. */
  readonly length: (netVolume: number, fb: number) => number;
  /** Length of its flares and bends, m: no vent is shorter. */
  readonly shortest: number;
  /** The tube that a vent of a length is, flares included. */
  readonly tube: (length: number) => WaveTube;
}

/**
 * Compiles the length of a vent for a tuning if waves travel along it. The air at its ends counts as masses.
 *
 * $$ L = \frac1k\left[\arctan\left(\frac{S}{kV} - k\,\Delta\ell_1\right) - \arctan(k\,\Delta\ell_2)\right],\quad
 *    k = \frac{2\pi f_b}{c} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `length` | m | length of the straight part |
 * | $S$ | `diameter`, `count` | m² | cross-section of all vents together |
 * | $V, f_b$ | `netVolume`, `fb` | m³, Hz | air volume with the vent in place, and tuning |
 * | $\Delta\ell_1, \Delta\ell_2$ | `innerCorrection`, `outerCorrection` | m | what the ends add, at low frequencies |
 *
 * A vent is never longer than a quarter of a wave. A short one is as long as `compileLengthForTuning` says.
 *
 * @validity waves longer than the width of the vent and than the box
 * @neglects losses, bends, the change of the end corrections with frequency
 * @returns the record {@link VentWithWaves}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 sec. 307: a pipe on a cavity, here with ends as masses
 * @example compileVentWithWaves({ diameter: '100 mm' }).length(0.03, 32) // 0.654 m
 */
export function compileVentWithWaves(section: VentSection, air: Air = standardAir): VentWithWaves {
  readAir(air);
  const faults: Fault[] = [];
  const vent = geometry(faults, readFields('', { vent: section }, { vent: sectionField }).vent);
  refuse(faults);
  const { area, count, innerEnd, outerEnd } = vent;
  const flares = flareLength(vent);
  const shortest = vent.bendLength + flares;
  const inner = compileEnd(innerEnd, vent.inner)(0) + (innerEnd.flare?.radius ?? 0);
  const outer = compileEnd(outerEnd, vent.outer)(0) + (outerEnd.flare?.radius ?? 0);
  const diameter = 2 * Math.sqrt(area / (Math.PI * count));
  const perHertz = (2 * Math.PI) / air.speedOfSound;
  return {
    length: (netVolume, fb) => {
      const k = perHertz * fb;
      const angle = Math.atan(area / (k * netVolume) - k * inner) - Math.atan(k * outer);
      const length = angle / k + flares;
      return length < shortest - NANOMETRE ? length - shortest : length;
    },
    shortest,
    tube: (length) => ({
      diameter: si('length', diameter),
      length: si('length', length - flares),
      count,
      wallLoss: diameter / hydraulicDiameter(vent.inner),
      innerCorrection: si('length', inner),
      outerCorrection: si('length', outer),
    }),
  };
}
