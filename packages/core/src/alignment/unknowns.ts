import type { Air } from '../air/index.js';
import { resonanceInAir } from '../driver/resonance.js';
import { type DrivenSpec, totalQ, type Unknown } from '../enclosure/index.js';
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

/** No quantity below this is read, in SI units. */
const LEAST = 1e-7;

/** The fields of a spec that are numbers. */
export const numbersOf = (spec: unknown) => spec as Readonly<Record<string, number>>;

/** Whether all numbers of a box can be built. */
export const canBeBuilt = <Spec>(sought: readonly Sought<Spec>[], spec: Spec): boolean =>
  sought.every(({ canBe }) => canBe?.(spec) ?? true);

/** Total quality factor of the driver of a spec, at its resonance. */
export const driverQ = (spec: DrivenSpec): number =>
  totalQ(spec, 2 * Math.PI * resonanceInAir(spec.drivers.equivalent));

/** Its mechanical quality factor, which no resistance raises it above. */
export const mechanicalQ = ({
  drivers: {
    equivalent: { Mms, Cms, Rms },
  },
}: DrivenSpec): number => Math.sqrt(Mms / Cms) / Rms;

/** The damping of a driver that has a total quality factor, kg/s: mechanical and electrical. */
const dampingOf = ({ drivers: { equivalent } }: DrivenSpec, Q: number): number =>
  Math.sqrt(equivalent.Mms / equivalent.Cms) / Q;

/**
 * The resistance with which the coil of a driver gives it a total quality factor, as a multiple of what it has. What is above 1 can
 * be put in front of the driver. It is negative above the mechanical quality factor.
 */
export function resistanceFactor(spec: DrivenSpec, Q: number): number {
  const { Rms, Bl, Re } = spec.drivers.equivalent;
  return (Bl ** 2 / (dampingOf(spec, Q) - Rms) - spec.sourceResistance) / Re;
}

/** Neither the electrical part of the damping nor the coil's part of the resistance is less than this share. */
const LEAST_SHARE = 1e-3;

/**
 * The total quality factor of the driver. The resistance of the coil follows it, and the mechanical one where that is not enough: then
 * it stands for another driver. Its starts are those of any driver, so that drivers that differ in damping alone find the same boxes.
 */
export const qualityUnknown = <Spec extends DrivenSpec>(spec: Spec): Sought<Spec> => {
  const { Rms, Bl, Re } = spec.drivers.equivalent;
  const most = Bl ** 2 / (spec.sourceResistance + LEAST_SHARE * Re);
  return {
    name: 'totalQ',
    starts: [0.35, 0.9, 0.18, 0.06],
    put: (trial, Q) => {
      const damping = dampingOf(spec, Q);
      const electrical = Math.min(Math.max(damping - Rms, LEAST_SHARE * damping), most);
      const driver = writable(trial.drivers.equivalent);
      driver.Re = Bl ** 2 / electrical - spec.sourceResistance;
      driver.Rms = damping - electrical;
    },
  };
};

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

/** The spec of a box whose driver seems to have `factor` times its resistance: what is added stands in front of the driver. */
export const withResistance = <Spec extends DrivenSpec>(spec: Spec, factor: number): Spec => ({
  ...spec,
  sourceResistance: si('resistance', spec.sourceResistance + (factor - 1) * spec.drivers.equivalent.Re),
});
