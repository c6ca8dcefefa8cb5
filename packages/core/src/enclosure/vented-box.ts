import { type Air, standardAir } from '../air/index.js';
import type { DriverGroup } from '../driver/index.js';
import { branch, type Element, type Probe } from '../network/index.js';
import {
  type Area,
  type AreaInput,
  type Frequency,
  type FrequencyInput,
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
import { boxCompliance } from './closed-box.js';
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

/** A vented box as people write it. */
export interface VentedBoxInput {
  readonly drivers: Drivers;
  /** Air in the box, without what drivers, vent and bracing take. */
  readonly netVolume: VolumeInput;
  /** Tuning: the resonance of vent and box. */
  readonly fb: FrequencyInput;
  /** Narrowest cross-section of all vents together; only the air speed needs it. Default: no air speed is told. */
  readonly ventArea?: AreaInput;
  /** Quality factor of the leaks at fb; leave out for none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at fb; leave out for none. */
  readonly QA?: RatioInput;
  /** Quality factor of the vent's own loss at fb; leave out for none. */
  readonly QP?: RatioInput;
  /** Resistance of amplifier and cable in front of the terminals; default 0. */
  readonly sourceResistance?: ResistanceInput;
}

/** A vented box as it was read, in SI units. */
export interface VentedBoxSpec {
  readonly family: 'vented';
  readonly drivers: DriverGroup;
  readonly netVolume: Volume;
  readonly fb: Frequency;
  readonly ventArea?: Area;
  readonly QL?: number;
  readonly QA?: number;
  readonly QP?: number;
  readonly sourceResistance: Resistance;
}

/** The air of a vented box: what does not hang on its drivers. */
export const ventedAirShape = {
  netVolume: positive('volume'),
  fb: positive('frequency'),
  ventArea: optional(positive('area')),
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
  QP: optional(positive('ratio')),
};

const shape = {
  drivers: given<Drivers>(),
  ...ventedAirShape,
  sourceResistance: optional(notNegative('resistance')),
};

/** Losses of a vented box; each left out where there is none. */
export interface VentedBoxLosses {
  readonly QL?: number;
  readonly QA?: number;
  readonly QP?: number;
}

/** Acoustic elements of a vented box in SI units: what differs from one box to the next with the same driver. */
export interface VentedBoxElements {
  Cab: number;
  vent: number;
  leak: number;
  absorption: number;
  ventLoss: number;
}

/**
 * Acoustic elements of a vented box from its volume, tuning and losses; fills `out` and allocates nothing. A kernel.
 *
 * $$ C_{ab} = \frac{V_b}{\rho c^2},\; M_{ap} = \frac{1}{\omega_b^2 C_{ab}},\;
 *    R_{al} = \frac{Q_L}{\omega_b C_{ab}},\; R_{ab} = \frac{1}{\omega_b C_{ab} Q_A},\; R_{ap} = \frac{\omega_b M_{ap}}{Q_P} $$
 *
 * A quality factor left out is infinite: its leak then is infinite, its absorption or vent loss zero, and no element.
 *
 * @validity box and vent small against the wavelength
 * @neglects modes of the box and the vent
 * @returns nothing; fills `out`
 * @source small1973vented1 definitions of the box losses
 * @example ventedBoxElements(0.05, 30, { QL: 7 }, standardAir, out)
 */
export function ventedBoxElements(
  netVolume: number,
  fb: number,
  { QL = Infinity, QA = Infinity, QP = Infinity }: VentedBoxLosses,
  air: Air,
  out: VentedBoxElements,
): void {
  const wb = 2 * Math.PI * fb;
  const Cab = boxCompliance(netVolume, 1, air);
  out.Cab = Cab;
  out.vent = 1 / (wb * wb * Cab);
  out.leak = QL / (wb * Cab);
  out.absorption = 1 / (wb * Cab * QA);
  out.ventLoss = (wb * out.vent) / QP;
}

/**
 * A driver or a group in a vented box, as a network: the vent's air mass against the spring of the enclosed air.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^4}{s^4 + a_1 s^3 + a_2 s^2 + a_3 s + 1} $$
 *
 * (s over √(ωs ωb), leaks only) is what the network gives; it is checked, not used. QL, QA and QP are at fb.
 *
 * @validity frequencies at which box and vent are small against the wavelength, and small signals
 * @neglects modes of box and vent, flexing walls, radiation resistance, losses that grow with level
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1973vented1 response function
 * @example ventedBox({ drivers: driver, netVolume: '45 L', fb: '29 Hz', QL: 7 })
 */
export function ventedBox(input: VentedBoxInput, air: Air = standardAir): System<VentedBoxSpec> {
  const read = readFields('box', input, shape);
  const { drivers, netVolume, fb, ventArea, QL, QA, QP, sourceResistance = 0 as Resistance } = read;
  const group = asGroup(drivers);
  const elements = [...driverElements(group.equivalent, sourceResistance), ...ventedAir(read, air)];
  const spec: VentedBoxSpec = {
    family: 'vented',
    drivers: group,
    netVolume,
    fb,
    ...(ventArea !== undefined && { ventArea }),
    ...(QL !== undefined && { QL }),
    ...(QA !== undefined && { QA }),
    ...(QP !== undefined && { QP }),
    sourceResistance,
  };
  const probes = { ...driverProbes(sourceResistance), ...ventProbe(ventArea) };
  return { spec, air, network: { elements, probes } };
}

/** The air of a vented box with its vent and its losses. */
export function ventedAir(
  { netVolume, fb, ...losses }: VentedBoxLosses & { readonly netVolume: number; readonly fb: number },
  air: Air,
  chamber: Chamber = {},
): Element[] {
  const out = { Cab: 0, vent: 0, leak: 0, absorption: 0, ventLoss: 0 };
  ventedBoxElements(netVolume, fb, losses, air, out);
  const { QL, QA, QP } = losses;
  const part = partOf(chamber.name);
  const [box, mouth] = [part('box'), QP === undefined ? 'ground' : part('mouth')];
  return [
    ...boxAir(out.Cab, QA === undefined ? undefined : out.absorption, chamber),
    ...(QL === undefined ? [] : [branch('acousticResistance', part('leak'), [box, 'ground'], out.leak)]),
    branch('acousticMass', part('vent'), [box, mouth], out.vent),
    ...(QP === undefined ? [] : [branch('acousticResistance', part('ventLoss'), [mouth, 'ground'], out.ventLoss)]),
  ];
}

/** Mean air speed in the narrowest section of the vent, where that is known. */
export function ventProbe(ventArea: number | undefined, name?: string): Record<string, Probe> {
  const part = partOf(name);
  if (ventArea === undefined) return {};
  return { [part('ventAirSpeed')]: { of: 'flow', element: part('vent'), factor: 1 / ventArea } };
}
