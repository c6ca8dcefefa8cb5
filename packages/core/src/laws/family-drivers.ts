import type { Air } from '../air/index.js';
import { coneNode, driverOfMotor, motorsOf, numbersAt } from './family-motors.js';
import type { Tried } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';

const fields = ['Bl', 'Sd', 'Mms', 'Cms', 'Rms', 'Re', 'Le', 'R2', 'L2'] as const;

/** A medium in which nothing that hangs on the air is what it was. */
export const otherAir = (air: Air): Air =>
  ({ ...air, density: 1.3 * air.density, speedOfSound: 0.9 * air.speedOfSound }) as Air;

/**
 * The driver of the spec stands in the network with its own numbers, at its motor: a gram for a kilogram, a stiffness for a
 * compliance, two slots exchanged, two per cent show (the circuit of the driver, @source small1972direct; Mms with its air
 * load and Cms do not change with the box or the air). The velocity of a cone is that of a node which a motor moves, positive
 * where it pushes air out, once for each motor; the current is that of the source.
 */
export function driverLaws<Spec, Input>({ trial, system, air }: Tried<Spec, Input>): readonly LawResult[] {
  const numbers = (medium: Air) => () => {
    const made = system(medium);
    const motors = motorsOf(made.network.topology);
    const drivers = driverOfMotor(made, trial.drivers);
    for (const [i, motor] of motors.entries()) {
      const [driver, found] = [drivers[i], numbersAt(made, motor)];
      if (driver === undefined) return `no driver for the motor ${motor.name}: hand it in as drivers`;
      for (const field of fields) {
        const expected = driver[field] ?? 0;
        // A coil of another law than the driver's own replaces its inductances.
        const isCoil = field === 'Le' || field === 'R2' || field === 'L2';
        if (isCoil && made.network.topology.elements.some(({ kind }) => kind === 'law') && found[field] === 0) continue;
        if (!alike(found[field] ?? 0, expected))
          return `${field} of ${motor.name} is ${found[field]}, and the driver's is ${expected}`;
      }
    }
    return undefined;
  };
  return [
    tried('the driver has its own numbers', 'each motor', numbers(air)),
    tried('the driver is the same in another air', 'each motor', numbers(otherAir(air))),
    tried('the velocity of a cone is that of a motor', 'each probe', () => {
      const { elements, probes } = system().network.topology;
      const nodes = motorsOf({ elements, probes, outlets: [] }).map(coneNode);
      const read = Object.entries(probes).filter(([name]) => name.split(' ')[0] === 'coneVelocity');
      const found = new Set<string>();
      for (const [name, probe] of read) {
        if (probe.of !== 'potential' || !nodes.includes(probe.node)) return `${name} is no node that a motor moves`;
        if (probe.factor !== undefined) return `${name} is multiplied by ${probe.factor}`;
        const out = elements.some(
          (one) => one.kind === 'piston' && one.mechanical[0] === probe.node && one.front === 'ground',
        );
        const within = elements.some(
          (one) => one.kind === 'piston' && one.mechanical[0] === probe.node && one.rear === 'ground',
        );
        if (out !== within && out !== (probe.sign !== -1)) return `${name} is positive inwards`;
        found.add(probe.node);
      }
      const silent = nodes.find((node) => !found.has(node));
      return silent === undefined ? undefined : `no coneVelocity of ${silent}, which a motor moves`;
    }),
    tried('the current is that of the source', 'one probe', () => {
      const { elements, probes } = system().network.topology;
      const probe = probes.current;
      const source = elements.find(({ kind }) => kind === 'source')?.name;
      const right = probe?.of === 'flow' && probe.element === source && probe.sign !== -1 && probe.factor === undefined;
      return right ? undefined : `it reads ${JSON.stringify(probe)}, and the source is ${source}`;
    }),
  ];
}
