import type { Air } from '../air/index.js';
import type { Driver } from '../driver/index.js';

/** Powers of metre, kilogram, second and ampere. */
export type Dimension = readonly [m: number, kg: number, s: number, A: number];

/** The factor of a number of that dimension in the other system of units. */
export type By = (dimension: Dimension) => number;

/** The dimensions of the driver's numbers that stand in a network: electrical, mechanical, and its area. */
const driverDimensions = {
  Sd: [2, 0, 0, 0],
  Mms: [0, 1, 0, 0],
  Cms: [0, -1, 2, 0],
  Rms: [0, 1, -1, 0],
  Re: [2, 1, -3, -2],
  Bl: [1, 1, -2, -1],
  Le: [2, 1, -2, -2],
} as const satisfies Readonly<Record<string, Dimension>>;

/**
 * A driver in another system of units, to try scaling.
 *
 * @validity the numbers that stand in a network; other numbers are left out
 * @returns the driver
 * @source own (dimensions of the quantities)
 * @example rescaledDriver(driver, by).Mms // driver.Mms * by([0, 1, 0, 0])
 */
export const rescaledDriver = (driver: Driver, by: By): Driver => {
  const numbers = Object.entries(driverDimensions).flatMap(([field, dimension]) => {
    const value = driver[field as keyof typeof driverDimensions];
    return value === undefined ? [] : [[field, value * by(dimension)]];
  });
  const { coil, suspension } = driver;
  const time = by([0, 0, 1, 0]);
  return {
    ...Object.fromEntries(numbers),
    ...(coil && { coil: coil.scaled(by([2, 1, -3, -2]), time) }),
    ...(suspension && { suspension: suspension.scaled(time) }),
  };
};

/**
 * A medium in another system of units, to try scaling: density, speed of sound, pressure, viscosity.
 *
 * @validity media without heat conduction, since thermal conductivity and specific heat stay as they are
 * @returns the medium
 * @source own (dimensions of the quantities)
 * @example rescaledAir(standardAir, by).density // standardAir.density * by([-3, 1, 0, 0])
 */
export const rescaledAir = (air: Air, by: By): Air =>
  ({
    ...air,
    density: air.density * by([-3, 1, 0, 0]),
    speedOfSound: air.speedOfSound * by([1, 0, -1, 0]),
    pressure: air.pressure * by([-1, 1, -2, 0]),
    viscosity: air.viscosity * by([-1, 1, -1, 0]),
  }) as Air;
