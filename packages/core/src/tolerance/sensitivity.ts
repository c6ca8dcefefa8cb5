import type { System } from '../enclosure/index.js';
import { type Fault, type Impossible, InputError, refuse } from '../fault/index.js';
import type { Gradient, GradientResult } from '../response/index.js';

/** How a result changes with each input of a system. */
export interface Sensitivity {
  readonly ok: true;
  readonly value: number;
  /** ∂value/∂input, in the units of both. */
  readonly byInput: Readonly<Record<string, number>>;
  /** Change of the value when each input increases by one per cent; 0 for an input of 0. */
  readonly byPercent: Readonly<Record<string, number>>;
  readonly oneSided?: true;
}

/** Logarithms of all numbers of a system to which a gradient refers. A number that is 0 or infinite has no relative change. */
function logarithms({ network: { topology, values }, air }: System): Map<string, number> {
  const log = (value: number) => (value > 0 && value < Infinity ? Math.log(value) : 0);
  const found = new Map([['air.density', log(air.density)]]);
  const laws = new Map(
    topology.elements.flatMap((one) => (one.kind === 'law' || one.kind === 'line' ? [[one.name, one] as const] : [])),
  );
  for (const [name, value] of Object.entries(values)) {
    if (typeof value === 'number' && !laws.has(name)) found.set(name, log(value));
    else
      [value].flat().forEach((one, k) => {
        found.set(`${name}.${laws.get(name)?.parameters[k]}`, log(Math.abs(one)));
      });
  }
  return found;
}

/**
 * How a result changes with each input of any kind: the exact gradient with respect to the network elements, times the
 * change of the elements with the input,
 *
 * $$ \frac{\partial r}{\partial x} = \sum_e \frac{\partial r}{\partial \ln v_e}\,\frac{\partial \ln v_e}{\partial x} $$
 *
 * The second factor is a difference quotient of logarithms, extrapolated twice. Element values are products of powers of the
 * inputs, or nearly so, and for such products it is exact to rounding. Elements are matched by name; their list must not change.
 *
 * An input of 0 has no logarithm, and an element may be absent because of it. Its slope is the one to the right of 0, from
 * results at 0, h/4, h/2 and h, where the step h has the unit of the input. The first two powers of h are removed.
 *
 * @validity inputs above zero for which a change of 2 % leaves the topology as it is; inputs of zero with a step that is small
 *   compared with the quantities to which the input is added
 * @neglects nothing beyond 10⁻¹⁰ of the gradient; for an input of 0, terms of the third power of h
 * @throws InputError `not-finite`, `not-positive` for an input, `inconsistent` for one that changes the list of elements,
 *   `empty` for an input of 0 without a step
 * @source richardson1927 (extrapolated differences)
 * @example sensitivity(({ fb }) => ventedBox({ drivers, netVolume: '45 L', fb: si('frequency', fb) }), { fb: 29 }, cutoffGradient)
 */
export function sensitivity<Inputs extends Readonly<Record<string, number>>>(
  make: (inputs: Inputs) => System,
  inputs: Inputs,
  result: (system: System) => GradientResult,
  /** The step h of each input that is 0. */
  steps: { readonly [Name in keyof Inputs]?: number | undefined } = {},
): Sensitivity | Impossible {
  refuse(
    Object.entries(inputs).flatMap(([name, got]): Fault[] => {
      const step = steps[name];
      if (got > 0 && got < Infinity) return [];
      if (got === 0 && step !== undefined && step > 0 && step < Infinity) return [];
      const [path, remedy] = [`inputs.${name}`, 'Leave it out of the inputs.'];
      if (got === 0) {
        const expected = 'a step above zero for an input of 0';
        return [
          {
            code: 'empty',
            path: `steps.${name}`,
            got: step,
            expected,
            remedy: 'Give a small step in the unit of the input.',
          },
        ];
      }
      const code = Number.isFinite(got) ? 'not-positive' : 'not-finite';
      return [{ code, path, got, expected: 'a value of zero or more', remedy }];
    }),
  );
  const found = result(make(inputs));
  if (!found.ok) return found;
  const slope = (name: string): number =>
    chain(found, (x) => alike(name, logarithms(make({ ...inputs, [name]: x }))), inputs[name]!);
  const names = [...logarithms(make(inputs)).keys()];
  const alike = (input: string, values: Map<string, number>) => {
    if (values.size === names.length && names.every((name) => values.has(name))) return values;
    const [path, remedy] = [`inputs.${input}`, 'Leave it out of the inputs.'];
    const expected = 'an input that leaves the elements the same when it changes by 2 %';
    throw new InputError([{ code: 'inconsistent', path, got: inputs[input], expected, remedy }]);
  };
  const byInput: Record<string, number> = {};
  const byPercent: Record<string, number> = {};
  for (const [name, x] of Object.entries(inputs)) {
    if (x > 0) {
      const perLog = slope(name);
      byInput[name] = perLog / x;
      byPercent[name] = perLog / 100;
      continue;
    }
    const at = (value: number) => result(make({ ...inputs, [name]: value }));
    const right = slopeAtZero(found.value, at, steps[name]!);
    if (typeof right !== 'number') return right;
    byInput[name] = right;
    byPercent[name] = 0;
  }
  return { ok: true, value: found.value, byInput, byPercent, ...(found.oneSided && { oneSided: true as const }) };
}

/** Slope to the right of 0 from steps of h, h/2 and h/4, with the first two powers of the step removed. */
function slopeAtZero(value: number, at: (x: number) => GradientResult, h: number): number | Impossible {
  const quotients: number[] = [];
  for (const step of [h, h / 2, h / 4]) {
    const found = at(step);
    if (!found.ok) return found;
    quotients.push((found.value - value) / step);
  }
  const [a, b, c] = quotients as [number, number, number];
  return (8 * c - 6 * b + a) / 3;
}

/** ∂result/∂ln x from steps of 2, 1 and 0.5 % of x, with the first two powers of the step removed. */
function chain({ byElement }: Gradient, at: (x: number) => Map<string, number>, x: number): number {
  const quotient = (h: number): number => {
    const [below, above] = [at(x * Math.exp(-h)), at(x * Math.exp(h))];
    let sum = 0;
    for (const [name, slope] of Object.entries(byElement)) {
      sum += (slope * (above.get(name)! - below.get(name)!)) / (2 * h);
    }
    return sum;
  };
  const [a, b, c] = [quotient(0.02), quotient(0.01), quotient(0.005)] as [number, number, number];
  const [ab, bc] = [(4 * b - a) / 3, (4 * c - b) / 3];
  return (16 * bc - ab) / 15;
}
