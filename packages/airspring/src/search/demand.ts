import { compileFilter } from '@airspring/core/filter';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { type FrequencyGrid, logarithmicGrid } from '@airspring/core/quantity';
import { REFERENCE_PRESSURE } from '@airspring/core/response';
import { type Job, safeFromOf } from '../job/job.js';
import { loadRange } from '../job/load.js';
import { passedBy } from '../job/passed.js';
import type { Point, Variant } from '../kind/box-kind.js';
import { compileVariant } from './compiled-variant.js';
import { remembered } from './remembered.js';

/** What a box asks of its parts and the amplifier to play the wanted level throughout the band, and what it gives. */
export interface Demand {
  /** Lowest frequency above which the response stays within the wanted fall, Hz; accurate to 0.01 Hz. */
  cutoff: number;
  /** Lowest frequency down to which, in addition, travel, heat and the amplifier hold at the wanted level, Hz. */
  depth: number;
  /** Greatest rise of the response over its reference up to the end of the band, dB. */
  rise: number;
  /** Greatest travel divided by Xmax. */
  travel: number;
  /** Greatest I² Re divided by Pe, as a ratio of amplitudes. */
  heat: number;
  /** Greatest drive, V rms. */
  voltage: number;
  /** Greatest current, A rms. */
  current: number;
  /** Greatest peak of the quantity that the kind limits; 0 where it limits nothing. */
  load: number;
  /** Least impedance in the audible bass, Ω; worked out only where the brief states a least load. */
  leastImpedance: number;
  /** The same as `load` below the band, at the frequencies of the run-up in rising order; the last one is where the band begins. */
  readonly loadBelow: Float64Array;
}

/** A rise that is no more than rounding, dB. */
const ROUNDING = 1e-9;

const BELOW = 20;
const BAND = 44;

export const emptyDemand = (): Demand => ({
  cutoff: 0,
  depth: 0,
  rise: 0,
  travel: 0,
  heat: 0,
  voltage: 0,
  current: 0,
  load: 0,
  leastImpedance: Infinity,
  loadBelow: new Float64Array(BELOW + 1),
});

type Wanted = Job['wanted'];

/** Frequencies of the search: a run-up from a quarter of the lowest, then the band in which limits are judged, with both ends. */
function searchGrid(wanted: Wanted): Float64Array {
  const from = safeFromOf(wanted);
  const inBand = (i: number) => from * (wanted.highest / from) ** (i / (BAND - 1));
  return Float64Array.from({ length: BELOW + BAND }, (_, i) => (i < BELOW ? belowAt(wanted, i) : inBand(i - BELOW)));
}

function belowAt(wanted: Wanted, i: number): number {
  const from = safeFromOf(wanted);
  const start = Math.min(from, wanted.lowest) / 4;
  return start * (from / start) ** (i / BELOW);
}

/** Where a value crosses 1 between two frequencies, by a straight line in both logarithms. */
const crossingAt = (low: number, high: number, atLow: number, atHigh: number): number =>
  low * (high / low) ** (Math.log(atLow) / Math.log(atLow / atHigh));

/** So near a limit, as a logarithm, a finer look may find that it is exceeded. */
const GRAZING = 0.005;

/**
 * How far above the middle of three samples a value last falls to 1 that exceeds or grazes it only between them, in steps;
 * `undefined` where it does not. A parabola in logarithms goes through the samples.
 */
function grazedAbove(low: number, middle: number, high: number): number | undefined {
  if (middle < low || middle < high || middle > 1) return undefined;
  const [a, b, c] = [Math.log(low), Math.log(middle), Math.log(high)];
  const [bend, slope] = [(a + c) / 2 - b, (c - a) / 2];
  const top = b - slope ** 2 / (4 * bend);
  return bend < 0 && top > -GRAZING ? Math.sqrt(Math.max(0, -top / bend)) - slope / (2 * bend) : undefined;
}

/** How deep a box plays when this is its kind's own limit; never deeper than the other limits allow. */
export function depthWith({ depth, cutoff, load, loadBelow }: Demand, capacity: number, wanted: Wanted): number {
  const from = safeFromOf(wanted);
  if (load > capacity || cutoff > from) return Math.max(depth, from);
  for (let i = BELOW - 1; i >= 0; i--) {
    const [low, high] = [belowAt(wanted, i), belowAt(wanted, i + 1)];
    if (high <= depth) break;
    if (loadBelow[i]! > capacity) {
      const [a, b] = [loadBelow[i]!, loadBelow[i + 1]!];
      return Math.max(depth, crossingAt(low, high, a / capacity, b / capacity));
    }
    if (i + 2 > BELOW) continue;
    const [a, b, c] = [loadBelow[i]! / capacity, loadBelow[i + 1]! / capacity, loadBelow[i + 2]! / capacity];
    const above = grazedAbove(a, b, c);
    if (above !== undefined) return Math.max(depth, high * (high / low) ** above);
  }
  return depth;
}

/** |z| without the scaling in `hypot` for very large and small numbers, which takes five times as long. */
function magnitude({ re, im }: ComplexColumn, i: number): number {
  const a = re[i]!;
  const b = im[i]!;
  return Math.sqrt(a * a + b * b);
}

/**
 * The greatest value of a column. A smooth curve has its top between two samples, so this is the top of the parabola through
 * the greatest sample and both neighbours over log f. `at` is the place in the grid of the column's first value.
 */
function greatestOf(values: Float64Array, grid: Float64Array, at: number): number {
  let top = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[top]!) top = i;
  const b = values[top]!;
  if (top === 0 || top === values.length - 1) return b;
  const middle = grid[at + top]!;
  const left = Math.log(grid[at + top - 1]! / middle);
  const right = Math.log(grid[at + top + 1]! / middle);
  const [fall, drop] = [values[top - 1]! - b, values[top + 1]! - b];
  const curve = (fall / left - drop / right) / (left - right);
  const slope = drop / right - curve * right;
  return curve < 0 ? b - slope ** 2 / (4 * curve) : b;
}

const LOAD_POINTS = 48;

/** The least impedance of the box whose numbers are loaded, without the source resistance. */
function compileLeastImpedance({ wanted, amplifier }: Job, { probes, sweep }: ReturnType<typeof compileVariant>) {
  const grid = logarithmicGrid(...loadRange(wanted.highest), LOAD_POINTS);
  const columns = probes.map(() => complexColumn(LOAD_POINTS));
  const { re, im } = columns[probes.indexOf('current')] as ComplexColumn;
  const admittances = new Float64Array(LOAD_POINTS);
  return (): number => {
    sweep(grid, columns);
    for (let i = 0; i < LOAD_POINTS; i++) {
      const size = re[i]! ** 2 + im[i]! ** 2;
      admittances[i] = 1 / Math.hypot(re[i]! / size - amplifier.sourceResistance, im[i]! / size);
    }
    return 1 / greatestOf(admittances, grid, 0);
  };
}

/**
 * Prepares the demand of all boxes of a variant, which fills a {@link Demand}. The topology is compiled once; each box then
 * costs some thousand multiplications.
 */
export function compileDemand(job: Job, variant: Variant): (point: Point, out: Demand) => void {
  const { wanted, amplifier } = job;
  const compiled = compileVariant(variant);
  const { density, probes, load: loadPoint, sweep } = compiled;
  const columns = probes.map(() => complexColumn(BELOW + BAND));
  const grid = searchGrid(wanted);
  const column = (name: string) => columns[probes.indexOf(name)] as ComplexColumn;
  const flow = column('radiatedFlow');
  const velocity = column('coneVelocity');
  const current = column('current');
  const load = variant.load === undefined ? undefined : column('load');
  const integrated = variant.load?.integrated === true;

  // A level L asks for |p| = ω ρ |U| V / 2π = reference × 10^(L/20): V = asked / (f |U|).
  const asked = (REFERENCE_PRESSURE * 10 ** (wanted.level / 20)) / density;
  const fallenBy = 10 ** (-wanted.fall / 20);
  /** What f |U| is at the reference level of the point, and where the response has fallen as far as it may. */
  let level = Number.NaN;
  let passing = 0;
  let fallen = 0;
  const setReference = (now: number): void => {
    if (now === level) return;
    level = now;
    passing = (REFERENCE_PRESSURE * 10 ** (now / 20)) / density;
    fallen = passing * fallenBy;
  };
  const { Xmax = Infinity, Pe = Infinity, Re } = variant.choice.drivers.equivalent;
  const perXmax = Math.SQRT2 / (2 * Math.PI * Xmax);
  const perHeat = Math.sqrt(Re / Pe);
  const levels = new Float64Array(BELOW + BAND);
  const [drives, travels, currents, loads] = [0, 1, 2, 3].map(() => new Float64Array(BAND)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
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
    return magnitude(oneFlow, 0) * f;
  };
  const leastImpedance = amplifier.leastLoad === undefined ? undefined : compileLeastImpedance(job, compiled);

  /**
   * Where the response crosses `fallen` between this frequency of the grid and the next, by regula falsi in logarithms. The
   * first guess also counts with the bend of the curve, by the frequency above.
   */
  const crossing = (i: number): number => {
    let a = Math.log(grid[i]!);
    let b = Math.log(grid[i + 1]!);
    let fa = Math.log(levels[i]! / fallen);
    let fb = Math.log(levels[i + 1]! / fallen);
    let x = b - (fb * (b - a)) / (fb - fa);
    const fc = i + 2 < grid.length ? Math.log(levels[i + 2]! / fallen) : fb;
    if (fc > fb) {
      const c = Math.log(grid[i + 2]!);
      const bent = (a * fb * fc) / ((fa - fb) * (fa - fc)) + (b * fa * fc) / ((fb - fa) * (fb - fc));
      const guess = bent + (c * fa * fb) / ((fc - fa) * (fc - fb));
      if (guess > a && guess < b) x = guess;
    }
    for (let step = 0; step < 12; step++) {
      const fx = Math.log(size(Math.exp(x)) / fallen);
      const [far, atFar] = fx < 0 ? [b, fb] : [a, fa];
      // So near, the straight line to the other end is as good as one more look.
      if (Math.abs(fx) < 1e-6) return Math.exp(x - (fx * (far - x)) / (atFar - fx));
      if (fx < 0) [a, fa] = [x, fx];
      else [b, fb] = [x, fx];
      x = b - (fb * (b - a)) / (fb - fa);
    }
    return Math.exp(b);
  };

  /** The maximum is that of the sound before a filter, as the asymptote is. */
  const maximum = (): number => {
    for (let i = 0; i < levels.length; i++) levels[i] = magnitude(flow, i) * grid[i]!;
    return 20 * Math.log10((greatestOf(levels, grid, 0) * density) / REFERENCE_PRESSURE);
  };
  const { referenceLevel = maximum } = compiled;

  const demandOf = (point: Point, out: Demand): void => {
    loadPoint(point);
    sweep(grid, columns);
    setReference(referenceLevel());
    out.cutoff = grid[0]!;
    let open = true;
    /** The last frequency at which a limit is exceeded, and how much of it is used there; 0 while every limit holds. */
    let held = 0;
    let usedAbove = 0;
    let usedTwoAbove = 0;
    for (let i = BELOW + BAND - 1; i >= 0; i--) {
      const f = grid[i]!;
      const u = magnitude(flow, i) * f;
      const heard = u * passed[i]!;
      levels[i] = heard;
      if (open && heard < fallen) {
        open = false;
        out.cutoff = i === BELOW + BAND - 1 ? f * 2 : crossing(i);
      }
      const drive = asked / u;
      const x = (drive * magnitude(velocity, i)) / f;
      const c = drive * magnitude(current, i);
      const l = load === undefined ? 0 : (drive * magnitude(load, i)) / (integrated ? 2 * Math.PI * f : 1);
      if (i >= BELOW) {
        const k = i - BELOW;
        drives[k] = drive;
        travels[k] = x;
        currents[k] = c;
        loads[k] = l;
      }
      if (i <= BELOW) out.loadBelow[i] = l * Math.SQRT2;
      if (i > BELOW || held > 0) continue;
      const used = Math.max(x * perXmax, c * perHeat, drive / amplifier.voltage, c / amplifier.current);
      if (used > 1) held = i === BELOW ? f : crossingAt(f, grid[i + 1]!, used, usedAbove);
      else if (i + 2 <= BELOW) {
        const above = grazedAbove(used, usedAbove, usedTwoAbove);
        if (above !== undefined) held = grid[i + 1]! * (grid[i + 1]! / f) ** above;
      }
      usedTwoAbove = usedAbove;
      usedAbove = used;
    }
    out.depth = Math.max(out.cutoff, held);
    const rise = 20 * Math.log10(greatestOf(levels, grid, 0) / passing);
    out.rise = Math.abs(rise) < ROUNDING ? 0 : rise;
    out.travel = greatestOf(travels, grid, BELOW) * perXmax;
    out.current = greatestOf(currents, grid, BELOW);
    out.heat = out.current * perHeat;
    out.voltage = greatestOf(drives, grid, BELOW);
    out.load = greatestOf(loads, grid, BELOW) * Math.SQRT2;
    if (leastImpedance !== undefined) out.leastImpedance = leastImpedance();
  };
  return compiled.isSolved ? remembered(demandOf, 1 + variant.acoustic.length) : demandOf;
}
