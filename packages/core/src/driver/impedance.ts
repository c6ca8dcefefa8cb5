import type { ComplexColumn } from '../numeric/index.js';
import { type FrequencyGrid, frequencyGrid } from '../quantity/index.js';
import { coilOf } from './coil-of.js';
import { constantSuspension } from './constant-suspension.js';
import { type Driver, type DriverInput, driver as readDriver } from './driver.js';
import { parametersOf } from './model.js';

/** Fills `out[0…f.length)` with impedances in Ω, and allocates nothing. */
export type ImpedanceKernel = (f: FrequencyGrid, out: ComplexColumn) => void;

/** The electrical parameters of a voice coil. */
export type Coil = Pick<Driver, 'Re' | 'Le' | 'coil'>;

/**
 * Compiles the impedance of a blocked voice coil: its resistance, and what its model adds.
 *
 * $$ Z_E = R_e + Z_{coil}(\omega) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $R_e$ | `Re` | Ω | DC resistance |
 * | $Z_{coil}$ | `coil` | Ω | the coil model; by default the inductance `Le` |
 *
 * @validity that of the coil model
 * @neglects dependence on the position of the coil, on current and on temperature
 * @returns a kernel; exp(+jωt)
 * @source small1972direct circuit of the driver: Re in series with the inductance of the coil
 * @example compileCoilImpedance(driver)(grid, { re, im })
 */
export function compileCoilImpedance(driver: Coil): ImpedanceKernel {
  const coil = coilOf(driver);
  const parameters = coil && parametersOf(coil);
  const one = new Float64Array(2);
  return (f, { re, im }) => {
    for (let i = 0; i < f.length; i++) {
      if (coil && parameters) coil.impedance(parameters, 2 * Math.PI * f[i]!, one);
      re[i] = driver.Re + one[0]!;
      im[i] = one[1]!;
    }
  };
}

/**
 * Compiles the impedance at the terminals of a driver in free air.
 *
 * $$ Z = Z_E + \frac{Bl^2}{R_{ms} + j\omega M_{ms} + 1/(j\omega C_{ms}\,c(\omega))} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z_E$ | `Re` `Le` `coil` | Ω | impedance of the blocked coil |
 * | $Bl$ | `Bl` | T·m | force factor |
 * | $M_{ms}, C_{ms}, R_{ms}$ | `Mms` `Cms` `Rms` | kg, m/N, N·s/m | the moving parts |
 * | $c$ | `suspension` | 1 | compliance over Cms, of the suspension model; by default 1 |
 *
 * @validity small signals, with no box or baffle close enough to change the air load in Mms
 * @neglects radiation resistance
 * @returns a kernel; exp(+jωt)
 * @source small1972direct driver impedance; measurement appendix
 * @example compileFreeAirImpedance(driver)(grid, { re, im })
 */
export function compileFreeAirImpedance(driver: Driver): ImpedanceKernel {
  const { Mms, Cms, Rms, Bl, suspension = constantSuspension } = driver;
  const coil = compileCoilImpedance(driver);
  const parameters = parametersOf(suspension);
  const motor = Bl * Bl;
  const c = new Float64Array(2);
  return (f, out) => {
    coil(f, out);
    const { re, im } = out;
    for (let i = 0; i < f.length; i++) {
      const omega = 2 * Math.PI * f[i]!;
      suspension.compliance(parameters, omega, c);
      // 1/(jωC) = (−C'' − jC')/(ω |C|²)
      const stiffness = 1 / (omega * Cms * (c[0]! * c[0]! + c[1]! * c[1]!));
      const resistance = Rms - c[1]! * stiffness;
      const reactance = omega * Mms - c[0]! * stiffness;
      const admittance = motor / (resistance * resistance + reactance * reactance);
      re[i] = re[i]! + admittance * resistance;
      im[i] = im[i]! - admittance * reactance;
    }
  };
}

/** Checks the frequencies and runs a kernel over them once. */
function swept(kernel: ImpedanceKernel, frequencies: ArrayLike<number>): ComplexColumn {
  const grid = frequencyGrid(frequencies);
  const out = { re: new Float64Array(grid.length), im: new Float64Array(grid.length) };
  kernel(grid, out);
  return out;
}

/**
 * Impedance of the blocked voice coil at frequencies in Hz, as {@link compileCoilImpedance}.
 *
 * @validity as {@link compileCoilImpedance}
 * @returns Ω
 * @throws InputError those of `driver` and `frequencyGrid`
 * @source small1972direct circuit of the driver: Re in series with the inductance of the coil
 * @example coilImpedance(ten, [1000]) // re 5.6, im 5.65
 */
export const coilImpedance = (driver: DriverInput, frequencies: ArrayLike<number>): ComplexColumn =>
  swept(compileCoilImpedance(readDriver(driver)), frequencies);

/**
 * Impedance of a driver in free air at frequencies in Hz, as {@link compileFreeAirImpedance}.
 *
 * @validity as {@link compileFreeAirImpedance}
 * @returns Ω
 * @throws InputError those of `driver` and `frequencyGrid`
 * @source small1972direct driver impedance; measurement appendix
 * @example freeAirImpedance(ten, [27]) // re 56.0, im 0.153
 */
export const freeAirImpedance = (driver: DriverInput, frequencies: ArrayLike<number>): ComplexColumn =>
  swept(compileFreeAirImpedance(readDriver(driver)), frequencies);
