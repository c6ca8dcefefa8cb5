import { type Air, standardAir } from '../air/index.js';
import { solidAngleField } from '../duct/solid-angle-field.js';
import type { FilterKernel } from '../filter/index.js';
import { optional, positive, readFields } from '../quantity/index.js';
import { multiplyAt } from './multiply.js';
import { compilePath } from './path.js';
import { pressureZoneCorner, type RoomGainInput } from './pressure-zone.js';
import { solidAngles } from './solid-angle.js';

const shape = {
  volume: positive('volume'),
  distance: positive('length'),
  leakCorner: optional(positive('frequency')),
  solidAngle: optional(solidAngleField),
};

/**
 * The even pressure of a closed room, joined to the free field above it. The squares of both magnitudes add, and the phase is the least
 * that such a level can have. It multiplies a response stated at 1 m in half space.
 *
 * $$ \frac{p}{p_{1\,\mathrm m}} = \frac{2\pi}{\Omega}\,\frac{1\,\mathrm m}{r}\,e^{-j\omega r/c}\;
 *    \frac{s^2 + s\sqrt{2\omega_x^2 + \omega_l^2} + \omega_x^2}{s\,(s + \omega_l)},\quad s = j\omega,\quad
 *    \omega_x^2 = \frac{\Omega\,r\,c^2}{V} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `volume` | m³ | air of the room |
 * | $r$ | `distance` | m | from the box to the listener |
 * | $\omega_l/2\pi$ | `leakCorner` | Hz | corner of the leak; 0 unless given |
 * | $\Omega$ | `solidAngle` | sr | solid angle of the free field; $2\pi$ unless given |
 * | $\omega_x/2\pi$ | | Hz | where both are equal: `pressureZoneCorner` |
 *
 * @validity a smooth trend. It is right far below the first mode, and far above it where the room is open or absorbs all; small cabins
 *   follow it better than living rooms
 * @neglects every mode and every reflection; a real room lies many decibels above and below it from half the first mode upwards, and
 *   adds the sound that it returns. That both fields add by power is common practice, and no law
 * @returns a {@link FilterKernel} that multiplies a response in place; exp(+jωt)
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 compliance of a cavity, and simple source; their sum by power is common practice
 * @example compileRoomGain({ volume: '3 m³', distance: '1 m', leakCorner: '4 Hz' })(grid, pressure)
 */
export function compileRoomGain(input: RoomGainInput, air: Air = standardAir): FilterKernel {
  const { volume, distance, leakCorner = 0, solidAngle = solidAngles.halfSpace } = readFields('', input, shape);
  const far = compilePath({ distance, solidAngle }, air);
  const corner = 2 * Math.PI * pressureZoneCorner({ volume, distance, solidAngle }, air);
  const leak = 2 * Math.PI * leakCorner;
  const damping = Math.sqrt(2 * corner * corner + leak * leak);
  return (grid, response) => {
    far(grid, response);
    for (let i = 0; i < grid.length; i++) {
      const w = 2 * Math.PI * grid[i]!;
      const [a, b] = [corner * corner - w * w, w * damping];
      // Divided by jω (jω + ωl), which is −ω (ω − jωl).
      const size = -1 / (w * (w * w + leak * leak));
      multiplyAt(response, i, size * (a * w - b * leak), size * (a * leak + b * w));
    }
  };
}
