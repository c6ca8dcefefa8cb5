import type { System } from '@airspring/core/enclosure';
import { butterworthHighPass, filterLevel } from '@airspring/core/filter';
import { lowestSafeFrequency, travelLimit } from '@airspring/core/limit';
import { logarithmicGrid, si, type VoltageRms } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import type { Design } from '../answer.js';
import type { Job, Offer } from '../brief/job.js';

/** Where a constant drive becomes too much below the band, and the gentlest high-pass that prevents it. */
export function protectionOf(
  job: Job,
  { drivers }: Offer,
  system: System,
  driveVoltageRms: VoltageRms,
): Design['protection'] {
  const { lowest, highest } = job.wanted;
  const limits = travelLimit(drivers);
  const safe = (drive: VoltageRms) =>
    lowestSafeFrequency(system, limits, {
      driveVoltageRms: drive,
      from: si('frequency', 2),
      to: si('frequency', highest),
    });
  const full = si('voltageRms', job.amplifier.voltage);
  const atFull = safe(full);
  const atFullVoltage = { driveVoltageRms: full, ...(atFull.ok && { lowestSafeFrequency: atFull.frequency }) };
  const found = safe(driveVoltageRms);
  if (!found.ok) return { driveVoltageRms, atFullVoltage };
  const judged = { driveVoltageRms, atFullVoltage, lowestSafeFrequency: found.frequency, binding: found.binding };

  const below = logarithmicGrid(2, Math.max(lowest, 2.001), 200);
  const { displacementPeak } = respond(system, below, { driveVoltageRms });
  const Xmax = drivers.driver.Xmax ?? Infinity;
  for (let corner = Math.ceil(found.frequency) / 2; corner <= lowest; corner += 0.5) {
    const taken = filterLevel(butterworthHighPass({ order: 2, corner: si('frequency', corner) }), below);
    const holds = displacementPeak.every((x, i) => x * 10 ** ((taken[i] as number) / 20) <= Xmax);
    if (holds) return { ...judged, highPass: { order: 2, corner, costAtLowest: -(taken.at(-1) as number) } };
  }
  return judged;
}
