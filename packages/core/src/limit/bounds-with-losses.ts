import { missingProbe } from '../network/index.js';
import { classBHeat } from './amplifier-heat.js';
import type { Bound } from './first-passed.js';
import { greatestDrive } from './greatest-level.js';
import type { Limit } from './limit.js';
import type { OperatingPoints } from './operating-point.js';

/** Limits that have a meaning only with losses or with an amplifier. */
interface FurtherLimits {
  readonly ventCompression: number | undefined;
  readonly amplifier: { readonly supply: number; readonly heat: number } | undefined;
}

/** The bounds at the i-th frequency on the strength of motion, and where the limits would be reached without any loss. */
export function boundsOf(
  points: OperatingPoints,
  grid: Float64Array,
  limits: readonly Limit[],
  { ventCompression, amplifier }: FurtherLimits,
): (i: number) => { readonly list: readonly Bound[]; readonly start: number } {
  const { probes, linear, at, free } = points;
  const places = limits.map(({ probe }) => {
    const place = probe === undefined ? -1 : probes.indexOf(probe);
    if (probe !== undefined && place < 0) throw missingProbe(probe);
    return place;
  });
  const count = grid.length;
  const drives = new Float64Array(count);
  const columns = places.map((place) => linear[place]);
  greatestDrive(grid, limits, columns, drives, new Int32Array(count));
  const compressed = ventCompression === undefined ? undefined : compressionOf(points, ventCompression);
  const current = probes.indexOf('current');
  const value = (i: number, strength: number, place: number): number => {
    const { drive, probe } = at(i, strength);
    return place < 0 ? drive : drive * Math.hypot(...probe(place));
  };
  const stage = (i: number, strength: number, supply: number): number => {
    const { drive, probe } = at(i, strength);
    const [re, im] = probe(current);
    return classBHeat(supply, drive * Math.hypot(re, im), re * drive ** 2);
  };
  return (i) => {
    const list = limits.map(({ name, greatestRms, integrated }, k): Bound => {
      const greatest = greatestRms * (integrated ? 2 * Math.PI * grid[i]! : 1);
      return { name, excess: (strength) => Math.min(value(i, strength, places[k]!) / greatest, 1e150) - 1 };
    });
    if (compressed) list.push({ name: 'vent compression', excess: (u) => compressed(i, u), returns: true });
    if (amplifier) {
      const excess = (strength: number) => stage(i, strength, amplifier.supply) / amplifier.heat - 1;
      list.push({ name: 'amplifier heat', excess, returns: true });
    }
    return { list, start: Math.max(free(i, drives[i]!), 1e-150) };
  };
}

/** How far the compression by the vent is passed at a speed: from what a small drive promises, with a cold coil. */
function compressionOf({ withColdCoil, probes }: OperatingPoints, most: number) {
  const flow = probes.indexOf('radiatedFlow');
  const size = (i: number, speed: number): number => {
    const { re, im } = withColdCoil(i, speed)[flow]!;
    return Math.hypot(re[i]!, im[i]!);
  };
  return (i: number, speed: number): number => (20 * Math.log10(size(i, 0) / size(i, speed))) / most - 1;
}
