import { type Air, standardAir } from '../air/index.js';
import type { DriverGroup } from '../driver/index.js';
import { branch, type Element } from '../network/index.js';
import {
  given,
  notNegative,
  optional,
  positive,
  type RatioInput,
  type Resistance,
  type ResistanceInput,
  readFields,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import {
  asGroup,
  boxAir,
  type Chamber,
  type Drivers,
  driverElements,
  driverProbes,
  partOf,
  type System,
} from './system.js';

/** A closed box as people write it. */
export interface ClosedBoxInput {
  readonly drivers: Drivers;
  /** Air in the box, without what drivers and bracing take. */
  readonly netVolume: VolumeInput;
  /**
   * By how much the filling enlarges the compliance of the air: 1 (default) without any; up to the ratio of specific heats,
   * 1.4, where loose fibre keeps all the air at one temperature.
   */
  readonly fillGain?: RatioInput;
  /** Quality factor of the leaks at the system resonance; leave out for none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at the system resonance; leave out for none. */
  readonly QA?: RatioInput;
  /** Resistance of amplifier and cable in front of the terminals; default 0. */
  readonly sourceResistance?: ResistanceInput;
}

/** A closed box as it was read, in SI units. */
export interface ClosedBoxSpec {
  readonly family: 'closed';
  readonly drivers: DriverGroup;
  readonly netVolume: Volume;
  readonly fillGain: number;
  readonly QL?: number;
  readonly QA?: number;
  readonly sourceResistance: Resistance;
}

/** The air of a closed box: what does not hang on its drivers. */
export const closedAirShape = {
  netVolume: positive('volume'),
  fillGain: optional(positive('ratio')),
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
};

const shape = {
  drivers: given<Drivers>(),
  ...closedAirShape,
  sourceResistance: optional(notNegative('resistance')),
};

/**
 * Acoustic compliance of the air in a box.
 *
 * $$ C_{ab} = g\,\frac{V}{\rho c^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air volume |
 * | $g$ | `fillGain` | 1 | gain by filling, 1 without |
 * | $\rho, c$ | `air` | kg/m³, m/s | density, speed of sound |
 *
 * @validity boxes small against the wavelength
 * @neglects modes of the box, flexing walls
 * @returns m³/Pa
 * @source small1972closed1 definition of Vas, ρc² times the acoustic compliance
 * @example boxCompliance(0.05, 1, standardAir) // 3.52e-7
 */
export const boxCompliance = (netVolume: number, fillGain: number, air: Air): number =>
  (fillGain * netVolume) / (air.density * air.speedOfSound ** 2);

/**
 * A driver or a group in a closed box, as a network: motor and suspension against the spring of the enclosed air.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^2 T_c^2}{s^2 T_c^2 + s T_c / Q_{tc} + 1}, \quad
 *    f_c = f_s\sqrt{1 + V_{as}/V_b}, \quad Q_{tc} = Q_{ts}\sqrt{1 + V_{as}/V_b} $$
 *
 * is what the network gives without leak, absorption, filling and coil; it is checked, not used. QL and QA are set at the
 * system resonance of the lossless box.
 *
 * @validity frequencies at which the box is small against the wavelength
 * @neglects modes of the box, flexing walls, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1972closed1 response function, fc and Qtc
 * @example closedBox({ drivers: driver, netVolume: '40 L' })
 */
export function closedBox(input: ClosedBoxInput, air: Air = standardAir): System<ClosedBoxSpec> {
  const {
    drivers,
    netVolume,
    fillGain = 1,
    QL,
    QA,
    sourceResistance = 0 as Resistance,
  } = readFields('box', input, shape);
  const group = asGroup(drivers);
  const { Sd, Mms, Cms } = group.equivalent;
  const Cab = boxCompliance(netVolume, fillGain, air);
  const wc = Math.sqrt((1 / Cms + Sd ** 2 / Cab) / Mms);
  const losses = { ...(QL !== undefined && { QL }), ...(QA !== undefined && { QA }) };
  const elements = [...driverElements(group.equivalent, sourceResistance), ...closedAir(Cab, wc, losses)];
  const spec: ClosedBoxSpec = {
    family: 'closed',
    drivers: group,
    netVolume,
    fillGain,
    ...losses,
    sourceResistance,
  };
  return { spec, air, network: { elements, probes: driverProbes(sourceResistance) } };
}

/** The air of a closed box with its losses, their quality factors at the angular frequency `wc`. */
export function closedAir(
  Cab: number,
  wc: number,
  { QL, QA }: { readonly QL?: number; readonly QA?: number },
  chamber: Chamber = {},
): Element[] {
  const part = partOf(chamber.name);
  return [
    ...boxAir(Cab, QA === undefined ? undefined : 1 / (wc * Cab * QA), chamber),
    ...(QL === undefined ? [] : [branch('acousticResistance', part('leak'), [part('box'), 'ground'], QL / (wc * Cab))]),
  ];
}
