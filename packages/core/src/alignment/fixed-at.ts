import { type Fault, type Impossible, impossible, refuse } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import type { Alignment, FreeParameter } from './alignment.js';
import { judgeAlignment } from './refusals.js';

/** How nearly two parameters of one alignment must agree. */
const AGREE = 1e-6;

/** Three digits; a rounding of zero is zero. */
const digits = (value: number): string => (Math.abs(value) < AGREE ? '0' : value.toPrecision(3));

const agrees = (a: number | undefined, b: number): boolean =>
  a !== undefined && Math.abs(a - b) <= AGREE * Math.max(1, Math.abs(b));

/** The values that a parameter takes over the range of the free one, ascending. */
function rangeOf({ from, to, told }: FreeParameter, name: string): readonly [least: number, most: number] {
  const ends = [told(from)[name]!, told(to)[name]!] as const;
  return [Math.min(...ends), Math.max(...ends)];
}

/** The free parameter at which a told one has a value inside its range. */
function parameterWith({ from, to, told }: FreeParameter, name: string, value: number): number | undefined {
  const signed = (at: number) => Math.max(-1e9, Math.min(1e9, told(at)[name]! - value));
  const root = bracketedRoot(signed, from, to);
  return root.ok ? root.x : undefined;
}

function noParameters(got: unknown): Fault[] {
  if (typeof got === 'object' && got !== null) return [];
  const expected = 'a record of parameters, such as { ripple: 0.5 }';
  return [{ code: 'empty', path: 'parameters', got, expected, remedy: 'Give the record.' }];
}

/**
 * An alignment with stated parameters: the one of a family of shapes that the driver would choose otherwise. An alignment that
 * is fixed already must have these parameters.
 *
 * @validity parameters that rise or fall over the whole range of the free one
 * @neglects nothing
 * @returns the fixed alignment, or why it has no such parameters
 * @throws InputError `inconsistent` for what is no alignment, `empty` without parameters
 * @source own (root of what the alignment tells)
 * @example fixedAt(chebyshev(4), { ripple: 0.5 }).ok // true
 */
export function fixedAt(
  alignment: Alignment,
  parameters: Readonly<Record<string, number>>,
): { readonly ok: true; readonly alignment: Alignment } | Impossible {
  refuse([...judgeAlignment(alignment), ...noParameters(parameters)]);
  const { free, name, target } = alignment;
  const names = Object.keys({ ...alignment.parameters, ...free?.told(free.from) });
  const refused = (parameter: string, text: string) => impossible(parameter, `${name} ${text}.`);
  for (const [parameter, value] of Object.entries(parameters)) {
    if (!names.includes(parameter)) {
      return refused(
        parameter,
        names.length === 0
          ? 'has no parameter'
          : `has the parameter${names.length === 1 ? '' : 's'} ${names.join(', ')}`,
      );
    }
    const fixed = alignment.parameters[parameter];
    if (fixed !== undefined && !agrees(fixed, value)) return refused(parameter, `has ${parameter} = ${fixed}`);
  }
  const [first] = Object.entries(parameters).filter(([parameter]) => alignment.parameters[parameter] === undefined);
  if (first === undefined || free === undefined || typeof target !== 'function') return { ok: true, alignment };
  const [parameter, value] = first;
  const [least, most] = rangeOf(free, parameter);
  const at = value >= least && value <= most ? parameterWith(free, parameter, value) : undefined;
  if (at === undefined) {
    return refused(parameter, `has ${parameter} from ${digits(least)} to ${digits(most)}`);
  }
  const told = free.told(at);
  const other = Object.entries(parameters).find(([one, wanted]) => one in told && !agrees(told[one], wanted));
  if (other) {
    return refused(other[0], `has ${other[0]} = ${told[other[0]]!.toPrecision(4)} where ${parameter} is ${value}`);
  }
  const { free: _, ...rest } = alignment;
  return {
    ok: true,
    alignment: {
      ...rest,
      target: (_, numerator) => target(at, numerator),
      parameters: { ...alignment.parameters, ...told },
    },
  };
}
