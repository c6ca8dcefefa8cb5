import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { bracketedRoot, type ComplexColumn, complexColumns } from '../numeric/index.js';
import { sweptColumns } from '../response/compile.js';
import { compiledSystem } from '../response/index.js';
import { ventAtLevel } from '../response/vent-at-level.js';
import type { ThermalModel } from './thermal-model.js';

const [RE, COIL, SPEED] = ['Re', 'coilCurrent', 'ventAirSpeed'] as const;

/** What a system loses when it is played loud: nothing where both are left out. */
export interface Losses {
  readonly loss?: FlowLoss;
  readonly heat?: ThermalModel;
}

/** A system at one frequency and one strength of motion, in balance with its losses. */
export interface OperatingPoint {
  /** V rms. Beyond any number where the coil would never stop warming up. */
  readonly drive: number;
  /** Hot resistance over the cold one. */
  readonly resistanceRatio: number;
  /** Real and imaginary part of a probe, per volt of drive. */
  readonly probe: (place: number) => readonly [re: number, im: number];
}

export interface OperatingPoints {
  readonly probes: readonly string[];
  /** The probes without any loss, per volt. */
  readonly linear: readonly ComplexColumn[];
  /** Number of equal coils, and their common resistance when cold, Ω. */
  readonly count: number;
  readonly Re: number;
  /** Strength of motion that a drive would cause without any loss: peak speed in the vent if that loses, otherwise current, rms. */
  readonly free: (i: number, drive: number) => number;
  readonly at: (i: number, strength: number) => OperatingPoint;
  /** The point at a drive in V rms. */
  readonly driven: (i: number, drive: number) => OperatingPoint;
}

const coilOf = (system: System): { readonly Re: number; readonly count: number } => {
  const Re = system.network.values[RE];
  const { drivers } = system.spec as { readonly drivers?: { readonly count?: number } };
  if (typeof Re === 'number' && system.network.topology.elements.some(({ name }) => name === RE))
    return { Re, count: drivers?.count ?? 1 };
  const expected = 'a system with one driver, or several alike: an element Re';
  const remedy = 'Give a box with one kind of driver.';
  throw new InputError([{ code: 'inconsistent', path: 'system', got: system.family, expected, remedy }]);
};

/** The same system with coils of this resistance, whose current can be read. */
function withCoil(system: System, resistance: number): System {
  const { topology, values } = system.network;
  const probes = { ...topology.probes, [COIL]: { of: 'flow', element: RE } as const };
  return { ...system, network: { topology: { ...topology, probes }, values: { ...values, [RE]: resistance } } };
}

/**
 * Prepares a system for points of operation. The strength of motion is what is chosen; the drive follows without iteration: the speed
 * in the vent gives its resistance, both give the current in the coil, and the current I gives the resistance of the hot coil,
 *
 * $$ R = \frac{R_e}{1 - \alpha\,(R_v + R_m)\,R_e I^2/n} $$
 *
 * The drive rises with the strength if the rest of the system is passive, so each drive has one point. Each probe is a quotient of two
 * linear functions of R, which the sweeps at Re and 2 Re tell.
 */
export function operatingPoints(system: System, grid: Float64Array, { loss, heat }: Losses): OperatingPoints {
  const { Re, count } = coilOf(system);
  const sides = (heat ? [Re, 2 * Re] : [Re]).map((resistance) => {
    const one = withCoil(system, resistance);
    if (loss) return ventAtLevel(one, grid);
    const network = compiledSystem(one);
    return { probes: network.probes, linear: sweptColumns(network, grid), fill: undefined };
  });
  const [{ probes, linear }] = sides as [(typeof sides)[0]];
  const columns = sides.map((side) => (side.fill ? complexColumns(probes.length, grid.length) : side.linear));
  const [cold, hot] = columns as [(typeof columns)[0], (typeof columns)[0]?];
  const [coil, speed] = [probes.indexOf(COIL), probes.indexOf(SPEED)];
  const size = (of: readonly ComplexColumn[], place: number, i: number) => Math.hypot(of[place]!.re[i]!, of[place]!.im[i]!);
  const perVolt = (of: readonly ComplexColumn[], i: number) =>
    Math.max(loss ? Math.SQRT2 * size(of, speed, i) : size(of, coil, i), 1e-150);
  const warming = heat ? (heat.coefficient * (heat.coilToMagnet + heat.magnetToAir) * Re) / count : 0;

  const at = (i: number, strength: number): OperatingPoint => {
    const resistance = loss?.resistance(strength, grid[i]!, system.air) ?? 0;
    sides.forEach(({ fill }, k) => fill?.(i, resistance, columns[k]!));
    const drive = strength / perVolt(cold, i);
    const from = (place: number) => [cold[place]!.re[i]!, cold[place]!.im[i]!] as const;
    const warm = warming * (drive * size(cold, coil, i)) ** 2;
    if (hot === undefined || warm === 0) return { drive, resistanceRatio: 1, probe: from };
    if (warm >= 1) return { drive: Number.MAX_VALUE, resistanceRatio: Number.MAX_VALUE, probe: from };
    // The coil sees z = Re y in series with itself: 1 + z is its current at Re over that at 2 Re.
    const rise = warm / (1 - warm);
    const [[a, b], [c, d]] = [from(coil), [hot[coil]!.re[i]!, hot[coil]!.im[i]!]] as const;
    const [re, im] = [(a * c + b * d) / (c * c + d * d), (b * c - a * d) / (c * c + d * d)];
    const [turnRe, turnIm] = [1 + rise * (re - 1), rise * im];
    const turn = turnRe * turnRe + turnIm * turnIm;
    const [shareRe, shareIm] = [
      (rise * (re * turnRe + im * turnIm)) / turn,
      (rise * (im * turnRe - re * turnIm)) / turn,
    ];
    const probe = (place: number) => {
      const [x, y] = from(place);
      const [dx, dy] = [hot[place]!.re[i]! - x, hot[place]!.im[i]! - y];
      return [x + shareRe * dx - shareIm * dy, y + shareRe * dy + shareIm * dx] as const;
    };
    return { drive: drive * Math.sqrt(turn), resistanceRatio: 1 + rise, probe };
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
  return { probes, linear, count, Re, free, at, driven };
}

const noPoint = (drive: number): InputError => {
  const expected = `losses with which some point of operation agrees at ${drive} V: r ≥ 0, and r u that never falls`;
  const remedy = "Try the loss with `flowLossLaws` of '@airspring/core/laws'.";
  return new InputError([{ code: 'inconsistent', path: 'loss.resistance', got: 'no such point', expected, remedy }]);
};
