import { compileFilter } from '@airspring/core/filter';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import type { FrequencyGrid } from '@airspring/core/quantity';
import { REFERENCE_PRESSURE } from '@airspring/core/response';
import { wantedAt } from '../job/heard.js';
import type { Job } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import type { Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';
import { compileVariant, loadNames } from './compiled-variant.js';
import { crossingAt, crossingFrom, grazedAbove } from './crossing.js';
import type { Demand } from './demand.js';
import { fillLoad } from './fill-load.js';
import { BAND, BELOW, searchGrid } from './frequencies.js';
import { compileGreatest, magnitude } from './greatest.js';
import { knownAtLeast } from './known-at-least.js';
import { compileLeastDemand, ROUNDING } from './least-demand.js';
import { compileLeastImpedance } from './least-impedance.js';
import { remembered } from './remembered.js';

/** The demand of the boxes of a variant. */
export interface DemandOf {
  /** Fills in what the box of a point asks for. */
  (point: Point, out: Demand): void;
  /**
   * Fills in what it asks for at least, by a few frequencies: no number that a wish limits is greater there, and the load is no less.
   * Most boxes of a lattice are already too dear by that. It returns whether this is all that wishes are judged by; the depth and what
   * it follows from are never told.
   */
  readonly atLeast: (point: Point, out: Demand) => boolean;
  /** Keeps the demand of the point for which the last least demand was asked. */
  readonly keep: (demand: Demand) => void;
}

/**
 * Prepares the demand of all boxes of a variant, which fills a {@link Demand}. The topology is compiled once; each box then
 * costs some thousand multiplications.
 */
export function compileDemand(job: Job, variant: Variant): DemandOf {
  const { wanted, amplifier } = job;
  const { voltage, current: mostCurrent } = amplifier;
  const compiled = compileVariant(variant);
  const { density, probes, load: loadPoint, sweep } = compiled;
  const columns = probes.map(() => complexColumn(BELOW + BAND));
  const grid = searchGrid(wanted);
  const greatestOf = compileGreatest(grid);
  // What walls, room and distance change is a factor on the level alone.
  const { gain, inStep } = wantedAt(job.heard);
  const gains = gain(grid).map((level) => 10 ** (level / 20));
  const gainNear = job.heard?.wanted ? between(gain, grid) : () => 1;
  const column = (name: string) => columns[probes.indexOf(name)] as ComplexColumn;
  const flow = column('radiatedFlow');
  const velocity = column('coneVelocity');
  const current = column('current');
  const kindLoads = variant.loads ?? [];
  const readings = loadNames(kindLoads).map((names) => names.map(column));

  // A level L asks for |p| = ω ρ |U| V / 2π = reference × 10^(L/20): V = asked / (f |U|).
  const asked = (REFERENCE_PRESSURE * 10 ** (wanted.level / 20)) / density;
  const fallenBy = 10 ** (-wanted.fall / 20);
  const passingAt = (level: number): number => (REFERENCE_PRESSURE * 10 ** (level / 20)) / density;
  /** What f |U| is at the reference level of the point, and where the response has fallen as far as it may. */
  let level = Number.NaN;
  let passing = 0;
  let fallen = 0;
  const setReference = (now: number): void => {
    if (now === level) return;
    level = now;
    passing = passingAt(now);
    fallen = passing * fallenBy;
  };
  const { Xmax = Infinity, Pe = Infinity, Re } = variant.choice.drivers.equivalent;
  const perXmax = Math.SQRT2 / (2 * Math.PI * Xmax);
  const perHeat = Math.sqrt(Re / Pe);
  const levels = new Float64Array(BELOW + BAND);
  const drives = new Float64Array(BELOW + BAND);
  const load = new Float64Array(BELOW + BAND);
  const [drivesInBand, loadInBand] = [drives.subarray(BELOW), load.subarray(BELOW)];
  const [travels, currents] = [new Float64Array(BAND), new Float64Array(BAND)];
  const runUp = grid.slice(0, BELOW + 1);
  const one = new Float64Array(1);
  const oneColumn = probes.map(() => complexColumn(1));
  const oneFlow = oneColumn[probes.indexOf('radiatedFlow')] as ComplexColumn;
  // A high-pass that is there already shapes the response; what the wanted level asks of the box does not depend on it.
  const passed = passedBy(amplifier.filter, grid);
  const filter = amplifier.filter && compileFilter(amplifier.filter);
  const size = (f: number) => {
    one[0] = f;
    sweep(one, oneColumn);
    filter?.(one as FrequencyGrid, oneFlow);
    return magnitude(oneFlow, 0) * f * gainNear(f);
  };
  const leastImpedance = amplifier.leastLoad === undefined ? undefined : compileLeastImpedance(job, compiled);

  /** The maximum is that of the sound before a filter, as the asymptote is. */
  const maximum = (): number => {
    for (let i = 0; i < levels.length; i++) levels[i] = magnitude(flow, i) * grid[i]!;
    return 20 * Math.log10((greatestOf(levels, 0) * density) / REFERENCE_PRESSURE);
  };
  const { referenceLevel = maximum } = compiled;

  const demandOf = (point: Point, out: Demand): void => {
    loadPoint(point);
    sweep(grid, columns);
    setReference(referenceLevel() + inStep);
    out.cutoff = grid[0]!;
    let open = true;
    /** The last frequency at which a limit is exceeded, and how much of it is used there; 0 while every limit holds. */
    let held = 0;
    let usedAbove = 0;
    let usedTwoAbove = 0;
    for (let i = BELOW + BAND - 1; i >= 0; i--) {
      const f = grid[i]!;
      const u = magnitude(flow, i) * f;
      const there = u * gains[i]!;
      const heard = there * passed[i]!;
      levels[i] = heard;
      if (open && heard < fallen) {
        open = false;
        out.cutoff = i === BELOW + BAND - 1 ? f * 2 : crossingFrom(i, grid, levels, fallen, size);
      }
      const drive = asked / there;
      drives[i] = drive;
      if (i < BELOW && held > 0) continue;
      const x = (drive * magnitude(velocity, i)) / f;
      const c = drive * magnitude(current, i);
      if (i >= BELOW) {
        travels[i - BELOW] = x;
        currents[i - BELOW] = c;
      }
      if (i > BELOW) continue;
      const used = Math.max(x * perXmax, c * perHeat, drive / voltage, c / mostCurrent);
      if (used > 1) held = i === BELOW ? f : crossingAt(f, grid[i + 1]!, used, usedAbove);
      else if (i + 2 <= BELOW) {
        const above = grazedAbove(used, usedAbove, usedTwoAbove);
        if (above !== undefined) held = grid[i + 1]! * (grid[i + 1]! / f) ** above;
      }
      usedTwoAbove = usedAbove;
      usedAbove = used;
    }
    out.depth = Math.max(out.cutoff, held);
    const rise = 20 * Math.log10(greatestOf(levels, 0) / passing);
    out.rise = Math.abs(rise) < ROUNDING ? 0 : rise;
    out.travel = greatestOf(travels, BELOW) * perXmax;
    out.current = greatestOf(currents, BELOW);
    out.heat = out.current * perHeat;
    out.voltage = greatestOf(drivesInBand, BELOW);
    out.runUp = runUp;
    for (let j = 0; j < readings.length; j++) {
      fillLoad(readings[j]!, kindLoads[j]!.integrated, drives, grid, load);
      out.loads[j] = greatestOf(loadInBand, BELOW);
      const below = out.loadsBelow[j]!;
      for (let i = 0; i <= BELOW; i++) below[i] = load[i]!;
    }
    if (leastImpedance !== undefined) out.leastImpedance = leastImpedance();
  };

  const least = compileLeastDemand({
    compiled,
    loads: kindLoads,
    grid,
    gains,
    passed,
    asked,
    passingAt,
    fallenBy,
    inStep,
    perXmax,
  });
  const known = knownAtLeast(least, 1 + variant.acoustic.length, kindLoads.length);
  const atLeast = (point: Point, out: Demand): boolean => {
    const isExact = known.atLeast(point, out);
    out.depth = out.cutoff;
    out.heat = out.current * perHeat;
    out.leastImpedance = Infinity;
    return isExact && leastImpedance === undefined;
  };
  const whole = compiled.isSolved ? remembered(demandOf, 1 + variant.acoustic.length) : demandOf;
  return Object.assign(whole, { atLeast, keep: known.keep });
}

/** So many values of a gain for each frequency of the search keep what lies between them right within 0.001 dB. */
const FINER = 32;

/** A gain as a factor at any frequency of a grid, by straight lines between values that lie close together. */
function between(gain: (frequencies: ArrayLike<number>) => Float64Array, grid: Float64Array): (f: number) => number {
  const count = FINER * grid.length;
  const [from, to] = [grid[0]!, grid[grid.length - 1]!];
  const span = Math.log(to / from);
  const factors = gain(Float64Array.from({ length: count + 1 }, (_, i) => from * Math.exp((span * i) / count))).map(
    (level) => 10 ** (level / 20),
  );
  return (f) => {
    const at = Math.min(Math.max((Math.log(f / from) / span) * count, 0), count);
    const i = Math.min(Math.floor(at), count - 1);
    return factors[i]! + (at - i) * (factors[i + 1]! - factors[i]!);
  };
}
