import type { ComplexColumn } from '../numeric/index.js';
import { type FrequencyGrid, frequencyGrid } from '../quantity/index.js';
import { type Driver, type DriverInput, driver as readDriver } from './driver.js';

/** Fills `out[0…f.length)` with impedances in Ω, and allocates nothing. */
export type ImpedanceKernel = (f: FrequencyGrid, out: ComplexColumn) => void;

/** The electrical parameters of a voice coil. */
export type Coil = Pick<Driver, 'Re' | 'Le' | 'R2' | 'L2'>;

/**
 * Compiles the impedance of a blocked voice coil: a resistance, an inductance and a lossy inductance $R_2$ ∥ $L_2$ in series.
 *
 * $$ Z_E = R_e + j\omega L_e + \frac{j\omega L_2 R_2}{R_2 + j\omega L_2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $R_e$ | `Re` | Ω | DC resistance |
 * | $L_e$ | `Le` | H | series inductance, 0 by default |
 * | $R_2$ | `R2` | Ω | eddy-current loss |
 * | $L_2$ | `L2` | H | inductance in parallel with R2; leave both out for a coil without this loss |
 *
 * @validity near the frequency at which R2 and L2 were fitted, because the true loss follows a power of frequency. At the ends
 * of the decade around it the impedance of the pair is 16 to 24 % too small, and its angle is wrong by up to 31°
 * @neglects dependence on the position of the coil, on current and on temperature
 * @returns a kernel; exp(+jωt)
 * @source leach2002 lossy inductor as resistance in parallel with inductance
 * @example compileCoilImpedance(driver)(grid, { re, im })
 */
export function compileCoilImpedance({ Re, Le, R2, L2 }: Coil): ImpedanceKernel {
  const turn = 2 * Math.PI;
  const inductance = Le ?? 0;
  const loss = R2 ?? 0;
  const ratio = R2 === undefined || L2 === undefined ? 0 : L2 / R2;
  return (f, { re, im }) => {
    for (let i = 0; i < f.length; i++) {
      const omega = turn * f[i]!;
      const x = omega * ratio;
      const y = loss / (1 + x * x);
      re[i] = Re + y * x * x;
      im[i] = omega * inductance + y * x;
    }
  };
}

/**
 * Compiles the impedance at the terminals of a driver in free air.
 *
 * $$ Z = Z_E + \frac{Bl^2}{R_{ms} + j\omega M_{ms} + 1/(j\omega C_{ms})} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z_E$ | `Re` `Le` `R2` `L2` | Ω | impedance of the blocked coil |
 * | $Bl$ | `Bl` | T·m | force factor |
 * | $M_{ms}, C_{ms}, R_{ms}$ | `Mms` `Cms` `Rms` | kg, m/N, N·s/m | the moving parts |
 *
 * @validity small signals, with no box or baffle close enough to change the air load in Mms
 * @neglects creep of the suspension, radiation resistance
 * @returns a kernel; exp(+jωt)
 * @source small1972direct driver impedance; measurement appendix
 * @example compileFreeAirImpedance(driver)(grid, { re, im })
 */
export function compileFreeAirImpedance(driver: Driver): ImpedanceKernel {
  const { Mms, Cms, Rms, Bl } = driver;
  const coil = compileCoilImpedance(driver);
  const turn = 2 * Math.PI;
  const softness = 1 / Cms;
  const motor = Bl * Bl;
  return (f, out) => {
    coil(f, out);
    const { re, im } = out;
    for (let i = 0; i < f.length; i++) {
      const omega = turn * f[i]!;
      const reactance = omega * Mms - softness / omega;
      const admittance = motor / (Rms * Rms + reactance * reactance);
      re[i] = re[i]! + admittance * Rms;
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
 * @source leach2002 lossy inductor as resistance in parallel with inductance
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
