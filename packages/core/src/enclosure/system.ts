import type { Air } from '../air/index.js';
import { type Driver, type DriverGroup, group } from '../driver/index.js';
import { branch, type Element, type Network, type Nodes, type Probe } from '../network/index.js';

/**
 * A box with its drivers, ready to be swept: the spec it was made from, the air, and the network with named probes.
 *
 * Probes that the response floor reads, each per volt of drive: `radiatedFlow` (out of the whole system, m³/s),
 * `coneVelocity` (m/s, positive outwards), `current` (A) and `terminalVoltage` (1), and where there is a vent
 * `ventAirSpeed` (m/s, positive outwards, mean over its narrowest section). Where there are several cones or vents, each
 * has a name, `coneVelocity left`: then the response tells of the one that moves most.
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
 * @validity as `group`
 * @throws InputError those of `group`
 * @source own (definition)
 * @example equivalentDriver(group(driver, { parallel: 2 })).Re // half of driver.Re
 */
export const equivalentDriver = (drivers: Drivers): Driver => asGroup(drivers).equivalent;

/**
 * A lone driver as a group of one; a group as it is, once it was read again.
 *
 * @validity as `group`
 * @throws InputError those of `group`
 * @source own (definition)
 * @example asGroup(driver).count // 1
 */
export function asGroup(drivers: Drivers): DriverGroup {
  if (typeof drivers === 'object' && drivers !== null && 'equivalent' in drivers) {
    const { driver, series, parallel, isobaric } = drivers;
    return group(driver, { series, parallel, isobaric });
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
 * @example [...driverElements(driver, 0.1), branch('acousticCompliance', 'Cab', ['box', 'ground'], 3e-7)]
 */
export function driverElements(driver: Driver, sourceResistance: number): Element[] {
  const { elements, terminals } = sourceElements(sourceResistance);
  return [...elements, ...mountedDriver(driver, { from: terminals, to: 'ground', rear: 'box' })];
}

/** Source and source resistance, and the node where the drivers are joined to them. */
export function sourceElements(sourceResistance: number): { readonly elements: Element[]; readonly terminals: string } {
  const source: Element = { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] };
  if (sourceResistance === 0) return { elements: [source], terminals: 'drive' };
  const resistance = branch('resistor', 'sourceResistance', ['drive', 'terminals'], sourceResistance);
  return { elements: [source, resistance], terminals: 'terminals' };
}

/** Where one of several drivers is: its terminals, the air behind it, and the name that its parts bear. */
export interface Mounting {
  readonly from: string;
  readonly to: string;
  readonly rear: string;
  readonly name?: string;
}

/** The name of a part: alone where there is one, else with whose part it is. No stem holds a blank, so that none meet. */
export const partOf =
  (name: string | undefined) =>
  (stem: string): string =>
    name === undefined ? stem : `${stem} ${name}`;

/** Voice coil, motor, moving parts and cone of a driver between two electrical nodes. */
export function mountedDriver(driver: Driver, { from, to, rear, name }: Mounting): Element[] {
  const { Re, Le = 0, R2, L2, Bl, Mms, Cms, Rms, Sd } = driver;
  const part = partOf(name);
  const cone: Nodes = [part('cone'), 'ground'];
  const elements: Element[] = [branch('resistor', part('Re'), [from, part('coil')], Re)];
  let coil = part('coil');
  if (Le > 0) {
    elements.push(branch('inductor', part('Le'), [coil, part('coilAfterLe')], Le));
    coil = part('coilAfterLe');
  }
  if (R2 !== undefined && L2 !== undefined) {
    const nodes: Nodes = [coil, part('coilAfterL2')];
    elements.push(branch('resistor', part('R2'), nodes, R2), branch('inductor', part('L2'), nodes, L2));
    coil = nodes[1];
  }
  elements.push(
    { kind: 'motor', name: part('Bl'), electrical: [coil, to], mechanical: cone, Bl },
    branch('mass', part('Mms'), cone, Mms),
    branch('damper', part('Rms'), cone, Rms),
    branch('spring', part('Cms'), cone, Cms),
    { kind: 'piston', name: part('Sd'), mechanical: cone, front: 'ground', rear, Sd },
  );
  return elements;
}

/**
 * Probes that every direct-radiator family shares. What the air of the box takes in is what the whole system does not
 * radiate, leaks included: so the box needs an element `Cab`.
 *
 * @validity one acoustic point: cone, vent and leak near each other against the wavelength
 * @source small1973vented1 radiated flow as the flow of the box compliance
 * @example { ...driverProbes(0), ventAirSpeed: { of: 'flow', element: 'vent', factor: 1 / ventArea } }
 */
export const driverProbes = (sourceResistance: number): Record<string, Probe> => ({
  radiatedFlow: { of: 'flow', element: 'Cab', factor: -1 },
  coneVelocity: { of: 'potential', node: 'cone' },
  current: { of: 'flow', element: 'drive' },
  terminalVoltage: { of: 'potential', node: sourceResistance > 0 ? 'terminals' : 'drive' },
});

/** Which of several boxes it is, and the node behind its air where what they take in is summed up. */
export interface Chamber {
  readonly name?: string;
  readonly walls?: string;
}

/** The air of a box: its compliance, and in series with it the loss by absorption, when there is one. */
export function boxAir(Cab: number, absorption: number | undefined, { name, walls = 'ground' }: Chamber): Element[] {
  const part = partOf(name);
  const [box, inner] = [part('box'), part('absorption')];
  if (absorption === undefined) return [branch('acousticCompliance', part('Cab'), [box, walls], Cab)];
  return [
    branch('acousticCompliance', part('Cab'), [box, inner], Cab),
    branch('acousticResistance', inner, [inner, walls], absorption),
  ];
}
