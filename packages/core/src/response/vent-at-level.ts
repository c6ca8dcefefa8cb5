import type { Air } from '../air/index.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import { givenSystem } from './compile.js';
import { lossyOpenings } from './lossy-openings.js';
import { noSpeed, resistanceOf, steadySpeed } from './steady-speed.js';
import { betweenSweeps, stepAdmittance } from './two-sweeps.js';

/** A system whose vent may lose by its speed, swept at some frequencies. The i-th of them is asked for by its place. */
export interface VentAtLevel {
  readonly probes: readonly string[];
  /** The probes without the loss, per volt of drive. */
  readonly linear: readonly ComplexColumn[];
  /** Specific resistance of a loss at a drive in V rms, Pa·s/m. */
  readonly resistanceAt: (loss: FlowLoss, i: number, driveVoltageRms: number) => number;
  /** The drive, V rms, at which the air reaches a peak speed in m/s. */
  readonly driveFor: (loss: FlowLoss, i: number, airSpeedPeak: number) => number;
  /** Fills each probe with this specific resistance in the vent, per volt of drive. */
  readonly fill: (i: number, resistance: number, out: readonly ComplexColumn[]) => void;
  /** How much of a probe one pascal in the vent makes, without the loss. */
  readonly perPressure: (i: number, probe: number) => number;
  /** Area of the vent that the speed refers to, m². */
  readonly area: number;
}

/** The only opening of a system. */
export function onlyOpening(system: System) {
  const { openings, sweep, systemWith } = lossyOpenings(system);
  const [opening, ...others] = openings;
  if (others.length === 0) return { ...opening, sweep, systemWith };
  const got = openings.map(({ name }) => name).join(', ');
  const expected = 'a system with one vent, or several alike';
  const remedy = 'Give a box with one kind of vent.';
  throw new InputError([{ code: 'inconsistent', path: 'system', got, expected, remedy }]);
}

/**
 * Prepares a system whose vent loses by its speed. Each probe depends on one resistance in the vent as a quotient of two linear
 * functions of it, so two sweeps tell it for every resistance:
 *
 * $$ U = \frac{U_0}{1 + R\,Y},\qquad X = X_0 - T R U $$
 *
 * $Y$ is the admittance that the vent sees in series with itself, $T$ what a pressure in the vent does to the probe. The speed at
 * which R fits the flow is one number for each frequency, and there is only one if the rest of the system is passive.
 */
export const ventAtLevel = (system: System, frequencies: Float64Array): VentAtLevel =>
  compileVentAtLevel(system)(frequencies);

/** The same for questions at many frequencies, one after the other: the network is compiled once. */
export function compileVentAtLevel(system: System): (frequencies: Float64Array) => VentAtLevel {
  const { air } = givenSystem(system);
  const opening = onlyOpening(system);
  return (frequencies) => sweptVent(opening, air, frequencies);
}

function sweptVent(
  { probe, area, sweep }: ReturnType<typeof onlyOpening>,
  air: Air,
  frequencies: Float64Array,
): VentAtLevel {
  const some = (air.density * air.speedOfSound) / area;
  const [{ probes, columns: linear }, { columns: lossy }] = [sweep([0], frequencies), sweep([some], frequencies)];
  const place = probes.indexOf(probe);
  const [speed, lossySpeed] = [linear[place]!, lossy[place]!];
  const count = frequencies.length;
  // S Y over the specific resistance: u = u0 / (1 + r y).
  const step = some * area;
  const [y] = complexColumns(1, count) as [ComplexColumn];
  for (let i = 0; i < count; i++) {
    const [re, im] = stepAdmittance(speed, lossySpeed, i);
    y.re[i] = re / step;
    y.im[i] = im / step;
  }
  const freeSpeed = (i: number): number => Math.SQRT2 * Math.hypot(speed.re[i]!, speed.im[i]!);
  const resistanceAt = (loss: FlowLoss, i: number, drive: number): number =>
    steadySpeed(drive * freeSpeed(i), y.re[i]!, y.im[i]!, (u) => resistanceOf(loss, u, frequencies[i]!, air))
      .resistance;
  const driveFor = (loss: FlowLoss, i: number, airSpeedPeak: number): number => {
    const r = resistanceOf(loss, airSpeedPeak, frequencies[i]!, air);
    const drive = (airSpeedPeak * Math.hypot(1 + r * y.re[i]!, r * y.im[i]!)) / freeSpeed(i);
    if (!Number.isFinite(drive)) throw noSpeed(airSpeedPeak);
    return drive;
  };
  const fill = (i: number, r: number, out: readonly ComplexColumn[]): void => {
    const { shareRe, shareIm } = betweenSweeps(y.re[i]! * step, y.im[i]! * step, r / step);
    for (let k = 0; k < out.length; k++) {
      const from = linear[k]!;
      const to = lossy[k]!;
      const into = out[k]!;
      const re = to.re[i]! - from.re[i]!;
      const im = to.im[i]! - from.im[i]!;
      into.re[i] = from.re[i]! + shareRe * re - shareIm * im;
      into.im[i] = from.im[i]! + shareRe * im + shareIm * re;
    }
  };
  const perPressure = (i: number, k: number): number => {
    const [from, to] = [linear[k]!, lossy[k]!];
    const pressure = step * Math.hypot(lossySpeed.re[i]!, lossySpeed.im[i]!);
    return Math.hypot(to.re[i]! - from.re[i]!, to.im[i]! - from.im[i]!) / pressure;
  };
  return { probes, linear, resistanceAt, driveFor, fill, perPressure, area };
}
