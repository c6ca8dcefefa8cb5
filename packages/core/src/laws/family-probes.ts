import type { System } from '../enclosure/index.js';
import type { Probe } from '../network/index.js';
import { joined } from './acoustic-exits.js';
import { chambersOf } from './chambers.js';
import { carriersOf, coneNode, motorsOf } from './family-motors.js';
import { numberOf, readings, type Tried } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';

/** Probes of one stem, each with the name of its part. */
const probesOf = ({ network: { topology } }: System, stem: string): readonly (readonly [string, string, Probe])[] =>
  Object.entries(topology.probes).flatMap(([name, probe]) => {
    const [first, ...part] = name.split(' ');
    return first === stem ? [[name, part.join(' '), probe] as const] : [];
  });

/**
 * The probes are what the response takes them for. For each motor there is one velocity of a cone: that of the node which the motor
 * moves, positive where it pushes air out. The current is that of the source, and the current of a part flows through its motor. The
 * voltage at the terminals is that of a node. The air speed is the flow of a vent over its stated area. A delay counts from the
 * nearest outlet. A positive voltage pushes a cone outwards (@source iec60268-5, polarity; from memory).
 */
export function probeLaws<Spec, Input>({ trial, system }: Tried<Spec, Input>): readonly LawResult[] {
  return [
    tried('the velocity of a cone is that of a motor', 'each probe', () => coneFault(system())),
    tried('the current is that of the source', 'each probe', () => currentFault(system())),
    tried('the terminals are a node', 'one probe', () => {
      const { probes, elements } = system().network.topology;
      const probe = probes.terminalVoltage;
      const isNode = probe?.of === 'potential' && probe.sign !== -1 && probe.factor === undefined;
      if (!isNode) return `they are ${JSON.stringify(probe)}`;
      const wires = elements.flatMap((one) =>
        one.kind === 'resistor' || one.kind === 'inductor' || one.kind === 'meter' ? [one.nodes] : [],
      );
      const source = elements.flatMap((one) => (one.kind === 'source' ? one.nodes : []));
      return joined(source, wires).has(probe.node) ? undefined : `${probe.node} is not wired to the source`;
    }),
    tried('air speed is flow over the stated area', 'each probe', () => {
      const made = system();
      const chambers = chambersOf(made, trial.chambers);
      for (const [name, part, probe] of probesOf(made, 'ventAirSpeed')) {
        if (probe.of !== 'flow' || probe.factor === undefined) return `${name} is not a flow over an area`;
        const chamber =
          part === '' && chambers.length === 1
            ? chambers[0]
            : chambers.find((one) => one.name === part || one.vent === probe.element);
        if (chamber?.ventArea === undefined) continue;
        const area = 1 / numberOf(made, probe.factor);
        if (!alike(area, chamber.ventArea)) return `${name} is over ${area} m², and ${chamber.ventArea} m² are stated`;
        const { vent = probe.element } = chamber;
        if (probe.element !== vent || probe.sign === -1) return `${name} is not the flow out of ${vent}`;
      }
      return undefined;
    }),
    tried('delays count from the nearest outlet', 'each outlet', () => {
      const made = system();
      const delays = made.network.topology.outlets.map(({ delay }) =>
        delay === undefined ? 0 : numberOf(made, delay),
      );
      return Math.min(...delays) === 0 && Math.max(...delays) < Infinity
        ? undefined
        : `they are ${delays.join(', ')} s`;
    }),
    tried('a positive voltage pushes cones outwards', 'each cone, at 0.1 Hz', () => {
      const made = system();
      const motors = motorsOf(made.network.topology);
      const currents = readings(
        made,
        Object.fromEntries(motors.map(({ name }) => [name, { of: 'flow', element: name }])),
        Float64Array.of(0.1),
      );
      // Far below every resonance the coils are resistances, and the force on a cone has the sign of the current.
      const inwards = probesOf(made, 'coneVelocity').find(([name, , probe]) => {
        const motor = motors.find((one) => probe.of === 'potential' && coneNode(one) === probe.node);
        if (motor === undefined) return false;
        const turns = [probe.sign === -1, motor.mechanical[0] === 'ground', !((currents[motor.name]?.re[0] ?? 0) > 0)];
        const isInwards = turns.filter(Boolean).length % 2 === 1;
        return isInwards !== (trial.opposed?.includes(name) ?? false);
      });
      return inwards && `${inwards[0]} does not: name it in opposed where it is meant to`;
    }),
  ];
}

function coneFault(system: System): string | undefined {
  const { elements } = system.network.topology;
  const nodes = motorsOf(system.network.topology).map(coneNode);
  const found = new Set<string>();
  for (const [name, , probe] of probesOf(system, 'coneVelocity')) {
    if (probe.of !== 'potential' || !nodes.includes(probe.node)) return `${name} is not a node that a motor moves`;
    if (probe.factor !== undefined) return `${name} is multiplied by ${probe.factor}`;
    const faces = elements.filter((one) => one.kind === 'piston' && one.mechanical[0] === probe.node);
    const [isOut, isIn] = [
      faces.some((one) => one.kind === 'piston' && one.front === 'ground'),
      faces.some((one) => one.kind === 'piston' && one.rear === 'ground'),
    ];
    if (isOut !== isIn && isOut !== (probe.sign !== -1)) return `${name} is positive inwards`;
    found.add(probe.node);
  }
  const silent = nodes.find((node) => !found.has(node));
  return silent === undefined ? undefined : `${silent}, which a motor moves, has no coneVelocity`;
}

function currentFault(system: System): string | undefined {
  const { elements, probes } = system.network.topology;
  const source = elements.find(({ kind }) => kind === 'source')?.name;
  for (const [name, part, probe] of probesOf(system, 'current')) {
    if (probe.of !== 'flow' || probe.sign === -1 || probe.factor !== undefined)
      return `${name} is not the flow of an element`;
    if (part === '') {
      if (probe.element !== source) return `${name} is the current of ${probe.element}, but the source is ${source}`;
      continue;
    }
    const cone = probes[`coneVelocity ${part}`];
    const motor = motorsOf(system.network.topology).find(
      (one) => cone?.of === 'potential' && coneNode(one) === cone.node,
    );
    if (motor === undefined) continue;
    if (!carriersOf(system, motor).includes(probe.element)) return `${name} does not run through ${motor.name}`;
  }
  return undefined;
}
