import type { Inputs, Row, Solved } from './companion.js';
import type { Nonlinear } from './instant.js';
import { type Motion, place } from './motion.js';
import type { Parts } from './parts.js';
import type { Account } from './step.js';

/** What is stored in a motion, J: ½ C e² and ½ L f² of each store, the springs, and the moving inductance. */
export const storedEnergy =
  (parts: Parts, { stores }: Inputs, { spring, inductance }: Nonlinear) =>
  ({ stores: states, own }: Motion): number => {
    let sum = 0;
    stores.forEach(({ value }, k) => (sum += (value * states[k]! ** 2) / 2));
    const x = own[place.displacement]!;
    sum += parts.stiffness * spring.energy(x);
    if (inductance) {
      const curve = new Float64Array(2);
      inductance.at(x, curve);
      sum += own[place.flux]! ** 2 / (2 * parts.Le * curve[0]!);
    }
    return sum;
  };

/**
 * Adds up what the drive gives and what is lost in each resistance, in the warm coil and in each loss, from the means over an
 * interval. It uses no energy of any store, so that it can contradict a step that makes or loses some.
 */
export function accountOf(
  parts: Parts,
  inputs: Inputs,
  network: Solved,
  interval: number,
  warm: () => number,
): Account {
  const flowOf = (name: string) => network.flow(name) as Row;
  const source = parts.others.find(({ kind }) => kind === 'source');
  const drive = source ? flowOf(source.name) : new Float64Array(inputs.count);
  const resisting = parts.linear.filter(({ does }) => does === 'resists' || does === 'conducts');
  const rows = resisting.map(({ does, name, value, nodes }) =>
    does === 'resists' ? { row: flowOf(name), by: value } : { row: network.potential(nodes), by: value },
  );
  const given = new Float64Array(inputs.count);
  const sum = (row: Row) => row.reduce((total, value, i) => total + value * given[i]!, 0);
  return ({ stores, own }, voltage, induced, forces, speeds) => {
    given.set(stores);
    given[inputs.drive] = voltage;
    given[inputs.coil] = induced;
    given.set(forces, inputs.force);
    own[place.given]! += interval * voltage * sum(drive);
    let lost = warm() * own[place.current]! ** 2;
    for (const { row, by } of rows) lost += by * sum(row) ** 2;
    for (let j = 1; j < speeds.length; j++) lost += forces[j]! * speeds[j]!;
    own[place.lost]! += interval * lost;
  };
}
