import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { bracketedRoot, type ComplexColumn } from '../numeric/index.js';
import { type LossyOpening, type LossyOpenings, lossyOpenings } from './lossy-openings.js';
import { noSpeed, resistanceOf, steadySpeed } from './steady-speed.js';
import { ventAtLevel } from './vent-at-level.js';

/** A system whose openings may lose by their speeds, swept at some frequencies. */
export interface OpeningsAtLevel {
  readonly openings: readonly LossyOpening[];
  readonly probes: readonly string[];
  /** The probes without any loss, per volt of drive. */
  readonly linear: readonly ComplexColumn[];
  /** Fills each probe per volt, and the specific resistance of each opening, Pa·s/m, at a drive in V rms. */
  readonly settle: (
    losses: readonly FlowLoss[],
    i: number,
    driveVoltageRms: number,
    out: readonly ComplexColumn[],
    resistances: Float64Array,
  ) => void;
}

/** Openings k … N − 1, those before them eliminated: their speeds without further loss, and what a pressure in one does to another. */
interface Rest {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly yRe: Float64Array;
  readonly yIm: Float64Array;
}

// Newton's method in logarithms of speeds.
/** It has ended where a step is less than this. */
const NEAR = 1e-13;
const MOST_STEPS = 12;
/** The difference by which slopes are taken. */
const STEP = 1e-5;
/** Bounds a step. */
const within = (move: number) => Math.max(-1, Math.min(1, move));

/** A loss for each of several unlike vents, by what tells them apart in the probes: `{ front: …, rear: … }`. */
export type LossByVent = Readonly<Record<string, FlowLoss>>;

/** Prepares a system with one opening, or several. */
export function lossyAtLevel(system: System, frequencies: Float64Array): OpeningsAtLevel {
  const lossy = lossyOpenings(system);
  if (lossy.openings.length > 1) return openingsAtLevel(system, lossy, frequencies);
  const { probes, linear, resistanceAt, fill } = ventAtLevel(system, frequencies);
  const settle: OpeningsAtLevel['settle'] = ([loss], i, drive, out, resistances) => {
    resistances[0] = resistanceAt(loss!, i, drive);
    fill(i, resistances[0], out);
  };
  return { openings: lossy.openings, probes, linear, settle };
}

/**
 * Prepares a system with several openings that lose by their speeds. One sweep without losses and one with a resistance in each opening
 * tell what a pressure in any of them does to every probe:
 *
 * $$ u_j = u_{0j} - \sum_k y_{jk}\,r_k(|u_k|)\,u_k,\qquad X = X_0 - \sum_k t_k\,r_k u_k $$
 *
 * For a speed in the first opening its resistance is known. It is then taken out of the equations, which leaves the same problem with
 * one opening less, and for the last one the speed is that of {@link steadySpeed}. In a passive system a larger resistance in the first
 * opening never makes its own air faster, whatever the others do (the power of the difference of two states is not negative). So the
 * speed at which both agree is the only one, and lies between zero and that without its loss: it is always found.
 */
function openingsAtLevel(
  { air }: System,
  { openings, sweep }: LossyOpenings,
  frequencies: Float64Array,
): OpeningsAtLevel {
  const count = openings.length;
  const step = air.density * air.speedOfSound;
  const { probes, columns: linear } = sweep(
    openings.map(() => 0),
    frequencies,
  );
  const swept = openings.map(
    (_, k) =>
      sweep(
        openings.map(({ area }, j) => (j === k ? step / area : 0)),
        frequencies,
      ).columns,
  );
  const places = openings.map(({ probe }) => probes.indexOf(probe));
  const matrix = () => new Float64Array(count * count);
  const rests = openings.map((): Rest => {
    const [re, im] = [new Float64Array(count), new Float64Array(count)];
    return { re, im, yRe: matrix(), yIm: matrix() };
  });
  const [first] = rests as [Rest];
  const [uRe, uIm, off] = [new Float64Array(count), new Float64Array(count), new Float64Array(2)];
  /** By how much a pressure of 1 Pa in opening k lowers a probe. */
  const taken = (k: number, probe: number, i: number): readonly [number, number] => {
    const [from, to, own] = [linear[probe]!, swept[k]![probe]!, swept[k]![places[k]!]!];
    const [re, im, a, b] = [from.re[i]! - to.re[i]!, from.im[i]! - to.im[i]!, own.re[i]!, own.im[i]!];
    const size = step * (a * a + b * b);
    return size > 0 ? [(re * a + im * b) / size, (im * a - re * b) / size] : [0, 0];
  };
  let [losses, frequency, peak]: [readonly FlowLoss[], number, number] = [[], 0, 0];
  let resistances: Float64Array = new Float64Array(count);

  /** Takes opening k with a resistance out of the equations. */
  function takeOut(k: number, r: number): void {
    const { re, im, yRe, yIm } = rests[k]!;
    const next = rests[k + 1]!;
    const at = k * count + k;
    const [a, b] = [1 + r * yRe[at]!, r * yIm[at]!];
    const size = (a * a + b * b) / r;
    for (let j = k + 1; j < count; j++) {
      const [p, q] = [yRe[j * count + k]!, yIm[j * count + k]!];
      // y_jk r / (1 + r y_kk)
      const [x, y] = r > 0 ? [(p * a + q * b) / size, (q * a - p * b) / size] : [0, 0];
      next.re[j] = re[j]! - x * re[k]! + y * im[k]!;
      next.im[j] = im[j]! - x * im[k]! - y * re[k]!;
      for (let m = k + 1; m < count; m++) {
        const [c, d] = [yRe[k * count + m]!, yIm[k * count + m]!];
        next.yRe[j * count + m] = yRe[j * count + m]! - x * c + y * d;
        next.yIm[j * count + m] = yIm[j * count + m]! - x * d - y * c;
      }
    }
  }
  /** The speed in opening k, V⁻¹, once those after it are known. */
  function putBack(k: number, r: number): number {
    const { re, im, yRe, yIm } = rests[k]!;
    let [x, y] = [re[k]!, im[k]!];
    for (let m = k + 1; m < count; m++) {
      const [c, d, rm] = [yRe[k * count + m]!, yIm[k * count + m]!, resistances[m]!];
      x -= rm * (c * uRe[m]! - d * uIm[m]!);
      y -= rm * (c * uIm[m]! + d * uRe[m]!);
    }
    const at = k * count + k;
    const [a, b] = [1 + r * yRe[at]!, r * yIm[at]!];
    const size = a * a + b * b;
    uRe[k] = (x * a + y * b) / size;
    uIm[k] = (y * a - x * b) / size;
    resistances[k] = r;
    return Math.hypot(uRe[k]!, uIm[k]!);
  }
  function settleFrom(k: number): void {
    const resistance = (speed: number) => resistanceOf(losses[k]!, speed, frequency, air);
    const at = k * count + k;
    const { re, im, yRe, yIm } = rests[k]!;
    if (k === count - 1) {
      const free = peak * Math.hypot(re[k]!, im[k]!);
      putBack(k, steadySpeed(free, yRe[at]!, yIm[at]!, resistance).resistance);
      return;
    }
    const speedWith = (r: number): number => {
      takeOut(k, r);
      settleFrom(k + 1);
      return peak * putBack(k, r);
    };
    const excess = (speed: number) => speed - speedWith(resistance(speed));
    const free = speedWith(0);
    if (!(free > 0)) return;
    // Rounding can leave a hair of negative real part in a system without losses: then the root is a hair above.
    let high = free;
    for (let n = 0; !(excess(high) >= 0); n++, high *= 1.5) if (n === 60) throw noSpeed(free);
    const found = bracketedRoot(excess, 0, high, 1e-14 * free);
    if (!found.ok) throw noSpeed(free);
    speedWith(resistance(found.x));
  }

  /** By how much the logarithms of the speeds that two resistances leave differ from those for which they are. */
  function pairOff(x: number, y: number, out: Float64Array): void {
    const r = resistanceOf(losses[0]!, Math.exp(x), frequency, air);
    takeOut(0, r);
    const second = putBack(1, resistanceOf(losses[1]!, Math.exp(y), frequency, air));
    out[0] = Math.log(peak * putBack(0, r)) - x;
    out[1] = Math.log(peak * second) - y;
  }
  /** Two openings by Newton's method in the logarithms of their speeds: quicker, but not sure to end. */
  function settlePair(): boolean {
    takeOut(0, 0);
    const free = peak * putBack(1, 0);
    let [x, y] = [Math.log(0.7 * peak * putBack(0, 0)), Math.log(0.7 * free)];
    for (let step = 0; step < MOST_STEPS; step++) {
      pairOff(x, y, off);
      const [a, b] = [off[0]!, off[1]!];
      if (Math.max(Math.abs(a), Math.abs(b)) < NEAR) return true;
      pairOff(x + STEP, y, off);
      const [aa, ba] = [(off[0]! - a) / STEP, (off[1]! - b) / STEP];
      pairOff(x, y + STEP, off);
      const [ab, bb] = [(off[0]! - a) / STEP, (off[1]! - b) / STEP];
      const determinant = aa * bb - ab * ba;
      x -= within((a * bb - b * ab) / determinant);
      y -= within((b * aa - a * ba) / determinant);
      if (!Number.isFinite(x + y)) return false;
    }
    return false;
  }

  const settle: OpeningsAtLevel['settle'] = (theirs, i, drive, out, filled) => {
    [losses, frequency, peak, resistances] = [theirs, frequencies[i]!, Math.SQRT2 * drive, filled];
    for (let j = 0; j < count; j++) {
      first.re[j] = linear[places[j]!]!.re[i]!;
      first.im[j] = linear[places[j]!]!.im[i]!;
      for (let k = 0; k < count; k++) {
        const [re, im] = taken(k, places[j]!, i);
        first.yRe[j * count + k] = re;
        first.yIm[j * count + k] = im;
      }
    }
    if (!(count === 2 && settlePair())) settleFrom(0);
    for (let probe = 0; probe < out.length; probe++) {
      let [x, y] = [linear[probe]!.re[i]!, linear[probe]!.im[i]!];
      for (let k = 0; k < count; k++) {
        const [c, d] = taken(k, probe, i);
        const r = filled[k]!;
        x -= r * (c * uRe[k]! - d * uIm[k]!);
        y -= r * (c * uIm[k]! + d * uRe[k]!);
      }
      out[probe]!.re[i] = x;
      out[probe]!.im[i] = y;
    }
  };
  return { openings, probes, linear, settle };
}
