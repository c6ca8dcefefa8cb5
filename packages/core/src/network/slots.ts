import { type Fault, refuse } from '../fault/index.js';
import { branchLaw, type Element, isBranch, type Topology, type Values } from './element.js';

/** Where the numbers of a name stand. */
export interface Slot {
  readonly at: number;
  readonly count: number;
}

/** The slots of a topology: its elements in their order, then factors of probes, then delays of outlets. */
export interface Slots {
  readonly of: ReadonlyMap<string, Slot>;
  readonly size: number;
}

/** How many numbers an element has. */
const countOf = (element: Element): number => {
  if (element.kind === 'source' || element.kind === 'meter') return 0;
  return element.kind === 'law' || element.kind === 'line' ? element.parameters.length : 1;
};

export function slotsOf({ elements, probes, outlets }: Topology): Slots {
  const of = new Map<string, Slot>();
  let size = 0;
  const add = (name: string, count: number) => {
    if (count === 0 || of.has(name)) return;
    of.set(name, { at: size, count });
    size += count;
  };
  for (const element of elements) add(element.name, countOf(element));
  for (const { factor } of Object.values(probes)) if (factor !== undefined) add(factor, 1);
  for (const { delay } of outlets) if (delay !== undefined) add(delay, 1);
  return { of, size };
}

/** Sets the numbers of a name. */
export type Setter = (name: string, ...numbers: readonly number[]) => void;

/** A setter into `values`. A name without a slot, a slot set twice, or too many numbers are faults; `finish` refuses them. */
export function strictSetter({ of, size }: Slots, values: Float64Array): { readonly set: Setter; finish: () => void } {
  const faults: Fault[] = [];
  const done = new Uint8Array(size);
  const add = (code: Fault['code'], name: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code, path: `values.${name}`, got, expected, remedy });
  const set: Setter = (name, ...numbers) => {
    const slot = of.get(name);
    if (slot === undefined) {
      add('unknown-field', name, name, 'the name of an element, factor or delay', 'Correct the name, or remove it.');
    } else if (slot.count !== numbers.length) {
      add('inconsistent', name, numbers.length, `${slot.count} numbers`, 'Give one number for each slot.');
    } else if (done[slot.at] === 1) add('conflict', name, 'set twice', 'one value', 'Set it once.');
    else {
      values.set(numbers, slot.at);
      done[slot.at] = 1;
    }
  };
  const finish = () => {
    for (const [name, { at }] of of) {
      if (done[at] === 0) add('empty', name, undefined, 'a value', `Set '${name}', which the topology has.`);
    }
    refuse(faults);
  };
  return { set, finish };
}

/** The numbers of a network in the order of its slots. */
export function valuesOf(slots: Slots, values: Values): Float64Array {
  const out = new Float64Array(slots.size);
  const { set, finish } = strictSetter(slots, out);
  for (const [name, value] of Object.entries(values)) set(name, ...(typeof value === 'number' ? [value] : value));
  finish();
  return out;
}

/** How a branch enters the equations: with value^exponent × s^power. */
export interface Form {
  readonly exponent: 1 | -1;
  readonly power: -1 | 0 | 1;
}

/** The form of a branch that stands as it is said. */
export function formOf(element: Element, asImpedance: boolean): Form {
  if (!isBranch(element)) return { exponent: 1, power: 0 };
  const [exponent, power] = branchLaw[element.kind];
  return asImpedance ? { exponent: -exponent as 1 | -1, power: -power as -1 | 0 | 1 } : { exponent, power };
}
