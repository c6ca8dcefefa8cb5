import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { FilterShape } from '../filter/index.js';
import { boundedMinimum, bracketedRoot, logarithmic, polynomialOnImaginaryAxis } from '../numeric/index.js';
import { type Frequency, format, logarithmicGrid, si } from '../quantity/index.js';
import { allowedDrive } from './allowed-drive.js';
import type { Limit } from './limit.js';

/** The lowest corner at which every limit holds, with the limit that is reached there. */
export interface Touching {
  readonly ok: true;
  readonly corner: Frequency;
  readonly binding: string;
  readonly bindingAt: Frequency;
}

const POINTS = 600;
/** A drive that passes a limit by less than this share counts as safe. */
const LEAST = 1e-6;
/** Number of corners tried. */
const CORNERS = 240;
/** The lowest of them, over the highest frequency that is not safe. */
const LOWEST = 1e-3;
/** The greatest number of times that a corner is raised. */
const ROUNDS = 50;
/** Tops below this share of the greatest one are not refined. */
const NEAR = 0.98;

/** Gain of the high-pass of a shape at frequencies over its corner. */
function gainOf({ denominator }: FilterShape): (x: number) => number {
  const value = new Float64Array(2);
  return (x) => {
    polynomialOnImaginaryAxis(denominator, 1 / x, value);
    const re = value[0]!;
    const im = value[1]!;
    return 1 / Math.sqrt(re * re + im * im);
  };
}

/** Prepares the search for the corner of any shape; or says why no filter is needed, or none helps. */
export function touchingCorner(
  system: System,
  limits: readonly Limit[],
  drive: number,
  [from, to]: readonly [number, number],
): Impossible | ((shape: FilterShape) => Touching | Impossible) {
  const { columnsAt, most, mostAt, peaks } = allowedDrive(system, limits);
  const even = logarithmicGrid(from, to, POINTS);
  const grid = Float64Array.from(new Set([...even, ...peaks(even, columnsAt(even), 0)])).sort();
  const { voltage } = most(grid);
  const wanted = voltage.map((value) => drive / value);
  const hertz = (f: number) => format('frequency', f, 'Hz', 4);
  const volts = format('voltageRms', drive, 'V', 4);
  const highest = wanted.findLastIndex((ratio) => ratio > 1 + LEAST);
  if (highest < 0) return impossible('safe-throughout', `${volts} is safe from ${hertz(from)} to ${hertz(to)}`);
  const bindingAt = (f: number) => (limits[most(Float64Array.of(f)).binding[0]!] as Limit).name;
  if (highest === grid.length - 1) {
    const text = `${volts} is too much even at ${hertz(to)}, the end of the band: ${bindingAt(to)}`;
    return impossible('above-at-end', text);
  }
  const wantedAt = (f: number) => drive / mostAt(f);
  return (shape) => {
    const gain = gainOf(shape);
    const loads = new Float64Array(grid.length);
    /** Whether every sample is within its limits; the first that is not is mostly that of the highest frequency. */
    const holds = (corner: number): boolean => {
      for (let n = 0, i = highest; n < grid.length; n++, i = i > 0 ? i - 1 : grid.length - 1)
        if (wanted[i]! * gain(grid[i]! / corner) > 1) return false;
      return true;
    };
    /** The greatest share of a limit that is used, among the samples. */
    const sampled = (corner: number): number => {
      let greatest = 0;
      for (let i = 0; i < grid.length; i++) {
        loads[i] = wanted[i]! * gain(grid[i]! / corner);
        if (loads[i]! > greatest) greatest = loads[i]!;
      }
      return greatest;
    };
    /** The same between the samples, and where it is. */
    const greatest = (corner: number): readonly [share: number, frequency: number] => {
      const top = sampled(corner);
      let best: readonly [number, number] = [top, grid[loads.indexOf(top)]!];
      for (let i = 1; i < grid.length - 1; i++) {
        if (loads[i]! < NEAR * top || loads[i]! < loads[i - 1]! || loads[i]! < loads[i + 1]!) continue;
        const { x, value } = boundedMinimum((f) => -wantedAt(f) * gain(f / corner), grid[i - 1]!, grid[i + 1]!, 1e-9);
        if (-value > best[0]) best = [-value, x];
      }
      return best;
    };
    const corners = logarithmic(LOWEST * grid[highest]!, to, CORNERS);
    const place = corners.findIndex((corner) => holds(corner) && greatest(corner)[0] <= 1);
    if (place <= 0) return impossible('no-filter-holds', `no corner below ${hertz(to)} keeps every limit`);
    // The corner is raised until the frequency that uses most of a limit keeps it; then another may use most. Three rounds are usual.
    let corner = corners[place - 1]!;
    let at = grid[highest]!;
    for (let round = 0; round < ROUNDS; round++) {
      const [share, f] = greatest(corner);
      at = f;
      if (share <= 1) break;
      const wanted = wantedAt(f);
      const root = bracketedRoot((c) => Math.log(wanted * gain(f / c)), corner, corners[place]!, 1e-12 * to);
      // A hair above the root every limit holds in spite of rounding.
      corner = root.ok ? root.x * (1 + 1e-9) : corners[place]!;
    }
    return { ok: true, corner: si('frequency', corner), binding: bindingAt(at), bindingAt: si('frequency', at) };
  };
}
