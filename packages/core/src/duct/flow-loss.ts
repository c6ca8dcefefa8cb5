import type { Air } from '../air/index.js';
import { type Field, notNegative, optional, type RatioInput, readFields } from '../quantity/index.js';

/**
 * How much pressure air loses that swings to and fro through a duct, as a value. Ours and your own are used alike. The loss is given
 * by its fundamental alone: the amplitude of the pressure in phase with the speed, over the amplitude of the speed.
 */
export interface FlowLoss {
  /** A word for the reader: 'ends', 'bend', 'walls'. */
  readonly name: string;
  /** Citation keys. */
  readonly sources: readonly string[];
  /** Pa·s/m at a peak mean speed in m/s, zero included, and a frequency in Hz. Zero or more; speed × resistance never falls. */
  readonly resistance: (airSpeedPeak: number, frequency: number, air: Air) => number;
}

/** How a loss is read: as a value with a function. */
export const flowLossField: Field<FlowLoss> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof (value as FlowLoss | null)?.resistance === 'function') return value as FlowLoss;
    const expected = 'a loss: a record with a name, sources and a function resistance';
    const remedy = 'Pass one of ventLoss, quadraticLoss, or one of your own.';
    faults.push({ code: 'unit', path, got: value, expected, remedy });
    return undefined;
  },
};

/** A loss of flow that grows with the square of the speed, in each of its two directions. */
export interface QuadraticLoss extends FlowLoss {
  /** Pressure lost over ½ρu², for flow out of the box and into it. */
  readonly outward: number;
  readonly inward: number;
}

/** Loss coefficients of both directions. */
export interface QuadraticLossInput {
  /** Pressure lost over ½ρu² by flow out of the box. */
  readonly outward: RatioInput;
  /** The same for flow into the box; default as outward. */
  readonly inward?: RatioInput;
}

const shape = { outward: notNegative('ratio'), inward: optional(notNegative('ratio')) };

/** {@link quadraticLoss} for numbers that were read before. */
export const quadraticLossOf = (
  name: string,
  outward: number,
  inward: number,
  sources: readonly string[] = ['ingard1967'],
): QuadraticLoss => {
  const perSpeed = (2 / (3 * Math.PI)) * (outward + inward);
  return { name, sources, outward, inward, resistance: (speed, _frequency, { density }) => perSpeed * density * speed };
};

/**
 * A loss that grows with the square of the speed, as jets lose at an end or in a bend. A sinusoidal flow loses at its fundamental as
 * in a resistance that grows with its amplitude:
 *
 * $$ \Delta p = \tfrac12 \rho K u |u| \;\Rightarrow\; r = \frac{4}{3\pi}\,\rho K \hat u,\qquad K = \frac{K_{out} + K_{in}}{2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $K_{out}$ | `outward` | 1 | loss coefficient of flow out of the box |
 * | $K_{in}$ | `inward` | 1 | loss coefficient of flow into the box |
 * | $\hat u$ | | m/s | peak of the mean speed |
 * | $r$ | `resistance` | Pa·s/m | specific resistance at the fundamental |
 *
 * @validity flow that acts at each instant as steady flow does, which needs a stroke that is long compared with the edges
 * @neglects harmonics: the third of the pressure is a fifth of its fundamental; the mean pressure of unlike directions
 * @returns a {@link QuadraticLoss}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source ingard1967 quasi-steady orifice; Fourier coefficient 8/(3π) of |sin| sin
 * @example quadraticLoss({ outward: 1.5 }).resistance(10, 30, standardAir) // 7.66 Pa·s/m
 */
export function quadraticLoss(input: QuadraticLossInput): QuadraticLoss {
  const { outward, inward = outward } = readFields('loss', input, shape);
  return quadraticLossOf('quadratic', outward, inward);
}

/**
 * Several losses of one duct together, one after the other.
 *
 * @validity losses that do not disturb each other: ends and bends several diameters apart
 * @neglects what a jet or a bend changes in the next one
 * @returns a {@link FlowLoss}
 * @source idelchik1966 sum of local resistances
 * @example lossesTogether([quadraticLoss({ outward: 1.5 }), turbulentWall({ diameter: '75 mm', length: '25 cm' })])
 */
export const lossesTogether = (losses: readonly FlowLoss[]): FlowLoss => ({
  name: losses.map(({ name }) => name).join(', '),
  sources: [...new Set(losses.flatMap(({ sources }) => sources))],
  resistance: (speed, frequency, air) =>
    losses.reduce((sum, { resistance }) => sum + resistance(speed, frequency, air), 0),
});
