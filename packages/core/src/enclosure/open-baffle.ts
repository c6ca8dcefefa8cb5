import { type Air, standardAir } from '../air/index.js';
import { compile } from '../network/index.js';
import { type Length, type LengthInput, positive, type Resistance, readFields } from '../quantity/index.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, drivenCone, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';

/** Drivers in an open baffle as people write them. */
export interface OpenBaffleInput extends DrivenInput {
  /** How much farther the sound from the rear of the cone travels around the baffle to the listener than that from its front. */
  readonly path: LengthInput;
}

/** Drivers in an open baffle after reading, in SI units. */
export interface OpenBaffleSpec extends DrivenSpec {
  readonly path: Length;
}

const shape = { ...drivenShape, path: positive('length') };

/** The family of open baffles: both sides of the cone face the air outside, and the rear is heard later. */
export const openBaffleFamily: Family<OpenBaffleSpec, OpenBaffleInput> = {
  name: 'open baffle',
  compile,
  read: (input) => {
    const { drivers, sourceResistance = 0 as Resistance, path } = readFields('baffle', input, shape);
    return { drivers: asGroup(drivers), sourceResistance, path };
  },
  topology: ({ drivers, sourceResistance }) => {
    const { elements, probes } = drivenCone(drivers.equivalent, sourceResistance, { rear: 'ground' });
    return {
      elements,
      probes,
      outlets: [
        { name: 'front', flow: { of: 'flow', element: 'Sd' } },
        { name: 'rear', flow: { of: 'flow', element: 'Sd', sign: -1 }, delay: 'rearDelay' },
      ],
    };
  },
  values: ({ drivers, sourceResistance, path }, air, set) => {
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    set('rearDelay', path / air.speedOfSound);
  },
};

/**
 * A driver or a group in an open baffle, as a network. What the rear of the cone draws in is heard a little later than what its
 * front pushes out, so that the two cancel more at lower tones:
 *
 * $$ U = U_d\left(1 - e^{-j\omega D/c}\right), \quad |U| = 2\,|U_d|\,\left|\sin\frac{\omega D}{2c}\right| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U_d$ | | m³/s | flow of the cone on its suspension alone, as in an infinite baffle |
 * | $D$ | `path` | m | how much farther the sound from the rear travels to the listener |
 * | $c$ | `air` | m/s | speed of sound |
 *
 * This is the limit of low frequencies: it holds up to about $c/(4D)$. Above, the shape of the baffle decides, and the dips of
 * this formula at multiples of $c/D$ are blurred. Below $c/(6D)$ the sum is weaker than the front alone. The level has no
 * asymptote: cut-offs are counted from its maximum in a band, or from a stated level. Like every level in half space it is that
 * of a baffle on a floor that mirrors it.
 *
 * @validity low frequencies, ωD/c below about π/2; a listener on the axis
 * @neglects diffraction at the edges, the air load that a small baffle lacks, reflection from a wall behind it, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source rayleigh1896 sec. 302; two sources of opposite flow, a path apart
 * @example openBaffle({ drivers: driver, path: '45 cm' })
 */
export const openBaffle = (input: OpenBaffleInput | OpenBaffleSpec, air: Air = standardAir): System<OpenBaffleSpec> =>
  systemOf(openBaffleFamily, input, air);
