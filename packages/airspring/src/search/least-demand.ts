import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import type { Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';
import { type compileVariant, loadNames } from './compiled-variant.js';
import type { Demand } from './demand.js';
import { fillLoad } from './fill-load.js';
import { BAND, BELOW } from './frequencies.js';
import { magnitude } from './greatest.js';

/** A rise that is no more than rounding, dB. */
export const ROUNDING = 1e-9;

/** The frequencies by which a demand is judged at first: those at the beginning of the band ask for most. */
const FIRST = [0, 2, 5, 9, 14, 21, 31, BAND - 1].map((i) => BELOW + i);

/** A rise that no brief forbids. */
const NO_RISE = -1e3;

/** What a demand is worked out from, as compileDemand has it. */
interface Setting {
  readonly compiled: ReturnType<typeof compileVariant>;
  readonly loads: NonNullable<Variant['loads']>;
  /** The frequencies of the search, with the factors of room and filter. */
  readonly grid: Float64Array;
  readonly gains: ArrayLike<number>;
  readonly passed: ArrayLike<number>;
  /** A level asks for the voltage asked / (f |U|). */
  readonly asked: number;
  /** f |U| at a level, dB. */
  readonly passingAt: (level: number) => number;
  /** The factor by which the response may fall, and the step from the reference of the box to that of the listener, dB. */
  readonly fallenBy: number;
  readonly inStep: number;
  readonly perXmax: number;
}

/** Prepares what the boxes of a variant ask for at least: a few frequencies of the search stand for all. */
export function compileLeastDemand({
  compiled,
  loads,
  grid,
  gains,
  passed,
  asked,
  passingAt,
  fallenBy,
  inStep,
  perXmax,
}: Setting): (point: Point, out: Demand) => void {
  const { probes, load: loadPoint, sweep, referenceLevel } = compiled;
  const frequencies = Float64Array.from(FIRST, (i) => grid[i]!);
  const columns = probes.map(() => complexColumn(FIRST.length));
  const column = (name: string) => columns[probes.indexOf(name)] as ComplexColumn;
  const [flow, velocity, current] = [column('radiatedFlow'), column('coneVelocity'), column('current')];
  const readings = loadNames(loads).map((names) => names.map(column));
  const drives = new Float64Array(FIRST.length);
  const load = new Float64Array(FIRST.length);
  const inStepFactor = 10 ** (inStep / 20);

  return (point, out) => {
    loadPoint(point);
    sweep(frequencies, columns);
    let passing = 0;
    if (referenceLevel !== undefined) passing = passingAt(referenceLevel() + inStep);
    else {
      // The maximum of a few frequencies is no more than that of all.
      for (let k = 0; k < FIRST.length; k++) passing = Math.max(passing, magnitude(flow, k) * frequencies[k]!);
      passing *= inStepFactor;
    }
    const fallen = passing * fallenBy;
    let [travel, voltage, loudest] = [0, 0, 0];
    out.cutoff = grid[0]!;
    out.current = 0;
    let open = true;
    for (let k = FIRST.length - 1; k >= 0; k--) {
      const i = FIRST[k]!;
      const f = grid[i]!;
      const there = magnitude(flow, k) * f * gains[i]!;
      const heard = there * passed[i]!;
      if (open && heard < fallen) {
        open = false;
        out.cutoff = k === FIRST.length - 1 ? f * 2 : f;
      }
      const drive = asked / there;
      drives[k] = drive;
      loudest = Math.max(loudest, heard);
      voltage = Math.max(voltage, drive);
      travel = Math.max(travel, (drive * magnitude(velocity, k)) / f);
      out.current = Math.max(out.current, drive * magnitude(current, k));
    }
    out.rise = referenceLevel === undefined ? NO_RISE : 20 * Math.log10(loudest / passing) - ROUNDING;
    out.travel = travel * perXmax;
    out.voltage = voltage;
    for (let j = 0; j < readings.length; j++) {
      fillLoad(readings[j]!, loads[j]!.integrated, drives, frequencies, load);
      let greatest = 0;
      for (let k = 0; k < FIRST.length; k++) greatest = Math.max(greatest, load[k]!);
      out.loads[j] = greatest;
    }
  };
}
