import { type Air, readAir, standardAir } from '../air/index.js';
import {
  type Frequency,
  type FrequencyInput,
  type Level,
  type Power,
  type PowerInput,
  positive,
  type RatioInput,
  readFields,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { type DriverInput, driver as readDriver } from './driver.js';
import { equivalentVolume } from './equivalent-volume.js';
import { resonanceInAir } from './resonance.js';

/** The Thiele/Small parameters of a driver, as on a data sheet. They follow from the physical parameters and the air. */
export interface DriverParameters {
  /** Resonance in free air, Hz. */
  readonly fs: Frequency;
  /** Quality factor of the suspension alone. */
  readonly Qms: number;
  /** Quality factor of the motor alone, with no resistance between amplifier and terminals. */
  readonly Qes: number;
  /** Quality factor of both together. */
  readonly Qts: number;
  /** Volume of air as compliant as the suspension, m³. */
  readonly Vas: Volume;
  /** Volume of air displaced at Xmax, peak, one way, m³. */
  readonly Vd?: Volume;
  /** Ratio of acoustic to electrical power in the pass band, half space. */
  readonly referenceEfficiency: number;
  /** Level at 1 m for 1 W into Re, half space, pass band, dB. */
  readonly levelHalfSpaceOneWatt: Level;
  /** Level at 1 m for 2.83 V rms at the terminals, half space, pass band, dB. */
  readonly levelHalfSpace2V83: Level;
}

/**
 * The Thiele/Small parameters of a driver in a given air.
 *
 * $$ f_s = \frac{1}{2\pi\sqrt{M_{ms}C_{ms}}},\quad Q_{ms} = \frac{2\pi f_s M_{ms}}{R_{ms}},\quad
 *    Q_{es} = \frac{2\pi f_s M_{ms} R_e}{Bl^2},\quad Q_{ts} = \frac{Q_{es}Q_{ms}}{Q_{es}+Q_{ms}},\quad
 *    V_{as} = \rho c^2 S_d^2 C_{ms},\quad V_d = S_d X_{max} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $M_{ms}$ | `Mms` | kg | moving mass with air load |
 * | $C_{ms}$ | `Cms` | m/N | compliance |
 * | $R_{ms}$ | `Rms` | N·s/m | mechanical resistance |
 * | $S_d$ | `Sd` | m² | cone area |
 * | $R_e$ | `Re` | Ω | resistance of the coil |
 * | $Bl$ | `Bl` | T·m | force factor |
 * | $X_{max}$ | `Xmax` | m | greatest travel, peak, one way |
 *
 * @validity small signals; the levels hold where the driver radiates evenly, $2\pi f\sqrt{S_d/\pi}/c < 1$, and well above fs
 * @neglects what models of coil and suspension add, nonlinearity of the suspension, change of the air load with the air
 * @returns a plain record of SI numbers, with `Vd` only when Xmax is given
 * @throws InputError those of `driver`
 * @source small1972direct definition of the driver parameters, reference efficiency
 * @example driverParameters(ten).fs // 27 Hz
 */
export function driverParameters(input: DriverInput, air: Air = standardAir): DriverParameters {
  readAir(air);
  const { Sd, Mms, Cms, Rms, Re, Bl, Xmax } = readDriver(input);
  const reactance = Math.sqrt(Mms / Cms); // of mass and of compliance at resonance
  const Qms = reactance / Rms;
  const Qes = (reactance * Re) / Bl ** 2;
  const fs = resonanceInAir({ Mms, Cms });
  const Vas = equivalentVolume({ Sd, Cms }, air);
  const efficiency = smallEfficiency(fs, Vas, Qes, air.speedOfSound);
  return {
    fs: si('frequency', fs),
    Qms,
    Qes,
    Qts: (Qes * Qms) / (Qes + Qms),
    Vas: si('volume', Vas),
    ...(Xmax !== undefined && { Vd: si('volume', Sd * Xmax) }),
    referenceEfficiency: efficiency,
    levelHalfSpaceOneWatt: levelOfPower(efficiency, air),
    levelHalfSpace2V83: levelOfPower((efficiency * 2.83 ** 2) / Re, air),
  };
}

const smallEfficiency = (fs: number, Vas: number, Qes: number, c: number): number =>
  ((4 * Math.PI ** 2) / c ** 3) * ((fs ** 3 * Vas) / Qes);

const levelOfPower = (power: number, { density, speedOfSound }: Air): Level =>
  si('level', 10 * Math.log10((power * density * speedOfSound) / (2 * Math.PI * 20e-6 ** 2)));

/** The data of a driver that {@link referenceEfficiency} needs. */
export interface EfficiencyInput {
  readonly fs: FrequencyInput;
  readonly Vas: VolumeInput;
  readonly Qes: RatioInput;
}

const efficiencyShape = { fs: positive('frequency'), Vas: positive('volume'), Qes: positive('ratio') };

/**
 * Reference efficiency of a direct radiator: the ratio of acoustic power to $V^2/R_e$ in the pass band, into half space.
 *
 * $$ \eta_0 = \frac{4\pi^2}{c^3}\,\frac{f_s^3 V_{as}}{Q_{es}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_s$ | `fs` | Hz | resonance in free air |
 * | $V_{as}$ | `Vas` | m³ | volume as compliant as the suspension |
 * | $Q_{es}$ | `Qes` | 1 | quality factor of the motor |
 *
 * @validity the piston range, $2\pi f\sqrt{S_d/\pi}/c < 1$; a value near or above 1 means that the data cannot be right
 * @neglects radiation resistance as a load, voice-coil inductance
 * @returns 1
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source small1972direct reference efficiency
 * @example referenceEfficiency({ fs: '25 Hz', Vas: '100 L', Qes: 0.4 }) // 0.0038
 */
export function referenceEfficiency(input: EfficiencyInput, air: Air = standardAir): number {
  readAir(air);
  const { fs, Vas, Qes } = readFields('driver', input, efficiencyShape);
  return smallEfficiency(fs, Vas, Qes, air.speedOfSound);
}

/**
 * Sound pressure level at 1 m from an acoustic power that spreads evenly into half space.
 *
 * $$ L = 10\lg\frac{P\,\rho c}{2\pi r^2 p_0^2},\quad r = 1\,\mathrm{m},\ p_0 = 20\,\mu\mathrm{Pa\ rms} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $P$ | `power` | W | acoustic power |
 * | $\rho c$ | `air` | Pa·s/m | characteristic impedance of the air |
 *
 * @validity the far field of a source that is small compared with the wavelength
 * @neglects directivity, absorption in air, the room
 * @returns dB re 20 µPa
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source small1972direct sound pressure of the reference efficiency in half space
 * @example levelHalfSpace('1 W') // 112.2 dB
 */
export function levelHalfSpace(power: PowerInput, air: Air = standardAir): Level {
  readAir(air);
  return levelOfPower(readFields('source', { power }, { power: positive('power') }).power as Power, air);
}
