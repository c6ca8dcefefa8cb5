import { matrixExponential } from '@airspring/core/numeric';
import { optional, positive, type RatioInput, readFields, type TimeInput } from '@airspring/core/quantity';

/** How a coil gets warm and passes its heat on: to the magnet, and from there to the air. */
export interface CoilHeatInput {
  /** Rise of the coil over the magnet in the long run, K/W. */
  readonly coilRise: RatioInput;
  /** Time constant of the coil on the magnet. */
  readonly coilTime: TimeInput;
  /** Rise of the magnet over the air in the long run, K/W. */
  readonly magnetRise: RatioInput;
  /** Time constant of the magnet in the air. */
  readonly magnetTime: TimeInput;
  /** Rise of the resistance with temperature, 1/K; default 0.00393, copper at 20 °C. */
  readonly perKelvin?: RatioInput;
}

/** The same as thermal resistances, K/W, and capacities, J/K. */
export interface CoilHeat {
  readonly coilResistance: number;
  readonly coilCapacity: number;
  readonly magnetResistance: number;
  readonly magnetCapacity: number;
  readonly perKelvin: number;
}

const shape = {
  coilRise: positive('ratio'),
  coilTime: positive('time'),
  magnetRise: positive('ratio'),
  magnetTime: positive('time'),
  perKelvin: optional(positive('ratio')),
};

/**
 * The heat of a voice coil in two stages: what it takes up and passes on to the magnet, and what that passes on to the air.
 *
 * $$ C_c \dot T_c = P - \frac{T_c - T_m}{R_c},\quad C_m \dot T_m = \frac{T_c - T_m}{R_c} - \frac{T_m}{R_m},\quad
 *    R_e(T_c) = R_e\,(1 + \alpha T_c) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $R_c, R_m$ | `coilRise`, `magnetRise` | K/W | rise for each watt |
 * | $C_c, C_m$ | `coilTime`, `magnetTime` | J/K | time constants over these |
 * | $\alpha$ | `perKelvin` | 1/K | temperature coefficient |
 * | $T_c, T_m$ | | K | rises over the temperature at which Re was measured |
 *
 * @validity a coil of one temperature throughout
 * @neglects the air that the cone moves past the coil, eddy currents that heat the iron
 * @returns thermal resistances and capacities
 * @throws InputError those of the fields
 * @source button1992 thermal circuit of two stages
 * @example coilHeat({ coilRise: 1.2, coilTime: '20 s', magnetRise: 0.8, magnetTime: '1800 s' })
 */
export function coilHeat(input: CoilHeatInput): CoilHeat {
  const { coilRise, coilTime, magnetRise, magnetTime, perKelvin = 0.00393 } = readFields('heat', input, shape);
  return {
    coilResistance: coilRise,
    coilCapacity: coilTime / coilRise,
    magnetResistance: magnetRise,
    magnetCapacity: magnetTime / magnetRise,
    perKelvin,
  };
}

/** The exact step of both temperatures over an interval of constant power: their transition by rows, and what a watt adds. */
export function heatStep(heat: CoilHeat, interval: number): Float64Array {
  const { coilResistance: Rc, coilCapacity: Cc, magnetResistance: Rm, magnetCapacity: Cm } = heat;
  const e = matrixExponential(
    3,
    [-1 / (Rc * Cc), 1 / (Rc * Cc), 1 / Cc, 1 / (Rc * Cm), -(1 / Rc + 1 / Rm) / Cm, 0, 0, 0, 0],
    interval,
  );
  return Float64Array.of(e[0]!, e[1]!, e[3]!, e[4]!, e[2]!, e[5]!);
}
