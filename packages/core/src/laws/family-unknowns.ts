import type { Driver } from '../driver/index.js';
import type { System } from '../enclosure/index.js';
import { systemOf } from '../enclosure/index.js';
import { driverOfMotor, withoutModels } from './family-motors.js';
import type { Tried } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';
import { same } from './plain-record.js';
import type { By } from './rescaling.js';

/** A factor that no unit has by accident. */
const by: By = ([m, kg, s, A]) => 1.7 ** m * 0.6 ** kg * 2.3 ** s * 1.3 ** A;
const fieldOf = (spec: unknown, field: string) => (spec as Readonly<Record<string, unknown>>)[field];

/**
 * What an alignment chooses are numbers of the spec, each in its own unit, and each changes the network; it begins above zero. What are
 * called losses are quality factors of the spec, and each changes the network where it is stated.
 */
export function unknownLaws<Spec, Input>({ trial, system, air }: Tried<Spec, Input>): readonly LawResult[] {
  const { family, rescaled } = trial;
  const { unknowns = [], losses = [] } = family;
  const numbers = (made: System) => made.network.values;
  const moved = (field: string, factor: number) => {
    const { spec } = system();
    const value = fieldOf(spec, field);
    if (typeof value !== 'number') return `${field} is no number of the spec`;
    const other = systemOf(family, { ...spec, [field]: factor * value + (value === 0 ? 1e-3 : 0) }, air);
    return same(withoutModels(numbers(system())), withoutModels(numbers(other)))
      ? `${field} changes nothing`
      : undefined;
  };
  const unitOf = ({ unit }: (typeof unknowns)[number], made: System<Spec>) =>
    unit(driverOfMotor(made, trial.drivers)[0] as Driver, made.air, made.spec);
  return [
    tried('what an alignment chooses is there, and matters', unknowns.map(({ field }) => field).join(', '), () => {
      for (const one of unknowns) {
        const fault = moved(one.field, 1.01);
        if (fault !== undefined) return fault;
        if (!(unitOf(one, system()) > 0)) return `the unit of ${one.field} is ${unitOf(one, system())}`;
        if (one.starts.length === 0 || !one.starts.every((start) => start > 0))
          return `a search for ${one.field} begins at ${one.starts.join(', ') || 'nothing'}`;
      }
      return undefined;
    }),
    ...(rescaled === undefined
      ? []
      : [
          tried('what an alignment chooses has its unit', 'in other units', () => {
            const [one, handed] = [system(), rescaled(by)];
            const two = systemOf(family, handed.spec, handed.air);
            const wrong = unknowns.find((unknown) => {
              const [a, b] = [one, two].map((made) => {
                const beside = unknown.beside?.(made.spec) ?? 0;
                return ((fieldOf(made.spec, unknown.field) as number) + beside) / unitOf(unknown, made);
              }) as [number, number];
              return !alike(a, b);
            });
            return wrong && `${wrong.field} over its unit depends on the metre, the kilogram or the second`;
          }),
        ]),
    tried('its losses are there, and matter', losses.join(', '), () => {
      const { spec } = system();
      const names = unknowns.map(({ field }) => field);
      for (const field of losses) {
        if (names.includes(field)) return `${field} is no loss: an alignment chooses it`;
        if (fieldOf(spec, field) === undefined) continue;
        const fault = moved(field, 1.01);
        if (fault !== undefined) return fault;
      }
      return undefined;
    }),
  ];
}
