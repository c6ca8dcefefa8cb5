import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import type { Driver } from '../driver/index.js';
import { compileLumped } from '../network/index.js';
import {
  optional,
  positive,
  type RatioInput,
  type Resistance,
  readFields,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { boxAir, boxCompliance, setBoxAir } from './box-air.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf, withLaws } from './family.js';

/** A closed box as people write it. */
export interface ClosedBoxInput extends DrivenInput {
  /** Volume of the air in the box, without what drivers and bracing take up. */
  readonly netVolume: VolumeInput;
  /**
   * Factor by which the filling enlarges the compliance of the air. It is 1 (default) without filling, and at most 1.4, the
   * ratio of specific heats, where loose fibre keeps all the air at one temperature.
   */
  readonly fillGain?: RatioInput;
  /** Quality factor of the leaks at the system resonance; leave it out if there are none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at the system resonance; leave it out if there is none. */
  readonly QA?: RatioInput;
}

/** A closed box as it was read, in SI units. */
export interface ClosedBoxSpec extends DrivenSpec {
  readonly netVolume: Volume;
  readonly fillGain: number;
  readonly QL?: number;
  readonly QA?: number;
}

/** The air of a closed box: everything that does not depend on its drivers. */
export const closedAirShape = {
  netVolume: positive('volume'),
  fillGain: optional(positive('ratio')),
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
};

const shape = { ...drivenShape, ...closedAirShape };

/** $\omega_c$ of the cone on its suspension and on air of compliance `Cab`, rad/s. SI numbers, unchecked. */
export const closedAngularFrequency = ({ Sd, Mms, Cms }: Driver, Cab: number): number =>
  Math.sqrt((1 / Cms + Sd ** 2 / Cab) / Mms);

/** The family as the easy door takes it: lumped elements alone. */
const lumped: Family<ClosedBoxSpec, ClosedBoxInput> = {
  name: 'closed',
  compile: compileLumped,
  losses: ['QL', 'QA'],
  unknowns: [{ field: 'netVolume', unit: equivalentVolume, starts: [1, 0.1, 10] }],
  read: (input) => {
    const { drivers, fillGain = 1, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, shape);
    return { drivers: asGroup(drivers), ...box, fillGain, sourceResistance };
  },
  topology: ({ drivers, sourceResistance, ...losses }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const air = boxAir(losses);
    return { elements: [...elements, ...air.elements], probes, outlets: [cone, ...air.leaks] };
  },
  values: ({ drivers, sourceResistance, netVolume, fillGain, ...losses }, air, set) => {
    const Cab = boxCompliance(netVolume, fillGain, air);
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    setBoxAir(Cab, closedAngularFrequency(drivers.equivalent, Cab), losses, set);
  },
};

/** The family of closed boxes: motor and suspension against the spring of the enclosed air. */
export const closedFamily: Family<ClosedBoxSpec, ClosedBoxInput> = /* @__PURE__ */ withLaws(lumped);

/**
 * A driver or a group in a closed box, as a network: motor and suspension against the spring of the enclosed air.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^2 T_c^2}{s^2 T_c^2 + s T_c / Q_{tc} + 1}, \quad
 *    f_c = f_s\sqrt{1 + V_{as}/V_b}, \quad Q_{tc} = Q_{ts}\sqrt{1 + V_{as}/V_b} $$
 *
 * This response is what the network gives without leak, absorption, filling and coil inductance. It is checked in tests, not
 * used here. QL and QA hold at the system resonance of the lossless box.
 *
 * @validity frequencies at which the box is small compared with the wavelength
 * @neglects modes of the box, flexing walls, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1972closed1 response function, fc and Qtc
 * @example closedBox({ drivers: driver, netVolume: '40 L' })
 */
export const closedBox = (input: ClosedBoxInput | ClosedBoxSpec, air: Air = standardAir): System<ClosedBoxSpec> =>
  systemOf(lumped, input, air);
