import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import type { Element } from '../network/index.js';
import { REFERENCE_PRESSURE, referenceLevel } from '../response/index.js';
import { exitsOf } from './acoustic-exits.js';
import { springsOf } from './family-flows.js';
import { coilOf, coneNode, driverOfMotor, motorsOf, numbersOf, sourceResistance } from './family-motors.js';
import type { Tried } from './family-trial.js';
import { type LawResult, tried } from './law.js';

/** dB: elements over frequency that are no part of the coil are read far away, and settle within this. */
const SETTLED = 0.02;

const isLeftOut = (element: Element): boolean => 'inReference' in element && element.inReference === false;

/**
 * The reference level leaves out the inductive parts of coils and the leaks, and nothing else. It is a number, or it is refused with
 * a reason. Far above every resonance, one driver with one side outside plays as its formula says, ρ Bl Sd/(2π Mms (Rg + Re))
 * (@source small1972direct), whatever is behind it. Its own coil is not a reason to refuse.
 */
export function referenceLaws<Spec, Input>({ trial, system }: Tried<Spec, Input>): readonly LawResult[] {
  return [
    tried('the reference is a level, or refused with words', 'once', () => {
      const level = levelOf(system());
      return typeof level === 'string' ? level : undefined;
    }),
    tried('its reference is ρ Bl Sd/(2π Mms (Rg + Re))', 'one driver whose front is outside', () =>
      formulaFault(system(), trial.drivers),
    ),
    tried('the reference leaves out coil and leak', 'each element', () => leftOutFault(system())),
  ];
}

/** The level in dB, nothing where it is refused with words, or what is wrong with it. */
function levelOf(system: System): number | undefined | string {
  try {
    const level = referenceLevel(system);
    return level > -3000 && level < Infinity ? level : `it is ${level} dB`;
  } catch (error) {
    return error instanceof InputError && error.message.length > 0 ? undefined : `threw ${String(error)}`;
  }
}

function formulaFault(system: System, drivers: Parameters<typeof driverOfMotor>[1]): string | undefined {
  const { elements } = system.network.topology;
  const [motor, ...others] = motorsOf(system.network.topology);
  const driver = driverOfMotor(system, drivers)[0];
  if (motor === undefined || driver === undefined || others.length > 0) return undefined;
  const cone = coneNode(motor);
  const isOutside = elements.some(
    (one) =>
      one.kind === 'piston' && one.mechanical.includes(cone) && (one.front === 'ground') !== (one.rear === 'ground'),
  );
  if (!isOutside) return undefined;
  const { Bl, Sd, Mms, Re, Le, L2 } = numbersOf(driver);
  const flow = (Bl * Sd) / (2 * Math.PI * Mms * (Re + sourceResistance(system)));
  const expected = 20 * Math.log10((system.air.density * flow) / REFERENCE_PRESSURE);
  const level = levelOf(system);
  const isLumped = elements.every(({ kind }) => kind !== 'law' && kind !== 'line');
  // A filter before the driver may well take the level away.
  const reactances = elements.filter(({ kind }) => kind === 'inductor' || kind === 'capacitor').length;
  const own = [Le, L2].filter((value) => value > 0).length;
  if (typeof level !== 'number')
    return isLumped && reactances === own ? `it is refused, not ${expected} dB` : undefined;
  return Math.abs(level - expected) <= (isLumped ? 1e-6 : SETTLED) ? undefined : `${level} dB, not ${expected} dB`;
}

function leftOutFault(system: System): string | undefined {
  const { topology } = system.network;
  const coils = motorsOf(topology).flatMap((motor) => coilOf(system, motor));
  const springs = springsOf(system);
  const exits = new Set(exitsOf(topology, springs).map(({ name }) => name));
  const stored = new Set(
    topology.elements.flatMap((one) => (springs.has(one.name) && 'nodes' in one ? one.nodes : [])),
  );
  const isLeak = (one: Element) =>
    one.kind === 'acousticResistance' &&
    exits.has(one.name) &&
    one.nodes.some((node) => node !== 'ground' && stored.has(node));
  for (const one of topology.elements) {
    // Elements over frequency say themselves what they are.
    if (one.kind === 'law' || one.kind === 'line') continue;
    const isOfCoil = one.kind === 'inductor' && coils.includes(one.name);
    if ((isOfCoil || isLeak(one)) !== isLeftOut(one)) return `${one.name} is ${isLeftOut(one) ? '' : 'not '}left out`;
  }
  return undefined;
}
