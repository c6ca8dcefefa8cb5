import { kept, type System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type CompiledNetwork, missingProbe, undamped } from '../network/index.js';
import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import {
  type FrequencyGrid,
  frequencyGrid,
  optional,
  positive,
  readFields,
  type VoltageRms,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { compiledSystem, probeIndex, probePlaces } from './compile.js';
import { levelOfFlow, REFERENCE_PRESSURE } from './level.js';

/** What a system does at each frequency, for one drive. Columns of equal length, SI units; levels in dB. */
export interface Columns {
  readonly frequencies: FrequencyGrid;
  readonly driveVoltageRms: VoltageRms;
  /** Sound pressure level re 20 µPa rms, at 1 m in half space, as from one acoustic point. */
  readonly levelHalfSpace: Float64Array;
  /** Phase of that pressure relative to the drive, rad, −π to π, without propagation. */
  readonly phase: Float64Array;
  /** Group delay −dφ/dω of that pressure, s. */
  readonly groupDelay: Float64Array;
  /** Peak travel of the cone, one way, m. With several cones, that of the one that moves most. */
  readonly displacementPeak: Float64Array;
  /**
   * Peak of the mean air speed in the narrowest section of the vent, m/s. With several vents, that of the fastest. Present only if
   * the system has such a probe.
   */
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

/** The fault of terminals through which no current flows. */
export const openTerminals = (frequency: number): InputError => {
  const [path, remedy] = ['network.probes.current', 'Connect the terminals through something that conducts.'];
  const expected = `a current at ${frequency} Hz, since there is no impedance without one`;
  return new InputError([{ code: 'inconsistent', path, got: 0, expected, remedy }]);
};

/** The columns of a response without its grid, which a kernel fills. */
export type ResponseColumns = Omit<Columns, 'frequencies' | 'driveVoltageRms'>;

/** Sweeps a compiled network into columns for a drive in V rms. Returns the first place without an answer, or −1. */
export interface ResponseKernel {
  readonly fill: (frequencies: Float64Array, driveVoltageRms: number, out: ResponseColumns) => number;
  readonly columns: (length: number) => ResponseColumns;
}

/**
 * Prepares the sweep of a compiled network into the columns of {@link respond}. The result is a kernel: it checks nothing, and
 * it allocates only when it sees more frequencies than before.
 *
 * @validity as {@link respond}
 * @throws InputError `empty` for a probe that is not there
 * @source small1972direct
 * @example compileResponse(compiledSystem(system), system.air.density).fill(grid, 2.83, columns)
 */
export function compileResponse(network: CompiledNetwork, density: number): ResponseKernel {
  const { probes } = network;
  const [flowAt, currentAt, voltageAt] = ['radiatedFlow', 'current', 'terminalVoltage'].map((name) =>
    probeIndex(probes, name),
  ) as [number, number, number];
  const [cones, vents] = [probePlaces(probes, 'coneVelocity'), probePlaces(probes, 'ventAirSpeed')];
  if (cones.length === 0) throw missingProbe('coneVelocity');
  let room = complexColumns(probes.length + 1, 0);

  const fill = (frequencies: Float64Array, driveVoltageRms: number, out: ResponseColumns): number => {
    const count = frequencies.length;
    if (room[0]!.re.length < count) room = complexColumns(probes.length + 1, count);
    const [slope, ...swept] = room as [ComplexColumn, ...ComplexColumn[]];
    const stopped = network.sweep(frequencies, swept);
    if (stopped >= 0) return stopped;
    network.slope(flowAt, frequencies, slope);
    fillPressure(frequencies, swept[flowAt] as ComplexColumn, slope, density, driveVoltageRms, out);
    const peak = Math.SQRT2 * driveVoltageRms;
    fillGreatest(cones, swept, count, out.displacementPeak);
    for (let i = 0; i < count; i++) out.displacementPeak[i]! *= peak / (2 * Math.PI * frequencies[i]!);
    if (out.airSpeedPeak) {
      fillGreatest(vents, swept, count, out.airSpeedPeak);
      for (let i = 0; i < count; i++) out.airSpeedPeak[i]! *= peak;
    }
    return fillImpedance(
      swept[voltageAt] as ComplexColumn,
      swept[currentAt] as ComplexColumn,
      count,
      driveVoltageRms,
      out,
    );
  };
  const columns = (length: number): ResponseColumns => ({
    levelHalfSpace: new Float64Array(length),
    phase: new Float64Array(length),
    groupDelay: new Float64Array(length),
    displacementPeak: new Float64Array(length),
    ...(vents.length > 0 && { airSpeedPeak: new Float64Array(length) }),
    radiatedFlowRms: new Float64Array(length),
    currentRms: new Float64Array(length),
    impedance: new Float64Array(length),
    impedancePhase: new Float64Array(length),
  });
  return { fill, columns };
}

function fillPressure(
  frequencies: Float64Array,
  { re, im }: ComplexColumn,
  slope: ComplexColumn,
  density: number,
  driveVoltageRms: number,
  { levelHalfSpace, phase, groupDelay, radiatedFlowRms }: ResponseColumns,
): void {
  const unit = density / REFERENCE_PRESSURE;
  for (let i = 0; i < frequencies.length; i++) {
    const f = frequencies[i]!;
    const a = re[i]!;
    const b = im[i]!;
    const size = Math.sqrt(a * a + b * b) * driveVoltageRms;
    radiatedFlowRms[i] = size;
    levelHalfSpace[i] = levelOfFlow(size * f, unit);
    phase[i] = Math.atan2(a, -b); // j(re + j im) = −im + j re
    // Where the flow is zero its phase jumps and has no slope.
    const turn = slope.im[i]!;
    groupDelay[i] = turn - turn === 0 ? -turn / (2 * Math.PI * f) : 0;
  }
}

/** The greatest magnitude of several columns at each frequency. */
function fillGreatest(
  places: readonly number[],
  columns: readonly ComplexColumn[],
  count: number,
  out: Float64Array,
): void {
  places.forEach((place, k) => {
    const { re, im } = columns[place] as ComplexColumn;
    for (let i = 0; i < count; i++) {
      const a = re[i]!;
      const b = im[i]!;
      const size = Math.sqrt(a * a + b * b);
      if (k === 0 || size > out[i]!) out[i] = size;
    }
  });
}

/** Fills impedance and current. Returns the first place at which no current flows, or −1. */
function fillImpedance(
  voltage: ComplexColumn,
  current: ComplexColumn,
  count: number,
  driveVoltageRms: number,
  { impedance, impedancePhase, currentRms }: ResponseColumns,
): number {
  for (let i = 0; i < count; i++) {
    const a = voltage.re[i]!;
    const b = voltage.im[i]!;
    const c = current.re[i]!;
    const d = current.im[i]!;
    const size = Math.sqrt(c * c + d * d);
    if (!(size > 0)) return i;
    currentRms[i] = size * driveVoltageRms;
    impedance[i] = Math.sqrt(a * a + b * b) / size;
    impedancePhase[i] = Math.atan2(b * c - a * d, a * c + b * d);
  }
  return -1;
}

/**
 * Sweeps a system: level, phase, group delay, travel, air speed, flow, current and impedance at each frequency.
 *
 * $$ p = \frac{j\omega\rho\,U}{2\pi r},\quad L = 20\log_{10}\frac{|p|}{20\,\mu\mathrm{Pa}},\quad
 *    \hat x = \sqrt2\,\frac{|v|}{\omega},\quad Z = \frac{e}{i},\quad \tau = -\frac{d\varphi}{d\omega} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `radiatedFlowRms` | m³/s | flow out of the whole system: cone, vent and leak |
 * | $L$ | `levelHalfSpace` | dB | level at $r$ = 1 m |
 * | $\hat x$ | `displacementPeak` | m | travel of the cone that moves most |
 * | $Z$ | `impedance` | Ω | at the terminals, without the source resistance |
 *
 * @validity sources that are small compared with the wavelength; small signals
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
  const { fill, columns } = responseOf(system);
  const out = columns(grid.length);
  const stopped = fill(grid, driveVoltageRms, out);
  if (stopped >= 0) {
    const frequency = grid[stopped]!;
    throw out.currentRms[stopped] === 0 && Number.isFinite(out.levelHalfSpace[stopped])
      ? openTerminals(frequency)
      : undamped(frequency);
  }
  return { frequencies: grid, driveVoltageRms, ...out };
}

/** The kernel of a system, kept with it. */
const responseOf = (system: System): ResponseKernel =>
  kept(system, 'response', () => compileResponse(compiledSystem(system), system.air.density));

/**
 * The power that a small source of a volume flow radiates into half space.
 *
 * $$ P = \frac{\rho\,\omega^2 |U|^2}{2\pi c} $$
 *
 * @param flowRms rms flow, m³/s
 * @validity sources that are small compared with the wavelength
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
