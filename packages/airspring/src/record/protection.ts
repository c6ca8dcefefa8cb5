import type { System } from '@airspring/core/enclosure';
import { butterworthHighPass, filterLevel } from '@airspring/core/filter';
import { lowestSafeFrequency, travelLimit } from '@airspring/core/limit';
import { logarithmicGrid, si, type VoltageRms } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import type { DriverChoice, Job } from '../job/job.js';
import type { Guard } from './answer.js';

/** As far up as tones are heard: above its resonances a cone travels by 1/f². */
const TOP = 20_000;

/** Where a constant drive becomes too much below the band, and the gentlest high-pass that prevents it. */
export function guardOf(job: Job, { drivers }: DriverChoice, system: System, driveVoltageRms: VoltageRms): Guard {
  const { lowest, highest } = job.wanted;
  const found = lowestSafeFrequency(system, travelLimit(drivers), {
    driveVoltageRms,
    from: si('frequency', 2),
    // Beyond the band as well: a strong amplifier may drive the cone too far even there.
    to: si('frequency', Math.max(highest, TOP)),
  });
  if (!found.ok) {
    const never = found.because.some(({ code }) => code === 'above-at-end');
    return { driveVoltageRms, ...(never && { neverSafe: true }) };
  }
  const safe = { driveVoltageRms, lowestSafeFrequency: found.frequency as number };
  if (found.frequency > lowest) return safe;
  const below = logarithmicGrid(2, Math.max(lowest, 2.001), 200);
  const { displacementPeak } = respond(system, below, { driveVoltageRms });
  const Xmax = drivers.driver.Xmax ?? Infinity;
  for (let corner = Math.ceil(found.frequency) / 2; corner <= lowest; corner += 0.5) {
    const taken = filterLevel(butterworthHighPass({ order: 2, corner: si('frequency', corner) }), below);
    const holds = displacementPeak.every((x, i) => x * 10 ** ((taken[i] as number) / 20) <= Xmax);
    if (holds) return { ...safe, highPass: { order: 2, corner, costAtLowest: -(taken.at(-1) as number) } };
  }
  return safe;
}
