import { type Air, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { compile, type Element, type Outlet, type Probe, type Setter, type Topology } from '../network/index.js';
import {
  type Fields,
  given,
  notNegative,
  optional,
  type Resistance,
  type ResistanceInput,
  readFieldsInto,
} from '../quantity/index.js';
import { boxAir, boxCompliance, setBoxAir } from './box-air.js';
import { chamberResonance } from './chamber-resonance.js';
import { type ClosedBoxInput, closedAirShape } from './closed-box.js';
import type { DrivenInput } from './driven.js';
import { type DriverNet, type DriverNetSpec, driversOf, netElements, readDriverNet } from './driver-net.js';
import { partOf, setDriver, sourceElements } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import { setVentedAir, type VentedBoxInput, ventedAir, ventedAirShape } from './vented-box.js';

/** A volume of air without a vent, with the fields of a closed box. */
export type ClosedChamberInput = Omit<ClosedBoxInput, keyof DrivenInput>;

/** A volume of air with a vent, with the fields of a vented box; its `fb` marks it as vented. */
export type VentedChamberInput = Omit<VentedBoxInput, keyof DrivenInput>;

/** A box with drivers that may differ from each other, as people write it. */
export interface MixedBoxInput {
  readonly drivers: DriverNet;
  /** Separate volumes by name. All drivers may share one volume. */
  readonly chambers: Readonly<Record<string, ClosedChamberInput | VentedChamberInput>>;
  /** Resistance of the amplifier's output and the cable; default 0. */
  readonly sourceResistance?: ResistanceInput;
}

/** A chamber after reading, in SI units. */
export type ChamberSpec = Fields<typeof closedAirShape> | Fields<typeof ventedAirShape>;

/** A mixed box after reading, in SI units. */
export interface MixedBoxSpec {
  readonly drivers: DriverNetSpec;
  readonly chambers: Readonly<Record<string, ChamberSpec>>;
  readonly sourceResistance: Resistance;
}

const shape = {
  drivers: given<unknown>(),
  chambers: given<unknown>(),
  sourceResistance: optional(notNegative('resistance')),
};

const isVented = (chamber: unknown): chamber is Fields<typeof ventedAirShape> =>
  typeof chamber === 'object' && chamber !== null && 'fb' in chamber;

function readChambers(faults: Fault[], chambers: unknown): Record<string, ChamberSpec> | undefined {
  const path = 'box.chambers';
  const entries = typeof chambers === 'object' && chambers !== null ? Object.entries(chambers) : [];
  if (entries.length === 0 || Array.isArray(chambers) || entries.some(([name]) => name === '')) {
    const expected = 'a record of volumes by their names';
    faults.push({ code: 'empty', path, got: chambers, expected, remedy: "Name one: { box: { netVolume: '40 L' } }." });
    return undefined;
  }
  const read = entries.map(([name, chamber]) => {
    const fields = isVented(chamber) ? ventedAirShape : closedAirShape;
    return [
      name,
      readFieldsInto<typeof closedAirShape | typeof ventedAirShape>(faults, `${path}.${name}`, chamber, fields),
    ];
  });
  return Object.fromEntries(read);
}

function readMixed(input: MixedBoxInput | MixedBoxSpec): MixedBoxSpec {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, 'box', input as MixedBoxInput, shape);
  const chambers = read && readChambers(faults, read.chambers);
  const drivers = read && chambers && readDriverNet(faults, read.drivers, Object.keys(chambers));
  if (chambers && drivers) {
    for (const name of Object.keys(chambers)) {
      if (driversOf(drivers).some(({ chamber }) => chamber === name)) continue;
      const remedy = 'Remove the chamber, or say which driver plays into it.';
      const path = `box.chambers.${name}`;
      faults.push({ code: 'inconsistent', path, got: 'no driver', expected: 'a driver that plays into it', remedy });
    }
  }
  refuse(faults);
  return {
    drivers: drivers as DriverNetSpec,
    chambers: chambers as Readonly<Record<string, ChamberSpec>>,
    sourceResistance: read?.sourceResistance ?? (0 as Resistance),
  };
}

function mixedTopology({ drivers, chambers, sourceResistance }: MixedBoxSpec): Topology {
  const { elements, terminals } = sourceElements(sourceResistance);
  const cones = driversOf(drivers).map(({ name }) => partOf(name));
  const insides = Object.entries(chambers).map(([name, chamber]) => {
    if (isVented(chamber)) return ventedAir(chamber, name);
    const air = boxAir(chamber, name);
    return { elements: air.elements, outlets: air.leaks, probes: {} };
  });
  const outlets = cones.map((part): Outlet => ({ name: part('cone'), flow: { of: 'flow', element: part('Sd') } }));
  const own = cones.flatMap((part): (readonly [string, Probe])[] => [
    [part('coneVelocity'), { of: 'potential', node: part('cone') }],
    [part('current'), { of: 'flow', element: part('Re') }],
  ]);
  const all: Element[] = [...elements, ...netElements(drivers, terminals, 'ground')];
  return {
    elements: [...all, ...insides.flatMap((inside) => inside.elements)],
    probes: {
      current: { of: 'flow', element: 'drive' },
      terminalVoltage: { of: 'potential', node: terminals },
      ...Object.fromEntries(own),
      ...Object.assign({}, ...insides.map(({ probes }) => probes)),
    },
    outlets: [...outlets, ...insides.flatMap((inside) => inside.outlets)],
  };
}

function setMixed({ drivers, chambers, sourceResistance }: MixedBoxSpec, air: Air, set: Setter): void {
  if (sourceResistance !== 0) set('sourceResistance', sourceResistance);
  for (const { name, driver } of driversOf(drivers)) setDriver(driver.equivalent, set, name);
  for (const [name, chamber] of Object.entries(chambers)) {
    if (isVented(chamber)) {
      setVentedAir(chamber, air, set, partOf(name));
      continue;
    }
    const { netVolume, fillGain = 1, ...losses } = chamber;
    const Cab = boxCompliance(netVolume, fillGain, air);
    const inside = driversOf(drivers).filter((one) => one.chamber === name);
    const wc = chamberResonance(
      inside.map(({ driver }) => driver.equivalent),
      Cab,
    );
    setBoxAir(Cab, wc, losses, set, partOf(name));
  }
}

/** The family of boxes with different drivers, in one volume or in several. */
export const mixedFamily: Family<MixedBoxSpec, MixedBoxInput> = {
  name: 'mixed',
  compile,
  read: readMixed,
  topology: mixedTopology,
  values: setMixed,
};

/**
 * Different drivers in any wiring of series and parallel, in one volume or in several. Each volume is closed or vented.
 * Each coil gets its share of voltage and current from the net, and each cone works on the air of its chamber. All openings
 * radiate as one point,
 *
 * $$ U = \sum_k U_k $$
 *
 * Besides the probes of any system there are `coneVelocity <driver>` and `current <driver>` for each driver, and
 * `ventAirSpeed <chamber>` where the area of a vent is given. QL and QA of a closed chamber hold at its highest resonance
 * with undamped cones and open terminals; for equal drivers this is the system resonance. In a vented chamber they hold at fb.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U_k$ | `network.topology.outlets` | m³/s | flow out of each cone, vent and leak |
 *
 * @validity frequencies at which all chambers, and the distances between the openings, are small compared with the wavelength
 * @neglects mutual radiation, modes of the chambers, flexing walls between them
 * @returns the system, its spec in SI units
 * @throws InputError those of its fields; `unknown-field` for a chamber that is not there, `inconsistent` for one without a driver
 * @source small1972direct electro-mechano-acoustical circuit, one for each driver
 * @example
 * mixedBox({ drivers: { parallel: [{ name: 'low', driver: a }, { name: 'wide', driver: b }] }, chambers: { box: { netVolume: '60 L' } } })
 */
export const mixedBox = (input: MixedBoxInput | MixedBoxSpec, air: Air = standardAir): System<MixedBoxSpec> =>
  systemOf(mixedFamily, input, air);
