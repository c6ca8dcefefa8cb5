import { asGroup, type Drivers } from '../enclosure/index.js';
import { positive, readFields, type TemperatureDifferenceInput } from '../quantity/index.js';
import type { Limit } from './limit.js';
import { heatField, type ThermalModelInput, thermalModel } from './thermal-model.js';

/**
 * Temperature of the coil: it settles at most at a stated rise above the air. The rise of its resistance is counted, so this is a limit
 * on the current.
 *
 * $$ I^2 \le \frac{n\,\theta}{(R_v + R_m)\,R_e\,(1 + \alpha\theta)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\theta$ | `rise` | K | greatest rise of the coil above the air |
 * | $n$ | `drivers` | 1 | coils that share the power |
 * | $R_v, R_m, \alpha$ | `heat` | K/W, 1/K | see `thermalModel` |
 *
 * @validity a signal of many minutes, until magnet and frame are hot too. `greatestLevel` drives a cold coil, which takes this current
 *   at a lower drive: it is on the safe side. `greatestLevelWithLosses` drives the hot one
 * @neglects what `thermalModel` neglects
 * @returns one limit
 * @throws InputError those of `thermalModel`; `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source button1992 steady state of the two stages; hughes2008 resistance over temperature
 * @example coilTemperatureLimit(driver, { heat: model, rise: '120 K' })
 */
export function coilTemperatureLimit(
  drivers: Drivers,
  options: { readonly heat: ThermalModelInput; readonly rise: TemperatureDifferenceInput },
): Limit {
  const { count, equivalent } = asGroup(drivers);
  const { heat, rise } = readFields('options', options, {
    heat: heatField,
    rise: positive('temperatureDifference'),
  });
  const { coilToMagnet, magnetToAir, coefficient } = thermalModel(heat);
  const power = (count * rise) / (coilToMagnet + magnetToAir);
  const greatestRms = Math.sqrt(power / (equivalent.Re * (1 + coefficient * rise)));
  const basis = `the coil at most ${rise} K above the air, by a thermal model of two stages`;
  return { name: 'coil temperature', probe: 'current', averaged: true, greatestRms, basis };
}
