import type { Air } from '../air/index.js';
import type { FlowLoss } from '../duct/index.js';
import { InputError } from '../fault/index.js';
import { FLOW_LOSS_REMEDY, resistanceOf } from './steady-speed.js';

/** Speeds at which a loss is tried, m/s: 32 a decade, from still air to a tenth of the speed of sound. */
const SPEEDS = Array.from({ length: 145 }, (_, i) => 1e-3 * 10 ** (i / 32));

/**
 * Refuses a loss whose pressure, resistance × speed, falls while the speed rises. With such a loss several speeds can agree at
 * one drive, and which of them the air has depends on what was before. The loss is tried at the ends and in the middle of the frequencies,
 * at steps of 7.5 % of the speed up to 32 m/s: a fall that is made up for within one step is not seen.
 */
export function refuseFallingLoss(loss: FlowLoss, frequencies: Float64Array, air: Air): void {
  const last = frequencies.length - 1;
  for (const i of new Set([0, last >> 1, last])) {
    const frequency = frequencies[i]!;
    let [slower, before] = [0, 0];
    for (const speed of SPEEDS) {
      const pressure = speed * resistanceOf(loss, speed, frequency, air);
      if (pressure < before * (1 - 1e-9)) {
        const [low, high] = [slower, speed].map((one) => one.toPrecision(3));
        const got = `${before.toPrecision(4)} Pa at ${low} m/s, ${pressure.toPrecision(4)} Pa at ${high} m/s`;
        const expected = 'a loss that obeys the law "loses no less pressure at a greater speed"';
        throw new InputError([
          { code: 'inconsistent', path: 'loss.resistance', got, expected, remedy: FLOW_LOSS_REMEDY },
        ]);
      }
      [slower, before] = [speed, pressure];
    }
  }
}
