import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { bracketedRoot, type ComplexColumn, complexColumns } from '../numeric/index.js';
import { sweptColumns } from '../response/compile.js';
import { refuseFallingLoss } from '../response/falling-loss.js';
import { compiledSystem } from '../response/index.js';
import { resistanceOf } from '../response/steady-speed.js';
import { compileVentAtLevel, type VentAtLevel } from '../response/vent-at-level.js';
import { atRise, COIL, coilOf, warmingOf, withCoil } from './hot-coil.js';
import type { ThermalModel } from './thermal-model.js';

const SPEED = 'ventAirSpeed';

/** What a system loses when it is played loud: nothing where both are left out. */
export interface Losses {
  readonly loss?: FlowLoss;
  readonly heat?: ThermalModel;
}

/** A system at one frequency and one strength of motion, in balance with its losses. */
export interface OperatingPoint {
  /** V rms. Beyond any number where the coil would never stop warming up. */
  readonly drive: number;
  /** By how much the resistance of the coil has risen, over the cold one. */
  readonly rise: number;
  /** Real and imaginary part of a probe, per volt of drive. */
  readonly probe: (place: number) => readonly [re: number, im: number];
}

export interface OperatingPoints {
  readonly probes: readonly string[];
  /** The probes without any loss, per volt. */
  readonly linear: readonly ComplexColumn[];
  /** Number of equal coils that warm up, and their common resistance when cold, Ω. */
  readonly count: number;
  readonly Re: number;
  /** Strength of motion that a drive would cause without any loss: peak speed in the vent if that loses, otherwise current, rms. */
  readonly free: (i: number, drive: number) => number;
  readonly at: (i: number, strength: number) => OperatingPoint;
  /** The probes with a cold coil at a strength, per volt of drive. */
  readonly withColdCoil: (i: number, strength: number) => readonly ComplexColumn[];
  /** The point at a drive in V rms. */
  readonly driven: (i: number, drive: number) => OperatingPoint;
}

/**
 * Prepares a system for points of operation. The strength of motion is what is chosen; the drive follows without iteration: the speed
 * in the vent gives its resistance, both give the current in the coil, and the current I gives the resistance of the hot coil,
 *
 * $$ R = \frac{R_e}{1 - \alpha\,(R_v + R_m)\,R_e I^2/n} $$
 *
 * The drive rises with the strength if the rest of the system is passive, so each drive has one point. Each probe is a quotient of two
 * linear functions of R, which the sweeps at Re and 2 Re tell. A point is read before the next one of its frequency is asked for.
 */
export const operatingPoints = (system: System, grid: Float64Array, losses: Losses): OperatingPoints =>
  compileOperatingPoints(system, losses)(grid);

/** The same for questions at many frequencies, one after the other: the network is compiled once. */
export function compileOperatingPoints(system: System, losses: Losses): (grid: Float64Array) => OperatingPoints {
  const { loss, heat } = losses;
  const coil = heat ? coilOf(system) : { Re: 1, count: 1 };
  const sides = (heat ? [withCoil(system, coil.Re), withCoil(system, 2 * coil.Re)] : [system]).map((one) => {
    if (loss) return compileVentAtLevel(one);
    const network = compiledSystem(one);
    return (grid: Float64Array) => ({ probes: network.probes, linear: sweptColumns(network, grid) });
  });
  return (grid) =>
    pointsAt(
      system,
      grid,
      losses,
      coil,
      sides.map((side) => side(grid)),
    );
}

function pointsAt(
  system: System,
  grid: Float64Array,
  { loss, heat }: Losses,
  { Re, count }: { readonly Re: number; readonly count: number },
  sides: readonly (Pick<VentAtLevel, 'probes' | 'linear'> & Partial<Pick<VentAtLevel, 'fill'>>)[],
): OperatingPoints {
  if (loss) refuseFallingLoss(loss, grid, system.air);
  const [{ probes, linear }] = sides as [(typeof sides)[0]];
  const columns = sides.map((side) => (side.fill ? complexColumns(probes.length, grid.length) : side.linear));
  const [cold, hot] = columns as [(typeof columns)[0], (typeof columns)[0]?];
  const [coil, speed] = [probes.indexOf(heat ? COIL : 'current'), probes.indexOf(SPEED)];
  const size = (of: readonly ComplexColumn[], place: number, i: number) =>
    Math.hypot(of[place]!.re[i]!, of[place]!.im[i]!);
  const perVolt = (of: readonly ComplexColumn[], i: number) =>
    Math.max(loss ? Math.SQRT2 * size(of, speed, i) : size(of, coil, i), 1e-150);
  const warming = heat ? warmingOf(heat, Re, count) : 0;

  const settle = (i: number, strength: number): void => {
    const resistance = loss ? resistanceOf(loss, strength, grid[i]!, system.air) : 0;
    sides.forEach(({ fill }, k) => fill?.(i, resistance, columns[k]!));
  };
  const withColdCoil = (i: number, strength: number) => {
    settle(i, strength);
    return cold;
  };
  const at = (i: number, strength: number): OperatingPoint => {
    settle(i, strength);
    const drive = strength / perVolt(cold, i);
    const from = (place: number) => [cold[place]!.re[i]!, cold[place]!.im[i]!] as const;
    const warm = warming * (drive * size(cold, coil, i)) ** 2;
    if (hot === undefined || warm === 0) return { drive, rise: 0, probe: from };
    if (warm >= 1) return { drive: Number.MAX_VALUE, rise: Number.MAX_VALUE, probe: from };
    const rise = warm / (1 - warm);
    const { factor, probe } = atRise(cold, hot, coil, i, rise);
    return { drive: drive * factor, rise, probe };
  };
  const free = (i: number, drive: number) => drive * perVolt(linear, i);
  const driven = (i: number, drive: number): OperatingPoint => {
    const excess = (strength: number) => at(i, strength).drive / drive - 1;
    let high = free(i, drive);
    for (let k = 0; !(excess(high) >= 0); k++, high *= 1.5) if (k === 60) throw noPoint(drive);
    const found = bracketedRoot(excess, 0, high, 1e-14 * high);
    if (!found.ok) throw noPoint(drive);
    return at(i, found.x);
  };
  return { probes, linear, count, Re, free, withColdCoil, at, driven };
}

const noPoint = (drive: number): InputError => {
  const expected = `losses with which some point of operation agrees at ${drive} V: r ≥ 0, and r u that never falls`;
  const remedy = "Try the loss with `flowLossLaws` of '@airspring/core/laws'.";
  return new InputError([{ code: 'inconsistent', path: 'loss.resistance', got: 'no such point', expected, remedy }]);
};
