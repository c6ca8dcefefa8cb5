import { type CoilPort, coil } from './coil-port.js';
import type { ExactSpring } from './curve.js';
import type { MomentaryLoss } from './momentary-loss.js';
import { type Motion, place } from './motion.js';
import { compileChange, newtonOf } from './newton-change.js';
import type { Tables } from './tables.js';

/** The nonlinear parts of a system, as a step asks them. */
export interface Forces {
  readonly coil: CoilPort;
  readonly spring: ExactSpring;
  /** N/m at rest. */
  readonly stiffness: number;
  readonly losses: readonly MomentaryLoss[];
}

/** Is told of each interval, before the stores move on: mean drive, what the coil induces, forces and speeds, and the current. */
export type Account = (
  motion: Motion,
  drive: number,
  induced: number,
  forces: Float64Array,
  speeds: Float64Array,
) => void;

/**
 * Newton's method ends where a step is less than this part of the greatest speed so far. The next would be its square, times how much
 * the forces bend over an interval, which is little: rounding.
 */
const ENOUGH = 1e-6;
const MOST_STEPS = 12;
const SHORTEST = 2 ** -100;

/**
 * One interval of a nonlinear simulation, for a mean drive in V and a resistance that the warm coil has beside Re. Unknown are the
 * mean speed of the cone and the mean flow of each loss, w = w₀ + K φ(w). Newton's method starts from the last four intervals,
 * drawn on by a cubic. If it fails, the forces are put on in halves, from none to all (@source falaize2016 for the scheme).
 *
 * Returns false where there is no solution; the motion then stays as it was but for the speeds.
 */
export function compileStep(
  tables: Tables,
  forces: Forces,
  account?: Account,
): (motion: Motion, drive: number, added: number) => boolean {
  const { interval: h, stores: n, electrical, places: m } = tables;
  const { fromStores, fromDrive, fromCoil, fromForces, speedsFromStores, speedsFromForces } = tables;
  const { currentFromStores, currentFromDrive, admittance } = tables;
  const { coil: port, spring, stiffness, losses } = forces;
  const newton = newtonOf(m);
  const { w, free, phi, slopes, K, change } = newton;
  K.set(speedsFromForces);
  const fillChange = compileChange(newton);
  const kept = new Float64Array(m);
  const two = new Float64Array(2);
  const coils = new Float64Array(8);
  const next = new Float64Array(n);

  /** Fills the forces at the speeds w, and their slopes. */
  function fill(x: number, flux: number, current: number, added: number): void {
    const v = w[0]!;
    port(x, v, h, flux, current, admittance, added, coils);
    spring.between(x, x + h * v, two);
    phi[0] = stiffness * two[0]! - coils[coil.force]!;
    slopes[0] = stiffness * h * two[1]! - coils[coil.forceSlope]!;
    for (let j = 1; j < m; j++) {
      losses[j - 1]!.at(w[j]!, two);
      phi[j] = two[0]!;
      slopes[j] = two[1]!;
    }
  }

  /** Newton's method from w on. Forces are moved along with the last step, so that they fit the linear part exactly. */
  function solve(motion: Motion, current: number, added: number): boolean {
    const { own, peaks } = motion;
    const x = own[place.displacement]!;
    const flux = own[place.flux]!;
    for (let steps = 1; steps <= MOST_STEPS; steps++) {
      fill(x, flux, current, added);
      if (!fillChange()) return false;
      let isEnough = true;
      for (let a = 0; a < m; a++) {
        const value = w[a]! + change[a]!;
        w[a] = value;
        const size = Math.abs(value);
        if (!(size < Infinity)) return false;
        if (Math.abs(change[a]!) > ENOUGH * Math.max(size, peaks[a]!)) isEnough = false;
      }
      if (isEnough) {
        own[place.steps]! += steps;
        for (let a = 0; a < m; a++) phi[a]! += slopes[a]! * change[a]!;
        return true;
      }
    }
    own[place.steps]! += MOST_STEPS;
    return false;
  }

  /** The forces are put on step by step: without them the speeds are the free ones. A step that fails is halved. */
  function byHalves(motion: Motion, current: number, added: number): boolean {
    kept.set(free);
    let [done, step] = [0, 0.5];
    while (done < 1 && step > SHORTEST) {
      const strength = Math.min(1, done + step);
      for (let i = 0; i < m * m; i++) K[i] = strength * speedsFromForces[i]!;
      motion.own[place.halved]! += 1;
      w.set(kept);
      if (solve(motion, current, added)) {
        done = strength;
        kept.set(w);
        step *= 2;
      } else step /= 2;
    }
    K.set(speedsFromForces);
    return done === 1;
  }

  return (motion, drive, added) => {
    const { stores, past, peaks, own } = motion;
    let current = currentFromDrive * drive;
    for (let k = 0; k < electrical; k++) current += currentFromStores[k]! * stores[k]!;
    for (let a = 0; a < m; a++) {
      let sum = 0;
      for (let k = electrical; k < n; k++) sum += speedsFromStores[a * n + k]! * stores[k]!;
      free[a] = sum;
      w[a] = 4 * (past[a]! + past[2 * m + a]!) - 6 * past[m + a]! - past[3 * m + a]!;
    }
    const isSolved = solve(motion, current, added) || byHalves(motion, current, added);
    past.copyWithin(m, 0, 3 * m);
    if (!isSolved) return false;
    const induced = coils[coil.induced]! + coils[coil.inducedSlope]! * change[0]!;
    for (let k = 0; k < electrical; k++) {
      let sum = fromDrive[k]! * drive + fromCoil[k]! * induced;
      for (let i = 0; i < electrical; i++) sum += fromStores[k * n + i]! * stores[i]!;
      next[k] = sum;
    }
    for (let k = electrical; k < n; k++) {
      let sum = 0;
      for (let i = electrical; i < n; i++) sum += fromStores[k * n + i]! * stores[i]!;
      for (let b = 0; b < m; b++) sum += fromForces[k * m + b]! * phi[b]!;
      next[k] = sum;
    }
    own[place.current] = coils[coil.current]! + coils[coil.currentSlope]! * change[0]!;
    account?.(motion, drive, induced, phi, w);
    for (let k = 0; k < n; k++) stores[k] = next[k]!;
    for (let a = 0; a < m; a++) {
      const value = w[a]!;
      past[a] = value;
      if (Math.abs(value) > peaks[a]!) peaks[a] = Math.abs(value);
    }
    own[place.displacement]! += h * w[0]!;
    own[place.flux] = coils[coil.flux]! + coils[coil.fluxSlope]! * change[0]!;
    return true;
  };
}
