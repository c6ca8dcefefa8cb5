import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { missingProbe } from '../network/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import {
  type FrequencyGrid,
  frequencyGrid,
  optional,
  positive,
  readFields,
  type VoltageRms,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { compileNetwork, probeColumns, probeNamed, probesNamed } from './compile.js';
import { groupDelay } from './group-delay.js';

/** Reference of sound pressure level: 20 µPa rms (@source iso1683). */
export const REFERENCE_PRESSURE = 20e-6;

/** What a system does at each frequency, for one drive. Columns of equal length, SI units; levels in dB. */
export interface Columns {
  readonly frequencies: FrequencyGrid;
  readonly driveVoltageRms: VoltageRms;
  /** Sound pressure level re 20 µPa rms, at 1 m, half space, as of one acoustic point. */
  readonly levelHalfSpace: Float64Array;
  /** Phase of that pressure against the drive, rad, −π to π; without propagation. */
  readonly phase: Float64Array;
  /** −dφ/dω of that pressure, s. */
  readonly groupDelay: Float64Array;
  /** Peak travel of a cone, one way, m: of unlike cones that which moves most. */
  readonly displacementPeak: Float64Array;
  /** Peak of the mean air speed in the narrowest section of the vent, m/s, of several the fastest; only where the system tells it. */
  readonly airSpeedPeak?: Float64Array;
  /** Flow out of the whole system, rms, m³/s. */
  readonly radiatedFlowRms: Float64Array;
  /** Current at the terminals, rms, A. */
  readonly currentRms: Float64Array;
  /** Magnitude of the impedance at the terminals, Ω. */
  readonly impedance: Float64Array;
  /** Phase of the impedance at the terminals, rad. */
  readonly impedancePhase: Float64Array;
}

/**
 * Sound pressure level at 1 m in half space of a radiated flow, for a drive; fills `out`. A kernel: ω ρ |U| / 2π.
 *
 * @validity sources small against the wavelength
 * @neglects directivity, propagation
 * @returns nothing; dB re 20 µPa rms in `out`, −3000 dB for none
 * @source small1972direct sound pressure of a volume flow
 * @example levelColumn(frequencies, flow, standardAir.density, 2.83, levels)
 */
export function levelColumn(
  frequencies: Float64Array,
  flow: ComplexColumn,
  density: number,
  driveVoltageRms: number,
  out: Float64Array,
): void {
  // The floor of 1e-300 turns a null into −3000 dB: a number, and silent.
  const unit = (density * driveVoltageRms) / REFERENCE_PRESSURE;
  for (let i = 0; i < frequencies.length; i++) {
    const a = flow.re[i] as number;
    const b = flow.im[i] as number;
    const size = Math.sqrt(a * a + b * b) * (frequencies[i] as number) * unit;
    out[i] = 20 * Math.log10(Math.max(size, 1e-150));
  }
}

const magnitude = ({ re, im }: ComplexColumn, factor: (i: number) => number): Float64Array =>
  re.map((value, i) => Math.hypot(value, im[i] as number) * factor(i));

/** Terminals through which nothing flows. */
export const openTerminals = (frequency: number): InputError => {
  const [path, remedy] = ['network.probes.current', 'Connect the terminals by something that conducts.'];
  const expected = `a current at ${frequency} Hz: without one there is no impedance`;
  return new InputError([{ code: 'inconsistent', path, got: 0, expected, remedy }]);
};

/** The greatest of several at each frequency; none of none. */
const greatest = (columns: readonly ComplexColumn[], factor: (i: number) => number): Float64Array | undefined =>
  columns.length === 0
    ? undefined
    : columns
        .map((column) => magnitude(column, factor))
        .reduce((most, one) => most.map((value, i) => Math.max(value, one[i] as number)));

/**
 * Sweeps a system: level, phase, group delay, travel, air speed, flow, current and impedance at each frequency.
 *
 * $$ p = \frac{j\omega\rho\,U}{2\pi r},\quad L = 20\log_{10}\frac{|p|}{20\,\mu\mathrm{Pa}},\quad
 *    \hat x = \sqrt2\,\frac{|v|}{\omega},\quad Z = \frac{e}{i} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `radiatedFlowRms` | m³/s | flow out of the whole system: cone, vent and leak |
 * | $L$ | `levelHalfSpace` | dB | level at $r$ = 1 m |
 * | $\hat x$ | `displacementPeak` | m | travel of the cone that moves most |
 * | $Z$ | `impedance` | Ω | at the terminals, without the source resistance |
 *
 * @validity sources small against the wavelength, small signals
 * @neglects directivity, distance between cone and vent, the far side of the half space
 * @throws InputError
 * @source small1972direct
 * @returns one column each, SI units, levels in dB
 * @example respond(closedBox({ drivers, netVolume: '40 L' }), [20, 40, 80], { driveVoltageRms: '2.83 V' }).levelHalfSpace
 */
export function respond(
  system: System,
  frequencies: ArrayLike<number>,
  options: { readonly driveVoltageRms?: VoltageRmsInput } = {},
): Columns {
  const grid = frequencyGrid(frequencies);
  const { driveVoltageRms = 1 as VoltageRms } = readFields('options', options, {
    driveVoltageRms: optional(positive('voltageRms')),
  });
  const network = compileNetwork(system.network);
  const probes = probeColumns(network, grid);
  const flow = probeNamed(probes, 'radiatedFlow');
  const current = probeNamed(probes, 'current');
  const voltage = probeNamed(probes, 'terminalVoltage');
  const displacementPeak = greatest(probesNamed(probes, 'coneVelocity'), (i) => {
    return (Math.SQRT2 * driveVoltageRms) / (2 * Math.PI * (grid[i] as number));
  });
  if (displacementPeak === undefined) throw missingProbe('coneVelocity');
  const airSpeedPeak = greatest(probesNamed(probes, 'ventAirSpeed'), () => Math.SQRT2 * driveVoltageRms);
  const levelHalfSpace = new Float64Array(grid.length);
  levelColumn(grid, flow, system.air.density, driveVoltageRms, levelHalfSpace);
  return {
    frequencies: grid,
    driveVoltageRms,
    levelHalfSpace,
    phase: flow.re.map((re, i) => Math.atan2(re, -(flow.im[i] as number))), // j(re + j im) = −im + j re
    groupDelay: groupDelay(network, grid),
    displacementPeak,
    ...(airSpeedPeak && { airSpeedPeak }),
    radiatedFlowRms: magnitude(flow, () => driveVoltageRms),
    currentRms: magnitude(current, () => driveVoltageRms),
    impedance: voltage.re.map((re, i) => {
      const flows = Math.hypot(current.re[i] as number, current.im[i] as number);
      if (!(flows > 0)) throw openTerminals(grid[i] as number);
      return Math.hypot(re, voltage.im[i] as number) / flows;
    }),
    impedancePhase: voltage.re.map((re, i) => {
      const [a, b, c, d] = [re, voltage.im[i], current.re[i], current.im[i]] as [number, number, number, number];
      return Math.atan2(b * c - a * d, a * c + b * d);
    }),
  };
}

/**
 * Power that a small source of a volume flow sends into the half space.
 *
 * $$ P = \frac{\rho\,\omega^2 |U|^2}{2\pi c} $$
 *
 * @param flowRms rms flow, m³/s
 * @validity sources small against the wavelength
 * @neglects directivity
 * @returns W
 * @source small1972direct
 * @example radiatedPower(0.01, 50, standardAir) // about 0.0055 W
 */
export const radiatedPower = (
  flowRms: number,
  frequency: number,
  air: { readonly density: number; readonly speedOfSound: number },
): number => (air.density * (2 * Math.PI * frequency * flowRms) ** 2) / (2 * Math.PI * air.speedOfSound);
