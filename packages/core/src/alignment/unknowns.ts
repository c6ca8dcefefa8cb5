import type { Air } from '../air/index.js';
import type { DrivenSpec, Unknown } from '../enclosure/index.js';
import { si } from '../quantity/index.js';

/**
 * One number that is sought: where it goes in the trial, and where its search begins. It is positive and is sought by its
 * logarithm, unless it is the parameter of a target.
 */
export interface Sought<Spec> {
  readonly name: string;
  readonly starts: readonly number[];
  /** Writes it into a trial, which is a copy that no one else holds. */
  readonly put: (trial: Spec, value: number) => void;
  /** Whether the number can be built; default always. */
  readonly canBe?: (spec: Spec) => boolean;
}

/** The fields of a spec that an alignment chooses. */
export const boxUnknowns = <Spec extends DrivenSpec>(
  open: readonly Unknown<Spec>[],
  spec: Spec,
  air: Air,
): Sought<Spec>[] =>
  open.map(({ field, unit, starts, beside }) => {
    const one = unit(spec.drivers.equivalent, air, spec);
    const besides = beside?.(spec) ?? 0;
    return {
      name: field,
      starts: starts.map((ratio) => ratio * one),
      put: (trial, value) => {
        writable(trial)[field] = value - besides;
      },
      ...(beside && { canBe: (trial) => numbersOf(trial)[field]! >= LEAST }),
    };
  });

/** Less than this of anything is not read, SI. */
const LEAST = 1e-7;

/** The fields of a spec that are numbers. */
export const numbersOf = (spec: unknown) => spec as Readonly<Record<string, number>>;

/** Whether all numbers of a box can be built. */
export const canBeBuilt = <Spec>(sought: readonly Sought<Spec>[], spec: Spec): boolean =>
  sought.every(({ canBe }) => canBe?.(spec) ?? true);

/**
 * The resistance of the coil, as a multiple of what it is. The total quality factor of the driver follows it. What is above 1 can
 * be put in front of the driver; below 1 it stands for a driver of a lower quality factor, which no resistor makes.
 */
export const resistanceUnknown = <Spec extends DrivenSpec>({ drivers }: Spec): Sought<Spec> => ({
  name: 'sourceResistance',
  starts: [1, 2.5, 0.5],
  put: (trial, value) => {
    writable(trial.drivers.equivalent).Re = drivers.equivalent.Re * value;
  },
});

const writable = (record: unknown) => record as Record<string, unknown>;

/** A copy of a spec, to be written into. */
export const trialOf = <Spec extends DrivenSpec>(spec: Spec): Spec => ({
  ...spec,
  drivers: { ...spec.drivers, equivalent: { ...spec.drivers.equivalent } },
});

/** Writes the numbers that are sought into a trial, and returns it. */
export function fill<Spec>(sought: readonly Sought<Spec>[], trial: Spec, numbers: (i: number) => number): Spec {
  for (let i = 0; i < sought.length; i++) sought[i]!.put(trial, numbers(i));
  return trial;
}

/** The spec of a box whose coil seems to have so many times its resistance: the rest stands in front of the driver. */
export const withResistance = <Spec extends DrivenSpec>(spec: Spec, value: number): Spec => ({
  ...spec,
  sourceResistance: si('resistance', spec.sourceResistance + (value - 1) * spec.drivers.equivalent.Re),
});
