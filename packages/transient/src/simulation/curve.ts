/**
 * How the force factor or the inductance of a coil changes with the place of the cone, as a value: over its value at rest. Ours and
 * your own are used alike.
 */
export interface CoilCurve {
  readonly name: string;
  readonly sources: readonly string[];
  /** Up to which displacement it was measured, m. Simulation reports what goes beyond. */
  readonly reach: number;
  /** Fills the value, above zero, and its slope by displacement, 1/m, at a displacement in m. Outwards is positive. */
  readonly at: (displacement: number, out: Float64Array) => void;
}

/**
 * A spring as a value, over the stiffness of the suspension at rest: forces in m, energies in m². A suspension, a stop, or both
 * together. Ours and your own are used alike.
 */
export interface Spring {
  readonly name: string;
  readonly sources: readonly string[];
  readonly reach: number;
  /** m², zero or more. */
  readonly energy: (displacement: number) => number;
  /** Fills the force, m, which is the slope of the energy, and its slope in turn. */
  readonly at: (displacement: number, out: Float64Array) => void;
  /**
   * Fills the mean force over a move, that is the difference of the energy over that of the displacement, and its slope by the end of
   * the move. Without it, the quotient is computed from the energy. With it, no digits cancel.
   */
  readonly between?: (from: number, to: number, out: Float64Array) => void;
}

/** A spring whose mean force over a move is known. */
export type ExactSpring = Spring & Required<Pick<Spring, 'between'>>;

/** Moves shorter than this part of the reach: the force in the middle has as many digits as the quotient. */
const SHORT = 1e-5;

/**
 * A spring with the mean force over each move, so that its energy changes by exactly force times move, whatever the step:
 *
 * $$ \bar F = \frac{E(x_1) - E(x_0)}{x_1 - x_0} $$
 *
 * For a short move it is $F$ in the middle, which is as near as rounding, with an error of $(x_1 - x_0)^2 F''/24$.
 */
export function exactSpring(spring: Spring): ExactSpring {
  const { between, energy, at, reach } = spring;
  if (between !== undefined) return { ...spring, between };
  const shortest = SHORT * reach;
  return {
    ...spring,
    between: (from, to, out) => {
      const move = to - from;
      if (Math.abs(move) < shortest) {
        at((from + to) / 2, out);
        out[1]! /= 2;
        return;
      }
      at(to, out);
      const mean = (energy(to) - energy(from)) / move;
      out[1] = (out[0]! - mean) / move;
      out[0] = mean;
    },
  };
}

/** Several springs side by side: their forces and energies add up. */
export function springsTogether(springs: readonly Spring[]): ExactSpring {
  const exact = springs.map(exactSpring);
  const [first] = exact;
  if (exact.length === 1 && first) return first;
  const kept = new Float64Array(2);
  const sum =
    (fill: (spring: ExactSpring, out: Float64Array) => void) =>
    (out: Float64Array): void => {
      let [a, b] = [0, 0];
      for (const spring of exact) {
        fill(spring, kept);
        a += kept[0]!;
        b += kept[1]!;
      }
      out[0] = a;
      out[1] = b;
    };
  return {
    name: exact.map(({ name }) => name).join(', '),
    sources: [...new Set(exact.flatMap(({ sources }) => sources))],
    reach: Math.min(...exact.map(({ reach }) => reach)),
    energy: (x) => exact.reduce((total, { energy }) => total + energy(x), 0),
    at: (x, out) => sum((spring, one) => spring.at(x, one))(out),
    between: (from, to, out) => sum((spring, one) => spring.between(from, to, one))(out),
  };
}
