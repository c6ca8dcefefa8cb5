import { travelLimit } from '@airspring/core/limit';
import type { VoltageRms } from '@airspring/core/quantity';
import type { Heard } from '../job/heard.js';
import { type Job, safeFromOf } from '../job/job.js';
import { safeBehind } from './behind-filter.js';
import type { Guard } from './design-parts.js';
import { digitalOf, gentlestOf } from './gentlest.js';
import type { Playing } from './playing.js';

/** The highest tone that is heard, Hz: above its resonances a cone travels as 1/f². */
const TOP = 20_000;

/**
 * Where a constant drive becomes too much below the band, and the gentlest high-pass that prevents it: for the cones of the
 * drivers, and for those that the kind adds. `keeps` is the level per volt that the brief asks of the response, dB, and where it is judged.
 */
export function guardOf(
  job: Job,
  { system, drivers, own, limits: ofParts, reference }: Playing,
  driveVoltageRms: VoltageRms,
  keeps: { readonly place: Pick<Heard, 'gain'>; readonly level: number },
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
  const band = [2, highest] as const;
  const gentle = gentlestOf(system, limits, { driveVoltageRms, lowest, keeps, band, reference });
  return { ...safe, ...(gentle && { highPass: { ...gentle, ...digitalOf(gentle, job.amplifier.sampleRate) } }) };
}
