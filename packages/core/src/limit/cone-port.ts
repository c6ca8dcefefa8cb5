import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import { sweptColumns } from '../response/compile.js';
import { refuseFallingLoss } from '../response/falling-loss.js';
import { compiledSystem } from '../response/index.js';
import { resistanceOf, steadySpeed } from '../response/steady-speed.js';
import { betweenSweeps } from '../response/two-sweeps.js';
import { ventAtLevel } from '../response/vent-at-level.js';
import { COIL, coilOf, withCoil } from './hot-coil.js';

/** A complex number. */
export type Complex = readonly [re: number, im: number];

export const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
export const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const size = c * c + d * d;
  return [(a * c + b * d) / size, (b * c - a * d) / size];
};
const less = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d];
const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
const scaled = (factor: number, [a, b]: Complex): Complex => [factor * a, factor * b];

/** A system as its motor sees it at one frequency. */
export interface ConePort {
  /** The force that moves the cone, over its velocity, N·s/m. */
  readonly mechanical: Complex;
  /** Between the source and the voltage that the motor induces, Ω, and the share of the source that acts there. */
  readonly electrical: Complex;
  readonly share: Complex;
  /** The flow out of the system, over the velocity of the cone, m². */
  readonly flow: Complex;
}

/** A system as its motor sees it, by the place of a frequency and the peak velocity of the cone, m/s. */
export interface ConePorts {
  readonly Bl: number;
  readonly at: (i: number, velocityPeak: number) => ConePort;
}

/** Reads a probe, per volt of drive. */
type Probe = (name: string) => Complex;

/**
 * Both sides of the motor at each frequency, from two sweeps with different force factors:
 *
 * $$ F = Bl\,i = Z_m v,\qquad a\,e = Z_e i + Bl\,v $$
 */
export function conePorts(system: System, grid: Float64Array): ConePorts {
  const [Bl, weak, strong] = twoMotors(system);
  const sweep = (one: System) => {
    const compiled = compiledSystem(one);
    const columns = sweptColumns(compiled, grid);
    return (i: number) => (name: string) => valueIn(columns, compiled.probes.indexOf(name), i);
  };
  const [weakAt, strongAt] = [sweep(weak), sweep(strong)];
  const ports = Array.from(grid, (_, i) => portOf(Bl, weakAt(i), strongAt(i)));
  return { Bl, at: (i) => ports[i]! };
}

/**
 * The same where the vent loses by the speed of its air. The velocity of the cone is given, so that the vent has one speed that
 * fits its loss. Each side of the port is a quotient of two linear functions of the resistance of the vent.
 */
export function lossyConePorts(system: System, grid: Float64Array, loss: FlowLoss): ConePorts {
  const { air } = system;
  const step = air.density * air.speedOfSound;
  const [Bl, weak, strong] = twoMotors(system);
  const sweep = (one: System) => {
    const vent = ventAtLevel(one, grid);
    const columns = complexColumns(vent.probes.length, grid.length);
    return (i: number, resistance: number) => {
      vent.fill(i, resistance, columns);
      return (name: string) => valueIn(columns, vent.probes.indexOf(name), i);
    };
  };
  const [weakAt, strongAt] = [sweep(weak), sweep(strong)];
  refuseFallingLoss(loss, grid, air);
  const ends = Array.from(grid, (_, i) => {
    const ofEach = (r: number) => {
      const probe = strongAt(i, r);
      const port = portOf(Bl, weakAt(i, r), probe);
      return { port, speed: over(probe('ventAirSpeed'), probe('coneVelocity')) };
    };
    const [open, lossy] = [ofEach(0), ofEach(step)];
    const [re, im] = over(open.speed, lossy.speed);
    return { open, lossy, z: [re - 1, im] as const };
  });
  const at: ConePorts['at'] = (i, velocityPeak) => {
    const { open, lossy, z } = ends[i]!;
    const { resistance } = steadySpeed(velocityPeak * Math.hypot(...open.speed), z[0] / step, z[1] / step, (speed) =>
      resistanceOf(loss, speed, grid[i]!, air),
    );
    const { shareRe, shareIm } = betweenSweeps(z[0], z[1], resistance / step);
    const between = (from: Complex, to: Complex) => plus(from, times([shareRe, shareIm], less(to, from)));
    return {
      ...open.port,
      mechanical: between(open.port.mechanical, lossy.port.mechanical),
      flow: between(open.port.flow, lossy.port.flow),
    };
  };
  return { Bl, at };
}

/** The force factor of a system, and the system with half of it and with all. */
function twoMotors(system: System): readonly [Bl: number, weak: System, strong: System] {
  const { Re } = coilOf(system);
  const { Bl } = system.network.values;
  if (typeof Bl !== 'number') {
    const expected = 'a system with one driver, or several alike: a motor Bl';
    const remedy = 'Give a box with one kind of driver.';
    throw new InputError([{ code: 'inconsistent', path: 'system', got: system.family, expected, remedy }]);
  }
  const { network, ...rest } = withCoil(system, Re);
  const withForce = (force: number): System => ({
    ...rest,
    network: { ...network, values: { ...network.values, Bl: force } },
  });
  return [Bl, withForce(Bl / 2), withForce(Bl)];
}

const valueIn = (columns: readonly ComplexColumn[], place: number, i: number): Complex => [
  columns[place]!.re[i]!,
  columns[place]!.im[i]!,
];

function portOf(Bl: number, weak: Probe, strong: Probe): ConePort {
  const [v, i1] = [strong('coneVelocity'), strong(COIL)];
  const [w, i2] = [weak('coneVelocity'), weak(COIL)];
  const electrical = over(less(scaled(Bl, v), scaled(Bl / 2, w)), less(i2, i1));
  return {
    mechanical: over(scaled(Bl, i1), v),
    electrical,
    share: plus(times(electrical, i1), scaled(Bl, v)),
    flow: over(strong('radiatedFlow'), v),
  };
}
