import { coilOf } from '../driver/coil-of.js';
import { type CoilModel, type Driver, type DriverGroup, group } from '../driver/index.js';
import { branch, type Element, type Nodes, type Outlet, type Probe, type Setter } from '../network/index.js';

/** One driver or a group of them; every family accepts both. */
export type Drivers = Driver | DriverGroup;

/**
 * The one driver that is equivalent to the whole group.
 *
 * @validity as `group`
 * @throws InputError those of `group`
 * @source own (definition)
 * @example equivalentDriver(group(driver, { parallel: 2 })).Re // half of driver.Re
 */
export const equivalentDriver = (drivers: Drivers): Driver =>
  (drivers as Partial<DriverGroup> | undefined)?.equivalent ?? asGroup(drivers).equivalent;

/**
 * A single driver as a group of one. A group is read again and returned as it is.
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

/** The name of a part, followed by its owner's name where there are several. No stem has a blank, so names never clash. */
export const partOf =
  (name?: string) =>
  (stem: string): string =>
    name === undefined ? stem : `${stem} ${name}`;

/** Source and source resistance, and the node where the drivers are connected. */
export function sourceElements(sourceResistance: number): { readonly elements: Element[]; readonly terminals: string } {
  const source: Element = { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] };
  if (sourceResistance === 0) return { elements: [source], terminals: 'drive' };
  const nodes: Nodes = ['drive', 'terminals'];
  const resistance = branch('resistor', 'sourceResistance', nodes, { stands: 'impedance' });
  return { elements: [source, resistance], terminals: 'terminals' };
}

/** Where one of several drivers is: its terminals, the air behind and in front of it, and the name that its parts carry. */
export interface Mounting {
  readonly from: string;
  readonly to: string;
  readonly rear: string;
  /** Default `ground`: it faces the air outside. */
  readonly front?: string;
  readonly name?: string;
}

const ofCoil = { stands: 'impedance', inReference: false } as const;

/** A coil between two nodes, besides Re. */
function coilElements(
  { circuit, element }: CoilModel,
  ends: Nodes,
  part: ReturnType<typeof partOf>,
): readonly Element[] {
  if (circuit === undefined) return element ? [element(part('coil'), ends)] : [];
  const joint = (at: number) => ends[at] ?? part(`coil${at}`);
  return circuit.map(({ kind, parameter, joints: [a, b] }) =>
    branch(kind, part(parameter), [joint(a), joint(b)], kind === 'inductor' ? ofCoil : {}),
  );
}

/** Voice coil, motor, moving parts and cone of a driver between two electrical nodes. */
export function mountedDriver(driver: Driver, { from, to, rear, front = 'ground', name }: Mounting): Element[] {
  const part = partOf(name);
  const cone: Nodes = [part('cone'), 'ground'];
  const coil = coilOf(driver);
  const gap = part(coil ? 'gap' : 'coil');
  return [
    branch('resistor', part('Re'), [from, part('coil')]),
    ...(coil ? coilElements(coil, [part('coil'), gap], part) : []),
    { kind: 'motor', name: part('Bl'), electrical: [gap, to], mechanical: cone },
    branch('mass', part('Mms'), cone),
    branch('damper', part('Rms'), cone),
    driver.suspension?.element?.(part('suspension'), cone) ?? branch('spring', part('Cms'), cone),
    { kind: 'piston', name: part('Sd'), mechanical: cone, front, rear },
  ];
}

/** Sets the numbers of {@link mountedDriver}. */
export function setDriver(driver: Driver, set: Setter, name?: string): void {
  const part = partOf(name);
  const { Re, Le, Bl, Mms, Cms, Rms, Sd, coil, suspension } = driver;
  set(part('Re'), Re);
  if (coil?.circuit) for (const { parameter } of coil.circuit) set(part(parameter), coil.parameters[parameter]!);
  else if (coil) set(part('coil'), ...Object.values(coil.parameters));
  // A plain Le is set directly: a search would otherwise make a model for it at each box.
  else if (Le) set(part('Le'), Le);
  if (suspension?.element) set(part('suspension'), Cms, ...Object.values(suspension.parameters));
  else set(part('Cms'), Cms);
  set(part('Bl'), Bl);
  set(part('Mms'), Mms);
  set(part('Rms'), Rms);
  set(part('Sd'), Sd);
}

/**
 * The part that all families of like drivers share: source, source resistance, voice coil, motor, moving parts, and the cone
 * between the air in front of it and the air behind it. `to` is the node that the coil leads to, by default the other terminal.
 */
export function drivenCone(
  driver: Driver,
  sourceResistance: number,
  { to = 'ground', ...sides }: Pick<Mounting, 'rear' | 'front'> & { readonly to?: string },
): Omit<DirectRadiator, 'cone'> {
  const { elements, terminals } = sourceElements(sourceResistance);
  return {
    elements: [...elements, ...mountedDriver(driver, { from: terminals, to, ...sides })],
    probes: {
      coneVelocity: { of: 'potential', node: 'cone' },
      current: { of: 'flow', element: 'drive' },
      terminalVoltage: { of: 'potential', node: terminals },
    },
  };
}

/** The part of a topology that all direct-radiator families share. */
export interface DirectRadiator {
  readonly elements: Element[];
  readonly probes: Record<string, Probe>;
  readonly cone: Outlet;
}

/**
 * The part that all direct-radiator families share: source, source resistance, voice coil, motor, moving parts, and the cone
 * between the air outside and the node `box`. Parts that are zero or absent get no element. {@link setDirectRadiator} sets
 * the numbers.
 *
 * @validity a cone that is a rigid piston, small compared with the wavelength
 * @neglects radiation resistance, nonlinearity
 * @returns elements from `drive` to `box`, the probes that the response reads, and the cone as an outlet
 * @source small1972direct electro-mechano-acoustical circuit
 * @example const { elements, probes, cone } = directRadiator(driver, 0.1)
 */
export const directRadiator = (driver: Driver, sourceResistance: number): DirectRadiator => ({
  ...drivenCone(driver, sourceResistance, { rear: 'box' }),
  cone: { name: 'cone', flow: { of: 'flow', element: 'Sd' } },
});

/**
 * Sets the numbers of {@link directRadiator}.
 *
 * @validity as {@link directRadiator}
 * @source small1972direct electro-mechano-acoustical circuit
 * @example values: ({ driver, Cab }, air, set) => { setDirectRadiator(driver, 0, set); set('Cab', Cab); }
 */
export function setDirectRadiator(driver: Driver, sourceResistance: number, set: Setter): void {
  if (sourceResistance !== 0) set('sourceResistance', sourceResistance);
  setDriver(driver, set);
}
