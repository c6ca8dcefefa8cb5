import { butterworthShape, filterLevel, highPass } from '@airspring/core/filter';
import { travelLimit } from '@airspring/core/limit';
import { logarithmicGrid, si, type VoltageRms } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Job, safeFromOf } from '../job/job.js';
import { safeBehind } from './behind-filter.js';
import { readingsOf } from './depth.js';
import type { Guard } from './design-parts.js';
import type { Playing } from './playing.js';

/** The highest tone that is heard, Hz: above its resonances a cone travels as 1/f². */
const TOP = 20_000;

/**
 * Where a constant drive becomes too much below the band, and the gentlest high-pass that prevents it: for the cones of the
 * drivers, and for those that the kind adds.
 */
export function guardOf(
  job: Job,
  { system, drivers, own, limits: ofParts }: Playing,
  driveVoltageRms: VoltageRms,
): Guard {
  const { lowest, highest } = job.wanted;
  const { filter } = job.amplifier;
  const cone = own.find(({ load }) => load.ofPart !== undefined && load.integrated);
  const limits = [...travelLimit(drivers), ...(cone ? ofParts.filter(({ integrated }) => integrated) : [])];
  // The search goes on above the band: a strong amplifier may drive the cone too far even there.
  const range = [2, Math.max(highest, TOP)] as const;
  const found = safeBehind(system, limits, driveVoltageRms, filter, range);
  if (found.from === undefined) {
    if (!found.everywhere) return { driveVoltageRms, neverSafe: true };
    const bare = filter && safeBehind(system, limits, driveVoltageRms, undefined, range).from;
    return { driveVoltageRms, ...(bare !== undefined && { lowestWithoutFilter: bare }) };
  }
  const safe = { driveVoltageRms, lowestSafeFrequency: found.from };
  if (found.from > safeFromOf(job.wanted) || filter) return safe;
  const below = logarithmicGrid(2, Math.max(lowest, 2.001), 200);
  const { displacementPeak } = respond(system, below, { driveVoltageRms });
  const Xmax = drivers.driver.Xmax ?? Infinity;
  const capacity = cone?.load.capacity(cone.point) ?? Infinity;
  const moved = cone
    ? readingsOf(system, cone.load, below).map((reading) => reading * driveVoltageRms)
    : below.map(() => 0);
  for (let corner = Math.ceil(found.from) / 2; corner <= lowest; corner += 0.5) {
    const taken = filterLevel(highPass(butterworthShape(2), si('frequency', corner)), below);
    const holds = displacementPeak.every((x, i) => {
      const passed = 10 ** (taken[i]! / 20);
      return x * passed <= Xmax && moved[i]! * passed <= capacity;
    });
    if (holds) return { ...safe, highPass: { order: 2, corner, costAtLowest: -(taken.at(-1) as number) } };
  }
  return safe;
}
