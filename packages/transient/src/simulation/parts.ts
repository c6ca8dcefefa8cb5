import { type Fault, InputError, refuse } from '@airspring/core/fault';
import type { Branch, Element, Motor, Network, Nodes } from '@airspring/core/network';

/** A branch with its value. One whose value is infinite is a short, or is left out. */
export interface Part {
  readonly name: string;
  readonly nodes: Nodes;
  readonly does: 'stores potential' | 'stores flow' | 'resists' | 'conducts' | 'shorts';
  readonly isElectrical: boolean;
  readonly value: number;
}

/** The parts of a network as a simulation needs them: what is linear, and the places of what is not. */
export interface Parts {
  readonly linear: readonly Part[];
  readonly others: readonly Exclude<Element, Branch | Motor>[];
  /** The one motor; its coil, and the cone that it moves. */
  readonly motor: Motor;
  /** Force factor, stiffness and inductance at rest. */
  readonly Bl: number;
  readonly stiffness: number;
  /** 0 without. */
  readonly Le: number;
  readonly numberOf: (name: string) => number;
}

const storing = {
  capacitor: 'stores potential',
  mass: 'stores potential',
  acousticCompliance: 'stores potential',
  inductor: 'stores flow',
  spring: 'stores flow',
  acousticMass: 'stores flow',
  resistor: 'resists',
  acousticResistance: 'resists',
  damper: 'conducts',
} as const;

/** The part that stands for a branch. Infinite are the compliance of the space behind a wall, or a resistance without any flow. */
function partOf({ kind, name, nodes }: Branch, value: number): readonly Part[] {
  const does = storing[kind];
  const part = { name, nodes, isElectrical: ['resistor', 'inductor', 'capacitor'].includes(kind) };
  if (value !== Infinity) return [{ ...part, does, value }];
  return does === 'stores potential' || does === 'conducts' ? [{ ...part, does: 'shorts', value: 0 }] : [];
}

const isBranch = (element: Element): element is Branch => Object.hasOwn(storing, element.kind);
export const isSame = (a: Nodes, b: Nodes) => (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);

/**
 * Takes a network apart. Its one motor and the one spring of its cone become places for nonlinear forces; so does the inductance
 * `Le`, if it is to depend on displacement.
 */
export function partsOf({ topology, values }: Network, movingInductance: boolean): Parts {
  const faults: Fault[] = [];
  const fault = (got: unknown, expected: string, remedy: string) =>
    faults.push({ code: 'inconsistent', path: 'network', got, expected, remedy });
  const numberOf = (name: string): number => {
    const value = values[name];
    return typeof value === 'number' ? value : (value?.[0] ?? Number.NaN);
  };
  const { elements } = topology;
  for (const { kind, name } of elements) {
    if (kind === 'law' || kind === 'line')
      fault(name, 'a network of lumped elements', 'Replace elements over frequency by their lumpedFit.');
  }
  for (const { delay } of topology.outlets) {
    if (delay !== undefined && numberOf(delay) !== 0)
      fault(delay, 'outlets that are heard at once', 'Leave out the delay.');
  }
  const motors = elements.filter((element) => element.kind === 'motor');
  const motor = motors[0];
  if (motor === undefined || motors.length > 1) {
    fault(`${motors.length} motors`, 'one motor', 'Wire equal drivers as one group.');
    throw new InputError(faults);
  }
  const springs = elements.filter((one) => one.kind === 'spring' && isSame(one.nodes, motor.mechanical));
  if (springs.length !== 1)
    fault(`${springs.length} springs at the cone`, 'one spring', 'Give the cone one suspension.');
  if (!elements.some((one) => one.kind === 'mass' && isSame(one.nodes, motor.mechanical)))
    fault('no mass at the cone', 'a cone with a mass', 'Give the moving parts a mass.');
  const inductance = elements.find(({ kind, name }) => kind === 'inductor' && name === 'Le');
  refuse(faults);
  const branches = elements.filter(isBranch).filter((one) => one !== springs[0]);
  return {
    linear: branches.flatMap((one) =>
      movingInductance && one === inductance
        ? [{ name: one.name, nodes: one.nodes, isElectrical: true, does: 'shorts' as const, value: 0 }]
        : partOf(one, numberOf(one.name)),
    ),
    others: elements.filter((one): one is Parts['others'][number] => !isBranch(one) && one.kind !== 'motor'),
    motor,
    Bl: numberOf(motor.name),
    stiffness: 1 / numberOf((springs[0] as Element).name),
    Le: inductance ? numberOf('Le') : 0,
    numberOf,
  };
}
