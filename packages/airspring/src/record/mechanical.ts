import type { System } from '@airspring/core/enclosure';
import {
  damageLimit,
  greatestProgrammeLevel,
  type Programme,
  pinkProgramme,
  voltageLimit,
} from '@airspring/core/limit';
import { type FrequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import type { Job } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import { safeBehind } from './behind-filter.js';
import type { At } from './load.js';
import { worst } from './worst.js';

/** How near the cone comes to where it meets something hard, with all that the amplifier gives, behind the filter before it. */
export interface MechanicalTold {
  /** Where coil or suspension meet something hard, one way, m. */
  readonly Xmech: number;
  /** The greatest peak travel of a steady tone, m. */
  readonly tone: At;
  /** What is usually kept free of it, as a share (common practice). */
  readonly usualMargin: number;
  /** From here upwards no tone reaches it, Hz; left out where none does at all, or where every tone does. */
  readonly from?: number;
  /** Peak travel of pink programme of which peaks just clip, m, and its band, Hz. */
  readonly programme: number;
  readonly band: readonly [lowest: number, highest: number];
}

/** The lowest tone of a programme that is judged, Hz. */
export const LOWEST_TONE = 10;
/** Noise that is seldom clipped (common practice); what a peak moves does not depend on it. */
const CREST = si('ratio', 4);

/** What tones and programme do to a cone that may move so far; nothing where that is not known. */
export function mechanicalOf(job: Job, system: System, Xmech: number | undefined): MechanicalTold | undefined {
  if (Xmech === undefined) return undefined;
  const { amplifier, wanted } = job;
  const { filter, voltage } = amplifier;
  const band = [LOWEST_TONE, wanted.highest] as const;
  const grid = logarithmicGrid(...band, 400);
  const passed = passedBy(filter, grid);
  const { displacementPeak } = respond(system, grid, { driveVoltageRms: si('voltageRms', voltage) });
  const tone = worst(
    grid,
    displacementPeak.map((travel, i) => travel * passed[i]!),
  );
  const limit = damageLimit({ Xmech: si('displacementPeak', Xmech), margin: si('ratio', 0) });
  const { from } = safeBehind(system, [limit], voltage, filter, band);
  const clips = voltageLimit(si('voltageRms', voltage));
  const programme = behind(
    pinkProgramme({ from: si('frequency', band[0]), to: si('frequency', band[1]), crestFactor: CREST }),
    (at) => passedBy(filter, at),
  );
  const { drives } = greatestProgrammeLevel(system, [limit, clips], { programme });
  const usual = damageLimit({ Xmech: si('displacementPeak', Xmech) });
  return {
    Xmech,
    tone,
    usualMargin: 1 - (Math.SQRT2 * usual.greatestRms) / Xmech,
    ...(from !== undefined && tone.value > Xmech && { from }),
    programme: (Xmech * drives[clips.name]!) / drives[limit.name]!,
    band,
  };
}

/** A programme behind a filter: what the amplifier gets. */
function behind(pink: Programme, passed: (at: FrequencyGrid) => Float64Array): Programme {
  const gains = passed(pink.frequencies);
  const shares = pink.share.map((share, i) => share * gains[i]! ** 2);
  const sum = shares.reduce((total, share) => total + share, 0);
  return { ...pink, share: shares.map((share) => share / sum) };
}
