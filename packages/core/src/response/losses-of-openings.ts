import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import { type Fault, refuse } from '../fault/index.js';
import type { LossyOpening } from './lossy-openings.js';
import type { LossByVent } from './openings-at-level.js';

const isLoss = (value: unknown): value is FlowLoss => typeof (value as FlowLoss | null)?.resistance === 'function';

/** The loss of each opening in their order: one loss for one opening, a record of losses for several. */
export function lossesOf(loss: FlowLoss | LossByVent, openings: readonly LossyOpening[]): readonly FlowLoss[] {
  const faults: Fault[] = [];
  const path = 'options.loss';
  const one = (value: unknown, at: string) => flowLossField.read(faults, value, at) as FlowLoss;
  if (openings.length === 1) {
    const read = [one(loss, path)];
    refuse(faults);
    return read;
  }
  const names = openings.map(({ name }) => name);
  const expected = `a loss for each vent: ${names.join(', ')}`;
  if (isLoss(loss) || typeof loss !== 'object' || loss === null) {
    const remedy = `Give { ${names.map((name) => `'${name}': …`).join(', ')} }: unlike vents lose unlike amounts.`;
    const fault: Fault = { code: 'inconsistent', path, got: isLoss(loss) ? 'one loss' : loss, expected, remedy };
    refuse([fault]);
  }
  const given = loss as LossByVent;
  for (const name of Object.keys(given)) {
    if (names.includes(name)) continue;
    faults.push({ code: 'unknown-field', path: `${path}.${name}`, got: name, expected, remedy: 'Correct the name.' });
  }
  const read = names.map((name) => one(Object.hasOwn(given, name) ? given[name] : undefined, `${path}.${name}`));
  refuse(faults);
  return read;
}
