import { type PassiveRadiatorInput, passiveRadiator } from '../driver/index.js';
import type { Drivers } from '../enclosure/index.js';
import { asGroup } from '../enclosure/index.js';
import {
  type AirSpeedRms,
  type AirSpeedRmsInput,
  type CurrentRmsInput,
  read,
  type VoltageRmsInput,
} from '../quantity/index.js';

/** A limit: a probe of the system that may not exceed a value. Your own limit is a record of the same kind. */
export interface Limit {
  /** What reaches its limit, as a word for the reader: 'travel'. */
  readonly name: string;
  /** The probe that is limited, per volt of drive. Without it the drive itself is limited. */
  readonly probe?: string;
  /** Whether the probe is first integrated over time, which turns a velocity into a displacement. */
  readonly integrated?: boolean;
  /** Whether its mean over a long time counts, as with heat. Otherwise each peak counts, which is √2 times the rms of a sine. */
  readonly averaged?: boolean;
  /** Greatest rms value of a sine, SI. */
  readonly greatestRms: number;
  /** Powers of numbers of the network with which that value changes: that of heat with Re to the power of −1/2. */
  readonly exponents?: Readonly<Record<string, number>>;
  /** Where the number comes from, in words. */
  readonly basis: string;
}

/**
 * Travel of the cone: the peak displacement is at most Xmax. There is no limit where Xmax is unknown.
 *
 * @validity the range in which the motor is nearly linear; Xmax is what the maker states
 * @neglects distortion that grows with travel below Xmax
 * @returns one limit, or none
 * @source iec60268-22 (peak displacement limit; scope seen only)
 * @example travelLimit(driver) // [{ name: 'travel', … }]
 */
export function travelLimit(drivers: Drivers): readonly Limit[] {
  const { Xmax } = asGroup(drivers).driver;
  if (Xmax === undefined) return [];
  const basis = 'Xmax of the driver, one way, peak';
  return [{ name: 'travel', probe: 'coneVelocity', integrated: true, greatestRms: Xmax / Math.SQRT2, basis }];
}

/**
 * Travel of passive radiators: the peak displacement of each is at most its Xmax. There is no limit where Xmax is unknown.
 *
 * @validity boxes with the probe `radiatorVelocity`; the range in which the suspension is nearly linear; Xmax is what the
 * maker states
 * @neglects distortion that grows with travel below Xmax; the sag of a radiator that faces up or down
 * @returns one limit, or none
 * @throws InputError those of `passiveRadiator`
 * @source small1974pr1 displacement limit of the passive radiator
 * @example greatestLevel(box, [...travelLimit(box.spec.drivers), ...radiatorTravelLimit(box.spec.radiator)], grid)
 */
export function radiatorTravelLimit(radiator: PassiveRadiatorInput): readonly Limit[] {
  const { Xmax } = passiveRadiator(radiator);
  if (Xmax === undefined) return [];
  const basis = 'Xmax of the passive radiator, one way, peak';
  const greatestRms = Xmax / Math.SQRT2;
  return [{ name: 'radiator travel', probe: 'radiatorVelocity', integrated: true, greatestRms, basis }];
}

/**
 * Heat in the voice coil: I² Re is at most Pe, for each driver of a group.
 *
 * @neglects the rise of Re with heat, eddy losses, cooling that changes with frequency
 * @validity a steady current; music heats the coil less
 * @returns one limit, or none where Pe is unknown
 * @source common practice
 * @example heatLimit(driver) // [{ name: 'heat', … }]
 */
export function heatLimit(drivers: Drivers): readonly Limit[] {
  const { Pe, Re } = asGroup(drivers).equivalent;
  if (Pe === undefined) return [];
  const greatestRms = Math.sqrt(Pe / Re);
  const basis = 'I² Re at most Pe, each driver';
  return [{ name: 'heat', probe: 'current', averaged: true, greatestRms, exponents: { Re: -1 / 2 }, basis }];
}

/**
 * Air speed in the narrowest section of the vent: a stated mean speed. This is common practice and does not promise silence.
 *
 * @validity a rule of thumb; whether a vent makes noise also depends on its ends
 * @returns one limit
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source common practice
 * @example airSpeedLimit('12 m/s')
 */
export function airSpeedLimit(greatest: AirSpeedRmsInput, path = 'airSpeedRms'): Limit {
  const greatestRms: AirSpeedRms = read('airSpeedRms', greatest, path);
  return { name: 'vent', probe: 'ventAirSpeed', greatestRms, basis: 'stated mean air speed, rms; common practice' };
}

/**
 * Greatest sine voltage of the amplifier.
 *
 * @validity an amplifier that holds this voltage into the impedance of the box
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own (definition)
 * @example voltageLimit('20 V')
 */
export const voltageLimit = (greatest: VoltageRmsInput, path = 'voltageRms'): Limit => ({
  name: 'amplifier voltage',
  greatestRms: read('voltageRms', greatest, path),
  basis: 'greatest sine voltage of the amplifier',
});

/**
 * Greatest sine current of the amplifier.
 *
 * @validity an amplifier whose protection acts on current, at any phase
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own (definition)
 * @example currentLimit('5 A')
 */
export const currentLimit = (greatest: CurrentRmsInput, path = 'currentRms'): Limit => ({
  name: 'amplifier current',
  probe: 'current',
  greatestRms: read('currentRms', greatest, path),
  basis: 'greatest sine current of the amplifier',
});
