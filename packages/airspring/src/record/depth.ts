import type { System } from '@airspring/core/enclosure';
import { greatestLevel, type Limit } from '@airspring/core/limit';
import { compileNetwork } from '@airspring/core/network';
import { bracketedRoot } from '@airspring/core/numeric';
import { logarithmicGrid } from '@airspring/core/quantity';
import { probeColumns, probeNamed } from '@airspring/core/response';
import { wantedAt } from '../job/heard.js';
import { type Job, safeFromOf } from '../job/job.js';
import type { Point } from '../kind/point.js';
import type { Load } from '../kind/wish.js';
import type { Below } from './design-parts.js';
import type { Design } from './design-record.js';
import { greatestAt } from './greatest-wanted.js';

/** What a kind of box limits besides, and the point at which it does. */
export interface OwnLoad {
  readonly load: Load;
  readonly point: Point;
}

/** Peaks of the quantity that a kind limits, per volt of drive. */
export function readingsOf(system: System, { probes, integrated }: Load, frequencies: Float64Array): Float64Array {
  const { topology, values } = system.network;
  const own = Object.fromEntries(probes.map((probe, i) => [`load ${i}`, probe]));
  const network = { values, topology: { ...topology, probes: { ...topology.probes, ...own } } };
  const swept = probeColumns(compileNetwork(network), frequencies);
  const columns = Object.keys(own).map((name) => probeNamed(swept, name));
  return frequencies.map((f, i) => {
    const peak = Math.SQRT2 * Math.max(...columns.map(({ re, im }) => Math.hypot(re[i]!, im[i]!)));
    return integrated ? peak / (2 * Math.PI * f) : peak;
  });
}

const POINTS = 120;
/** A depth is rounded up by this much, Hz. */
const SHARP = 1e-3;

/**
 * How deep a box plays: the lowest frequency from which, up to the beginning of the band, the response holds and every limit
 * is kept at the wanted level. Where a limit stops it before the response does, `below` says which.
 */
export function depthOf(
  { wanted, heard }: Job,
  system: System,
  limits: readonly Limit[],
  cutoff: number,
  own: readonly OwnLoad[],
): Pick<Design['response'], 'depth' | 'below'> {
  const lowest = safeFromOf(wanted);
  if (cutoff >= lowest) return { depth: Math.max(cutoff, lowest) };
  const grid = logarithmicGrid(cutoff, lowest, POINTS);
  const place = wantedAt(heard);
  const { level: most, binding } = greatestAt(place, system, limits, grid);
  const spare = (level: number) => level - wanted.level;
  let first = POINTS - 1;
  while (first >= 0 && spare(most[first]!) >= 0) first--;
  if (first < 0) return { depth: cutoff };
  const at = (f: number) => spare(greatestAt(place, system, limits, Float64Array.of(f)).level[0]!);
  const above = grid[first + 1];
  const root = above === undefined ? undefined : bracketedRoot(at, grid[first]!, above, 1e-6);
  const depth = Math.min(lowest, (root?.ok ? root.x : (above ?? lowest)) + SHARP);
  const below: Below = {
    binding: binding[first] as string,
    frequency: cutoff,
    times: 10 ** (-spare(most[0]!) / 20),
    ...worstLoadAt(system, own, cutoff, wanted.level - place.gain([cutoff])[0]!),
  };
  return { depth, below };
}

/** The first of the kind's own loads that its part cannot bear there; empty where all can be borne. */
function worstLoadAt(system: System, own: readonly OwnLoad[], frequency: number, level: number): Pick<Below, 'load'> {
  for (const one of own) {
    const found = loadAt(system, one, frequency, level);
    if (found.load) return found;
  }
  return {};
}

/** The load that the wanted level would put on the kind's own part at one frequency; empty where the part can bear it. */
function loadAt(system: System, { load, point }: OwnLoad, frequency: number, level: number): Pick<Below, 'load'> {
  const one = Float64Array.of(frequency);
  const { levelHalfSpace, driveVoltageRms } = greatestLevel(system, [UNIT_DRIVE], one);
  const drive = driveVoltageRms[0]! * 10 ** ((level - levelHalfSpace[0]!) / 20);
  const reading = readingsOf(system, load, one)[0]! * drive;
  if (reading <= load.capacity(point)) return {};
  return { load: { value: reading * load.perReading(point), meaning: load.meaning, subject: load.below } };
}

/** One volt, whatever its effect. */
const UNIT_DRIVE: Limit = { name: 'drive', greatestRms: 1, basis: 'one volt' };
