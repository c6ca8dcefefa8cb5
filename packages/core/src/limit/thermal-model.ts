import type { Warning } from '../fault/index.js';
import {
  nested,
  optional,
  positive,
  type Resistance,
  readFields,
  si,
  type TemperatureCoefficient,
  type TemperatureCoefficientInput,
  type ThermalResistance,
  type ThermalResistanceInput,
  type Time,
  type TimeInput,
} from '../quantity/index.js';

/** How the coil of one driver warms up, as people write it. */
export interface ThermalModelInput {
  /** From the coil to magnet and frame. */
  readonly coilToMagnet: ThermalResistanceInput;
  /** From magnet and frame to the air. */
  readonly magnetToAir: ThermalResistanceInput;
  /** Time constant of the coil beside a magnet that stays cold: `coilToMagnet` times the heat capacity of the coil. */
  readonly coilTime: TimeInput;
  /** Time constant of the magnet: `magnetToAir` times the heat capacity of magnet and frame. */
  readonly magnetTime: TimeInput;
  /** How much Re rises with each kelvin; default that of copper, 0.393 %/K. */
  readonly coefficient?: TemperatureCoefficientInput;
}

/** How the coil of one driver warms up: heat flows from the coil to the magnet, and from the magnet to the air. A plain record. */
export interface ThermalModel {
  readonly coilToMagnet: ThermalResistance;
  readonly magnetToAir: ThermalResistance;
  readonly coilTime: Time;
  readonly magnetTime: Time;
  readonly coefficient: TemperatureCoefficient;
}

/** At 20 °C (IEC 60028, from memory; example 3.25 of @source hughes2008 agrees to its digits). */
const COPPER = si('temperatureCoefficient', 0.00393);

const shape = {
  coilToMagnet: positive('thermalResistance'),
  magnetToAir: positive('thermalResistance'),
  coilTime: positive('time'),
  magnetTime: positive('time'),
  coefficient: optional(positive('temperatureCoefficient')),
};

/** How a thermal model is read where it is a field; one that was read before is accepted too. */
export const heatField = nested(shape);

/**
 * The thermal model of a driver in two stages, coil and magnet.
 *
 * $$ C_v \dot\theta_v = P - \frac{\theta_v - \theta_m}{R_v},\qquad
 *    C_m \dot\theta_m = \frac{\theta_v - \theta_m}{R_v} - \frac{\theta_m}{R_m},\qquad
 *    \tau_v = R_v C_v,\quad \tau_m = R_m C_m $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\theta_v, \theta_m$ | | K | rise of coil and magnet above the air |
 * | $P$ | | W | heat in the coil, I²Re |
 * | $R_v, R_m$ | `coilToMagnet`, `magnetToAir` | K/W | thermal resistances |
 * | $\tau_v, \tau_m$ | `coilTime`, `magnetTime` | s | time constants of the stages; typically 1 to 10 s, and 10 to 60 min |
 * | $\alpha$ | `coefficient` | 1/K | rise of Re; copper 0.00393 at 20 °C |
 *
 * @validity air near 20 °C, at which Re is stated; resistances that do not depend on level; rises of the coil up to 250 K, beyond
 *   which results carry the warning `outside-validity`
 * @neglects air that the moving cone pumps past the coil, which cools it; heat in the pole pieces; heat that the box keeps
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @returns the model
 * @source button1992 two stages, coil and magnet; hughes2008 coefficient of copper
 * @source klippel2004 coils that bear a rise of over 250 K, and what two stages miss
 * @example thermalModel({ coilToMagnet: '3.5 K/W', magnetToAir: '1.5 K/W', coilTime: '6 s', magnetTime: '1200 s' })
 */
export function thermalModel(input: ThermalModelInput): ThermalModel {
  return { coefficient: COPPER, ...readFields('heat', input, shape) };
}

/**
 * The greatest rise of a coil up to which the model is a prediction, K. Coils that bear more are known (klippel2004), and the model of
 * two stages then misses that a fast coil cools itself.
 */
export const greatestCoilRise = 250;

/** Warns of a rise at which the model ends: the resistance bends, glue softens, and the air that the cone pumps cools the coil. */
export const riseWarnings = (coilRise: number): Warning[] =>
  coilRise <= greatestCoilRise
    ? []
    : [
        {
          code: 'outside-validity',
          path: 'coilRise',
          got: coilRise,
          expected: `a rise of the coil of at most ${greatestCoilRise} K: beyond it the model ends, and few coils survive`,
        },
      ];

/**
 * Resistance of a coil that has warmed up.
 *
 * $$ R = R_e\,(1 + \alpha\,\theta) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $R_e$ | `Re` | Ω | resistance at the temperature of the air |
 * | $\alpha$ | `coefficient` | 1/K | temperature coefficient |
 * | $\theta$ | `rise` | K | rise of the coil above the air |
 *
 * @validity metals, a few hundred kelvins; kernel, checks nothing
 * @neglects curvature of the resistance over temperature
 * @returns Ω
 * @source hughes2008 example 3.25
 * @example hotResistance(si('resistance', 5.6), model, 100) // 7.8 Ω
 */
export const hotResistance = (Re: Resistance, { coefficient }: ThermalModel, rise: number): Resistance =>
  si('resistance', Re * (1 + coefficient * rise));
