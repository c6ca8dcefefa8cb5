import { solidAngleField } from '../duct/solid-angle-field.js';
import { type Fault, refuse } from '../fault/index.js';

/** Solid angles into which a small source radiates, sr: in free air, on a wall, in an edge of two walls, in a corner of three. */
export const solidAngles = Object.freeze({
  fullSpace: 4 * Math.PI,
  halfSpace: 2 * Math.PI,
  quarterSpace: Math.PI,
  eighthSpace: Math.PI / 2,
});

/** What walls that touch a small source change, against the same source in free air, dB. */
export interface SolidAngleGain {
  /** Of the pressure at a distance, for the same volume flow. */
  readonly pressureOfFlow: number;
  /** Of the radiated power, for the same volume flow. */
  readonly powerOfFlow: number;
  /** Of the pressure at a distance, for the same radiated power. */
  readonly pressureOfPower: number;
}

/**
 * The gain of a small source from walls that it touches, by the solid angle that they leave it.
 *
 * $$ \Delta L_{p|U} = 20\lg\frac{4\pi}{\Omega},\quad \Delta L_{W|U} = \Delta L_{p|W} = 10\lg\frac{4\pi}{\Omega} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\Omega$ | `solidAngle` | sr | solid angle: $4\pi$ in free air, half of that for each wall |
 *
 * @validity a source that is small against the wavelength, and much nearer to each wall than a quarter of a wavelength
 * @neglects walls that give way or end; for a source away from the walls see `boundaryPower` and `compileCorner`
 * @returns the record {@link SolidAngleGain}, dB re free air
 * @throws InputError `not-finite`, `out-of-range`
 * @source allison1974 power of a small source near walls: the limit of touching walls
 * @example solidAngleGain(solidAngles.halfSpace).pressureOfFlow // 6.02 dB
 */
export function solidAngleGain(solidAngle: number): SolidAngleGain {
  const faults: Fault[] = [];
  solidAngleField.read(faults, solidAngle, 'solidAngle');
  refuse(faults);
  const power = 10 * Math.log10(solidAngles.fullSpace / solidAngle);
  return { pressureOfFlow: 2 * power, powerOfFlow: power, pressureOfPower: power };
}
