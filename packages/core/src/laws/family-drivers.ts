import type { Air } from '../air/index.js';
import type { System } from '../enclosure/index.js';
import { chambersOf } from './chambers.js';
import { modelFault } from './family-models.js';
import {
  coneNode,
  driverOfMotor,
  driversIn,
  motorsOf,
  numbersAt,
  numbersOf,
  sourceResistance,
} from './family-motors.js';
import type { FamilyTrial, Tried } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';

const fields = ['Bl', 'Sd', 'Mms', 'Cms', 'Rms', 'Re', 'Le', 'R2', 'L2'] as const;

/** A medium in which everything that depends on the air changes. */
export const otherAir = (air: Air): Air =>
  ({ ...air, density: 1.3 * air.density, speedOfSound: 0.9 * air.speedOfSound }) as Air;

/**
 * The network has the numbers of the driver of the spec, at its motor (the circuit of the driver, @source small1972direct; Mms with
 * its air load and Cms do not change with the box or the air). This finds a gram taken for a kilogram, a stiffness for a
 * compliance, two slots that are swapped, or an error of two per cent. In front of the driver is the stated resistance. The driver
 * plays into the chamber that is named with it.
 */
export function driverLaws<Spec, Input>({ trial, system, air }: Tried<Spec, Input>): readonly LawResult[] {
  const numbers = (medium: Air) => () => {
    const made = system(medium);
    const motors = motorsOf(made.network.topology);
    const drivers = driverOfMotor(made, trial.drivers);
    for (const [i, motor] of motors.entries()) {
      const [driver, found] = [drivers[i], numbersAt(made, motor)];
      if (driver === undefined) return `there is no driver for the motor ${motor.name}: pass it as drivers`;
      for (const field of fields) {
        const expected = numbersOf(driver)[field];
        // A coil with a law of its own replaces the inductances of the driver.
        const isCoil = field === 'Le' || field === 'R2' || field === 'L2';
        if (isCoil && made.network.topology.elements.some(({ kind }) => kind === 'law') && found[field] === 0) continue;
        if (!alike(found[field], expected))
          return `${field} of ${motor.name} is ${found[field]}, but that of the driver is ${expected}`;
      }
      const fault = modelFault(made, motor, driver);
      if (fault !== undefined) return fault;
    }
    return undefined;
  };
  return [
    tried('the network has the numbers of the driver', 'each motor', numbers(air)),
    tried('the driver is the same in another air', 'each motor', numbers(otherAir(air))),
    tried('the resistance before it is as stated', 'the source resistance', () => {
      const made = system();
      const stated = (made.spec as { readonly sourceResistance?: unknown } | undefined)?.sourceResistance;
      if (typeof stated !== 'number') return undefined;
      const found = sourceResistance(made);
      return alike(found, stated) ? undefined : `it is ${found} Ω, and ${stated} Ω are stated`;
    }),
    tried('the driver plays into its own chamber', 'each motor', () => chamberFault(system(), trial)),
  ];
}

type Handed = Pick<FamilyTrial<unknown>, 'drivers' | 'chambers'>;

/** A record of the spec that names the chamber of its driver: a face of that cone is in its air. */
function chamberFault(system: System, { drivers, chambers: handedIn }: Handed): string | undefined {
  const { topology } = system.network;
  const found = driversIn(system.spec);
  const chambers = chambersOf(system, handedIn);
  for (const [i, driver] of driverOfMotor(system, drivers).entries()) {
    const named = found.find((one) => one.driver === driver)?.chamber;
    const box = chambers.find(({ name }) => name === named)?.box;
    const cone = coneNode(motorsOf(topology)[i] as ReturnType<typeof motorsOf>[number]);
    if (named === undefined || box === undefined) continue;
    const faces = topology.elements.flatMap((one) =>
      one.kind === 'piston' && one.mechanical.includes(cone) ? [one.front, one.rear] : [],
    );
    if (!faces.includes(box)) return `${cone} plays into ${faces.join(' and ')}, but its chamber is ${named}`;
  }
  return undefined;
}
