import type { ThermalModel } from '@airspring/core/limit';
import { matrixExponential } from '@airspring/core/numeric';

/** The exact step of the rises of coil and magnet over an interval of constant power: their transition by rows, and what a watt adds. */
export function heatStep(
  { coilToMagnet, magnetToAir, coilTime, magnetTime }: ThermalModel,
  interval: number,
): Float64Array {
  // Each time constant is a thermal resistance times a heat capacity.
  const [coilCapacity, magnetCapacity] = [coilTime / coilToMagnet, magnetTime / magnetToAir];
  const e = matrixExponential(
    3,
    [
      ...[-1 / coilTime, 1 / coilTime, 1 / coilCapacity],
      ...[1 / (coilToMagnet * magnetCapacity), -(1 / coilToMagnet + 1 / magnetToAir) / magnetCapacity, 0],
      ...[0, 0, 0],
    ],
    interval,
  );
  return Float64Array.of(e[0]!, e[1]!, e[3]!, e[4]!, e[2]!, e[5]!);
}
