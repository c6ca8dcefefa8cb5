import type { Answer, DriverAccount, Met, NotMet } from './answer.js';
import type { Job } from './brief/job.js';
import { readBrief } from './brief/read.js';
import { assemble } from './report/assemble.js';
import { wishValue } from './report/margins.js';
import { comparison } from './report/words.js';
import { bestBuilds } from './search/best.js';
import { conflictOf } from './search/conflict.js';
import { nearestBrief } from './search/nearest.js';
import { type Chosen, select } from './search/select.js';
import { wishes } from './search/wishes.js';

const accountsOf = ({ offers }: Job): DriverAccount[] =>
  [...new Map(offers.map((offer) => [offer.driverIndex, offer])).values()].map(({ name, completed }) => ({
    name,
    parameters: { ...completed.parameters } as unknown as Record<string, number>,
    derived: completed.derived.map(({ field, value, by }) => ({ field, value, by })),
    deviations: completed.deviations.map(({ field, given, implied, relative }) => ({
      field,
      given,
      implied,
      relative,
    })),
    blocked: completed.blocked.map(({ what, missing }) => `${what}: ${missing.join(', ')} is missing`),
  }));

function met(job: Job, chosen: readonly Chosen[]): Met {
  const first = chosen[0] as Chosen;
  const designs = chosen.map(({ build, leaning }, i) => {
    const words = i === 0 ? [] : comparison(build.criteria, first.build.criteria);
    return assemble(job, build, String.fromCharCode(65 + i), leaning, words);
  });
  return { ok: true, version: 1, title: job.brief.title, asked: job.wanted, designs, drivers: accountsOf(job) };
}

function notMet(job: Job): NotMet {
  const { wishes: set, fallenAtEnd } = conflictOf(job);
  const conflict = set.map((i) => {
    const { what, allowed, text } = wishValue(job, i);
    return { path: (wishes[i] as (typeof wishes)[number]).path, wish: `${what}: ${text(allowed)}` };
  });
  const named = conflict.map(({ wish }) => wish).join('; ');
  const because =
    conflict.length === 0
      ? ['No box of the allowed kinds holds the drivers and a vent that fits: compare their sizes with the space.']
      : conflict.length === 1
        ? [`This wish cannot be met by any box looked at: ${named}.`]
        : [
            `These wishes contradict each other, although without any one of them the others of this list can be met together: ${named}.`,
          ];
  if (fallenAtEnd) {
    const { highest } = job.brief.wanted;
    because.push(
      `Every box has fallen further than wanted.fall allows at the end of the band already, at ${highest}: ask for a lower wanted.highest.`,
    );
  }
  const head = { ok: false, version: 1, title: job.brief.title, conflict, because, drivers: accountsOf(job) } as const;
  const nearest = fallenAtEnd ? undefined : nearestBrief(job);
  if (nearest === undefined) return head;
  const again = readBrief(nearest.brief);
  return { ...head, nearest: { ...nearest, answer: met(again, select(again, bestBuilds(again))) } };
}

/**
 * The whole job as one call: from a brief to up to five boxes that meet it, or to why none does and the nearest brief that
 * can be met. A real search over volume, tuning, vent, driver and count with every limit; the same brief gives the same answer.
 *
 * @throws InputError with every fault of the brief at its path
 * @example design(brief).ok // true
 */
export function design(brief: unknown): Answer {
  const job = readBrief(brief);
  const chosen = select(job, bestBuilds(job));
  return chosen.length > 0 ? met(job, chosen) : notMet(job);
}
