import type { Driver } from '../driver/index.js';
import type { System } from '../enclosure/index.js';
import type { Motor } from '../network/index.js';
import { coilOf, coneNode } from './family-motors.js';
import { alike } from './law.js';

/** The models of coil and suspension have their own numbers in the network, each in its place, where they are elements over frequency. */
export function modelFault(system: System, motor: Motor, { coil, suspension, Cms }: Driver): string | undefined {
  const { topology, values } = system.network;
  const [ofCoil, cone] = [coilOf(system, motor), coneNode(motor)];
  const laws = topology.elements.flatMap((one) => (one.kind === 'law' ? [one] : []));
  const judge = (name: string | undefined, own: Readonly<Record<string, number>>): string | undefined => {
    if (name === undefined) return `there is no element for ${Object.keys(own).join(', ')} of ${motor.name}`;
    const found = [values[name] ?? []].flat();
    const wrong = Object.entries(own).find(([, expected], i) => !alike(found[i] ?? Number.NaN, expected));
    return (
      wrong && `${wrong[0]} in ${name} of ${motor.name} is not ${wrong[1]}, as the driver has it, but among ${found}`
    );
  };
  const inCoil = coil?.element && judge(laws.find(({ name }) => ofCoil.includes(name))?.name, coil.parameters);
  const atCone = laws.find(({ nodes }) => nodes.includes(cone) && nodes.includes('ground'))?.name;
  return inCoil || (suspension?.element && judge(atCone, { Cms, ...suspension.parameters }));
}
