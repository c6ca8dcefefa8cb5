import type { Air } from '../air/index.js';
import { type Driver, type DriverGroup, group } from '../driver/index.js';
import { branch, type Element, type Network, type Probe } from '../network/index.js';

/**
 * A box with its drivers, ready to be swept: the spec it was made from, the air, and the network with named probes.
 *
 * Probes that the response floor reads, each per volt of drive: `radiatedFlow` (out of the whole system, m³/s),
 * `coneVelocity` (m/s, positive outwards), `current` (A) and `terminalVoltage` (1), and where there is a vent
 * `ventAirSpeed` (m/s, positive outwards, mean over its narrowest section).
 * Any family is a function from a plain spec to such a record; a stranger's is another such function.
 */
export interface System<Spec = unknown> {
  readonly spec: Spec;
  readonly air: Air;
  readonly network: Network;
}

/** One driver or a group of them: what every family takes. */
export type Drivers = Driver | DriverGroup;

/**
 * The one driver that stands for all.
 *
 * @throws InputError those of `group`
 * @source own (definition)
 * @check enclosure.circuit.equivalentDriver
 * @example equivalentDriver(group(driver, { parallel: 2 })).Re // half of driver.Re
 */
export const equivalentDriver = (drivers: Drivers): Driver => asGroup(drivers).equivalent;

/**
 * A lone driver as a group of one; a group as it is, once it was read again.
 *
 * @throws InputError those of `group`
 * @source own (definition)
 * @check enclosure.circuit.asGroup
 * @example asGroup(driver).count // 1
 */
export function asGroup(drivers: Drivers): DriverGroup {
  if (typeof drivers === 'object' && drivers !== null && 'equivalent' in drivers) {
    group(drivers.driver, { series: drivers.series, parallel: drivers.parallel, isobaric: drivers.isobaric });
    return drivers;
  }
  return group(drivers);
}

/**
 * The part that every direct-radiator family shares: source, source resistance, voice coil, motor, moving parts, and the
 * cone between the air outside and the node `box`. What is zero or absent is no element.
 *
 * @validity the cone a rigid piston, small against the wavelength
 * @neglects radiation resistance, creep, what grows with level
 * @returns elements from `drive` to `box`
 * @source small1972direct electro-mechano-acoustical circuit
 * @check enclosure.circuit.driver
 * @example [...driverElements(driver, 0.1), branch('acousticCompliance', 'Cab', ['box', 'ground'], 3e-7)]
 */
export function driverElements(driver: Driver, sourceResistance: number): Element[] {
  const { Re, Le = 0, R2, L2, Bl, Mms, Cms, Rms, Sd } = driver;
  const elements: Element[] = [{ kind: 'source', name: 'drive', nodes: ['drive', 'ground'] }];
  const series = (kind: 'resistor' | 'inductor', name: string, value: number, from: string, to: string) => {
    if (value > 0) elements.push(branch(kind, name, [from, to], value));
    return value > 0 ? to : from;
  };
  const terminals = series('resistor', 'sourceResistance', sourceResistance, 'drive', 'terminals');
  let coil = series('resistor', 'Re', Re, terminals, 'coil');
  coil = series('inductor', 'Le', Le, coil, 'coil after Le');
  if (R2 !== undefined && L2 !== undefined) {
    series('resistor', 'R2', R2, coil, 'coil after L2');
    coil = series('inductor', 'L2', L2, coil, 'coil after L2');
  }
  elements.push(
    { kind: 'motor', name: 'Bl', electrical: [coil, 'ground'], mechanical: ['cone', 'ground'], Bl },
    branch('mass', 'Mms', ['cone', 'ground'], Mms),
    branch('damper', 'Rms', ['cone', 'ground'], Rms),
    branch('spring', 'Cms', ['cone', 'ground'], Cms),
    { kind: 'piston', name: 'Sd', mechanical: ['cone', 'ground'], front: 'ground', rear: 'box', Sd },
  );
  return elements;
}

/**
 * Probes that every direct-radiator family shares. What the air of the box takes in is what the whole system does not
 * radiate, leaks included: so the box needs an element `Cab`.
 *
 * @source small1973vented1 radiated flow as the flow of the box compliance
 * @check enclosure.circuit.probes
 * @example { ...driverProbes(0), ventAirSpeed: { of: 'flow', element: 'vent', factor: 1 / ventArea } }
 */
export const driverProbes = (sourceResistance: number): Record<string, Probe> => ({
  radiatedFlow: { of: 'flow', element: 'Cab', factor: -1 },
  coneVelocity: { of: 'potential', node: 'cone' },
  current: { of: 'flow', element: 'drive' },
  terminalVoltage: { of: 'potential', node: sourceResistance > 0 ? 'terminals' : 'drive' },
});

/** The air of a box: its compliance, and in series with it the loss by absorption, when there is one. */
export const boxAir = (Cab: number, absorption: number | undefined): Element[] =>
  absorption === undefined
    ? [branch('acousticCompliance', 'Cab', ['box', 'ground'], Cab)]
    : [
        branch('acousticCompliance', 'Cab', ['box', 'absorption'], Cab),
        branch('acousticResistance', 'absorption', ['absorption', 'ground'], absorption),
      ];
