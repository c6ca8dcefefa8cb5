import type { Fault } from '../fault/index.js';

/** What a model of a coil and one of a suspension have in common. */
interface Model {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  readonly scaled: unknown;
}

/** Reads a model, which has a formula and finite parameters. JSON keeps its numbers, but not its functions. */
export function readModel<M extends Model>(
  faults: Fault[],
  value: unknown,
  path: string,
  formula: keyof M & string,
): M | undefined {
  const model = value as Partial<M> | null | undefined;
  const { parameters, scaled } = { ...model };
  const hasFunctions = typeof model?.[formula] === 'function' && typeof scaled === 'function';
  if (hasFunctions && parameters && Object.values(parameters).every(Number.isFinite)) {
    return value as M;
  }
  const expected = `a model with ${formula}(), scaled() and finite parameters`;
  faults.push({ code: 'unit', path, got: value, expected, remedy: 'Pass the model itself: JSON keeps no functions.' });
  return undefined;
}

/** The parameters of a model as its kernels take them. */
export const parametersOf = ({ parameters }: Model): Float64Array => Float64Array.from(Object.values(parameters));
