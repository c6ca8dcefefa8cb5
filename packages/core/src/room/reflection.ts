import { type Fault, refuse } from '../fault/index.js';
import type { Field } from '../quantity/index.js';

/**
 * The reflection factor of a wall at a frequency in Hz: the pressure that comes back over the pressure that arrives, from −1 to 1. It
 * is real: the wall turns no phase but by its sign. 1 is a rigid wall, 0 is an open window, −1 would be a surface that gives way
 * entirely. It is a function that names its sources, and you can use your own in the same way.
 *
 * @example const panel: Reflection = Object.assign((f: number) => (f < 60 ? 0.5 : 0.9), { sources: ['my-measurement'] });
 */
export interface Reflection {
  (frequency: number): number;
  /** Citation keys, or words of your own. */
  readonly sources: readonly string[];
}

/**
 * A rigid wall, which returns all that arrives. A wall is rigid unless it says otherwise.
 *
 * $$ R = 1 $$
 *
 * @validity heavy walls of masonry, and floors on the ground
 * @neglects panels and windows, which give way below their resonance
 * @returns a {@link Reflection}
 * @source allison1974 the image in a rigid wall is as strong as the source
 * @example boundaryPower([{ distance: '30 cm', reflection: rigid }], [40])
 */
export const rigid: Reflection = Object.assign(
  function rigid() {
    return 1;
  },
  { sources: ['allison1974'] },
);

/**
 * A wall that absorbs a share of the power that arrives, the same at every frequency.
 *
 * $$ R = \sqrt{1 - \alpha} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\alpha$ | `coefficient` | 1 | absorption coefficient, 0 to 1, at the low frequencies that are meant |
 *
 * @validity sound that arrives as a plane wave. Tables of absorption seldom reach below 125 Hz
 * @neglects the phase of the reflection, and how it changes with the angle
 * @returns a {@link Reflection}
 * @throws InputError `not-finite`, `out-of-range`
 * @source morse1968 reflected power is 1 − α of the incident
 * @example absorbing(0.19)(40) // 0.9
 */
export function absorbing(coefficient: number): Reflection {
  if (!(Number.isFinite(coefficient) && coefficient >= 0 && coefficient <= 1)) {
    const code = Number.isFinite(coefficient) ? 'out-of-range' : 'not-finite';
    const remedy = 'Give the share of the power that is absorbed: 0.05 for a wall of brick.';
    const fault: Fault = { code, path: 'coefficient', got: coefficient, expected: 'a number from 0 to 1', remedy };
    refuse([fault]);
  }
  const factor = Math.sqrt(1 - coefficient);
  return Object.assign(
    function absorbing() {
      return factor;
    },
    { sources: ['morse1968'] },
  );
}

/** A field that holds a reflection factor as a function. */
export const reflectionField: Field<Reflection> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'function') return value as Reflection;
    const expected = 'a function of the frequency';
    const remedy = 'Give absorbing(0.1), a function of your own, or leave it out for a rigid wall.';
    faults.push({ code: 'inconsistent', path, got: value, expected, remedy });
    return undefined;
  },
};
