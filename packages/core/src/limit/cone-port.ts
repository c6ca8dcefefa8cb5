import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { sweptColumns } from '../response/compile.js';
import { compiledSystem } from '../response/index.js';
import { COIL, coilOf, withCoil } from './hot-coil.js';

/** A complex number. */
export type Complex = readonly [re: number, im: number];

export const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
export const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const size = c * c + d * d;
  return [(a * c + b * d) / size, (b * c - a * d) / size];
};
const less = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d];
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

/**
 * Both sides of the motor at each frequency, from two sweeps with different force factors:
 *
 * $$ F = Bl\,i = Z_m v,\qquad a\,e = Z_e i + Bl\,v $$
 */
export function conePorts(
  system: System,
  grid: Float64Array,
): { readonly Bl: number; readonly at: readonly ConePort[] } {
  const { Re } = coilOf(system);
  const { Bl } = system.network.values;
  if (typeof Bl !== 'number') {
    const expected = 'a system with one driver, or several alike: a motor Bl';
    const remedy = 'Give a box with one kind of driver.';
    throw new InputError([{ code: 'inconsistent', path: 'system', got: system.family, expected, remedy }]);
  }
  const sweep = (force: number) => {
    const { network, ...rest } = withCoil(system, Re);
    const compiled = compiledSystem({ ...rest, network: { ...network, values: { ...network.values, Bl: force } } });
    const columns = sweptColumns(compiled, grid);
    return (name: string, i: number): Complex => {
      const { re, im } = columns[compiled.probes.indexOf(name)]!;
      return [re[i]!, im[i]!];
    };
  };
  const [weak, strong] = [sweep(Bl / 2), sweep(Bl)];
  const at = Array.from(grid, (_, i): ConePort => {
    const [v, i1] = [strong('coneVelocity', i), strong(COIL, i)];
    const [w, i2] = [weak('coneVelocity', i), weak(COIL, i)];
    const electrical = over(less(scaled(Bl, v), scaled(Bl / 2, w)), less(i2, i1));
    const induced = scaled(Bl, v);
    const drop = times(electrical, i1);
    return {
      mechanical: over(scaled(Bl, i1), v),
      electrical,
      share: [drop[0] + induced[0], drop[1] + induced[1]],
      flow: over(strong('radiatedFlow', i), v),
    };
  });
  return { Bl, at };
}
