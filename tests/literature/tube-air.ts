/** Air at 300 K in the round figures that tables of tubes are worked out with: that of every fixture of lines. */
import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';

export const tubeAir = {
  ...standardAir,
  density: si('density', 1.1769),
  speedOfSound: si('speed', 347.23),
  viscosity: si('viscosity', 1.846e-5),
  heatCapacityRatio: 1.4017,
  prandtlNumber: 0.841 ** 2,
};
