import { type Air, standardAir } from '../air/index.js';
import { branch, compileLumped } from '../network/index.js';
import { type Resistance, readFields } from '../quantity/index.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf, withLaws } from './family.js';

/** Drivers in a wall without a box, as people write them. */
export type InfiniteBaffleInput = DrivenInput;

/** Drivers in a wall after reading, in SI units. */
export type InfiniteBaffleSpec = DrivenSpec;

/** The space behind the wall takes in what the cone pushes into it, and its pressure does not rise: its impedance is 1/∞ = 0. */
const behind = branch('acousticCompliance', 'behind', ['box', 'ground'], { stands: 'impedance' });

/** The family as the easy door takes it: lumped elements alone. */
const lumped: Family<InfiniteBaffleSpec, InfiniteBaffleInput> = {
  name: 'infinite baffle',
  compile: compileLumped,
  read: (input) => {
    const { drivers, sourceResistance = 0 as Resistance } = readFields('baffle', input, drivenShape);
    return { drivers: asGroup(drivers), sourceResistance };
  },
  topology: ({ drivers, sourceResistance }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    return { elements: [...elements, behind], probes, outlets: [cone] };
  },
  values: ({ drivers, sourceResistance }, _air, set) => {
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    set('behind', Infinity);
  },
};

/** The family of infinite baffles: a closed box whose air is not a spring. */
export const infiniteBaffleFamily: Family<InfiniteBaffleSpec, InfiniteBaffleInput> = /* @__PURE__ */ withLaws(lumped);

/**
 * A driver or a group in a wall, as a network: motor and suspension alone. The room behind the wall is so large that its air is
 * not a spring. The sound in that room does not reach the listener.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^2 T_s^2}{s^2 T_s^2 + s T_s / Q_T + 1}, \quad
 *    \left(\frac{f_3}{f_s}\right)^2 = b + \sqrt{b^2 + 1}, \quad b = \frac{1}{2 Q_T^2} - 1 $$
 *
 * This response is what the network gives without coil inductance. It is checked in tests, not used here. $Q_T$ is Qts with the
 * source resistance added to Re.
 *
 * @validity frequencies at which the cone is small compared with the wavelength; a space behind the wall of many times Vas
 * @neglects the spring and the modes of the space behind, leaks between the two sides, flexing of the wall, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1972direct infinite baffle, response function
 * @example infiniteBaffle({ drivers: driver })
 */
export const infiniteBaffle = (
  input: InfiniteBaffleInput | InfiniteBaffleSpec,
  air: Air = standardAir,
): System<InfiniteBaffleSpec> => systemOf(lumped, input, air);
