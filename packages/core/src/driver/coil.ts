import type { Law, Nodes } from '../network/index.js';
import type { Field } from '../quantity/index.js';
import { readModel } from './model.js';

/** A branch of a coil that is a circuit: its value is a parameter of the model, in Ω or H. */
export interface CoilBranch {
  readonly kind: 'resistor' | 'inductor';
  readonly parameter: string;
  /** The two joints between which it stands: 0 is the end at Re, 1 the end at the motor, any other number a joint between. */
  readonly joints: readonly [from: number, to: number];
}

/** The formula of a coil model: what a voice coil has besides its resistance Re, with exp(+jωt). */
export interface CoilFormula {
  readonly name: string;
  /** SI numbers by name. Kernels get them as a list in this order. */
  readonly parameters: Readonly<Record<string, number>>;
  /** Keys of the bibliography, or words of your own. */
  readonly sources: readonly string[];
  /** Fills `out` with the real and the imaginary part of the impedance in Ω at ω rad/s, above 0. A kernel. */
  readonly impedance: (parameters: ArrayLike<number>, w: number, out: Float64Array) => void;
  /** Fills `out` with pairs of the same: the derivative by ln ω, then by each parameter. Left out, differences stand for it. */
  readonly slopes?: (parameters: ArrayLike<number>, w: number, out: Float64Array) => void;
  /** The coil of this impedance times a factor, with all times longer by a factor: Z′(ω/time) = impedance · Z(ω). */
  readonly scaled: (impedance: number, time: number) => CoilModel;
}

/**
 * A model of a voice coil, which a driver takes as `coil`. It has no impedance for direct current, because Re is all that there
 * is then, and the reference level leaves it out. `coilOverFrequency` makes one of a formula: yours is used exactly like ours,
 * and `coilLaws` tries it.
 */
export interface CoilModel extends CoilFormula {
  /** How it stands in a network: as resistances and inductances, one for each parameter, */
  readonly circuit?: readonly CoilBranch[];
  /** or as an element over frequency. */
  readonly element?: (name: string, nodes: Nodes) => Law;
}

/** The field of a driver that takes a {@link CoilModel}. */
export const coilField: Field<CoilModel> = {
  optional: false,
  read: (faults, value, path) => readModel<CoilModel>(faults, value, path, 'impedance'),
};
