import type { Law, Nodes } from '../network/index.js';
import type { Field } from '../quantity/index.js';
import { readModel } from './model.js';

/** The formula of a suspension model: how its compliance departs from Cms over frequency, with exp(+jωt). */
export interface SuspensionFormula {
  readonly name: string;
  /** SI numbers by name. Kernels get them as a list in this order. */
  readonly parameters: Readonly<Record<string, number>>;
  /** Keys of the bibliography, or words of your own. */
  readonly sources: readonly string[];
  /** Fills `out` with the real and the imaginary part of the compliance over Cms at ω rad/s, above 0. A kernel. */
  readonly compliance: (parameters: ArrayLike<number>, w: number, out: Float64Array) => void;
  /** Fills `out` with pairs of the same: the derivative by ln ω, then by each parameter. Left out, differences stand for it. */
  readonly slopes?: (parameters: ArrayLike<number>, w: number, out: Float64Array) => void;
  /** The suspension with all times longer by a factor: c′(ω/time) = c(ω). */
  readonly scaled: (time: number) => SuspensionModel;
}

/**
 * A model of a suspension, which a driver takes as `suspension`. Cms and Rms stay fields of the driver; Rms is the part of the
 * loss that is proportional to velocity. `suspensionOverFrequency` makes a model of a formula: yours is used exactly like ours,
 * and `suspensionLaws` tries it.
 */
export interface SuspensionModel extends SuspensionFormula {
  /** How it stands in a network, with Cms as the first of its numbers. Without it, it is a plain spring of compliance Cms. */
  readonly element?: (name: string, nodes: Nodes) => Law;
}

/** The field of a driver that takes a {@link SuspensionModel}. */
export const suspensionField: Field<SuspensionModel> = {
  optional: false,
  read: (faults, value, path) => readModel<SuspensionModel>(faults, value, path, 'compliance'),
};
