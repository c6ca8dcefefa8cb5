import type { Air } from '../air/index.js';
import type { FlowLoss } from '../duct/index.js';
import { InputError } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';

export const FLOW_LOSS_REMEDY = "Try the loss with `flowLossLaws` of '@airspring/core/laws'.";

/** The peak speed at which a loss and the flow that it leaves agree, and the specific resistance there. */
export interface SteadySpeed {
  readonly speed: number;
  readonly resistance: number;
}

/**
 * The one speed u at which u |1 + r(u) y| is the speed without the loss. The left side rises with u where r ≥ 0, r u never falls and
 * y has a real part of zero or more; so the root lies between 0 and the speed without the loss.
 */
export function steadySpeed(
  free: number,
  yRe: number,
  yIm: number,
  resistance: (speed: number) => number,
): SteadySpeed {
  const excess = (speed: number): number => {
    const r = resistance(speed);
    return speed * Math.hypot(1 + r * yRe, r * yIm) - free;
  };
  if (!(free > 0)) return { speed: 0, resistance: resistance(0) };
  // Rounding can leave a hair of negative real part in a system without losses: then the root is a hair above.
  let high = free;
  for (let i = 0; !(excess(high) >= 0); i++, high *= 1.5) if (i === 60) throw noSpeed(free);
  const found = bracketedRoot(excess, 0, high, 1e-14 * free);
  if (!found.ok) throw noSpeed(free);
  return { speed: found.x, resistance: resistance(found.x) };
}

/** Specific resistance of a loss at a speed, Pa·s/m. A loss that gives energy, or tells no number, is refused. */
export function resistanceOf(loss: FlowLoss, speed: number, frequency: number, air: Air): number {
  const got = loss.resistance(speed, frequency, air);
  if (got >= 0 && got < Infinity) return got;
  const code = Number.isFinite(got) ? 'inconsistent' : 'not-finite';
  const expected = `a resistance of zero or more at ${speed} m/s and ${frequency} Hz`;
  throw new InputError([{ code, path: 'loss.resistance', got, expected, remedy: FLOW_LOSS_REMEDY }]);
}

/** The fault of a loss with which no speed agrees. */
export const noSpeed = (free: number): InputError => {
  const expected = `a loss that some speed of the air agrees with, near ${free} m/s: r ≥ 0, and r u that never falls`;
  return new InputError([
    { code: 'inconsistent', path: 'loss.resistance', got: 'no such speed', expected, remedy: FLOW_LOSS_REMEDY },
  ]);
};
