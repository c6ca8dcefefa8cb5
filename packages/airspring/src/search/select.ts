import { si } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';
import type { Build } from '../box/build.js';
import { compileDemand } from '../box/demand.js';
import type { Job } from '../brief/job.js';
import type { Criteria } from './wishes.js';

/** How far two designs must lie apart in at least one respect, so that a reader has a choice. */
const apart = { f3: 2, level: 1.5, volume: 0.1 } as const;

/** A build with its half-power frequency. */
export interface Chosen {
  readonly build: Build;
  readonly leaning: string;
  readonly f3: number;
}

const LEANINGS = ['balanced', 'deeper', 'louder', 'smaller', 'simpler'] as const;

/** Whether one is at least as good in every respect and better in one. */
const dominates = (a: Criteria, b: Criteria): boolean =>
  a.cutoff <= b.cutoff &&
  a.level >= b.level &&
  a.volume <= b.volume &&
  a.ventLength <= b.ventLength &&
  (a.cutoff < b.cutoff || a.level > b.level || a.volume < b.volume || a.ventLength < b.ventLength);

const differ = (a: Chosen, b: Chosen): boolean =>
  Math.abs(a.f3 - b.f3) >= apart.f3 ||
  Math.abs(a.build.criteria.level - b.build.criteria.level) >= apart.level ||
  Math.abs(a.build.criteria.volume / b.build.criteria.volume - 1) >= apart.volume;

/** The best build of each leaning, in that order, without those beaten by another or too like an earlier one. */
export function select(job: Job, builds: readonly (Build | undefined)[]): Chosen[] {
  const found = builds.flatMap((build, i): Chosen[] => {
    if (build === undefined) return [];
    const system = compileDemand(job, build.kin.offer, build.kin.family).system(build.netVolume, build.fb);
    const half = cutoff(system, { from: si('frequency', 2), to: si('frequency', job.wanted.highest) });
    return [{ build, leaning: LEANINGS[i] as string, f3: half.ok ? half.frequency : build.criteria.cutoff }];
  });
  const chosen: Chosen[] = [];
  for (const next of found) {
    const beaten = found.some(({ build }) => dominates(build.criteria, next.build.criteria));
    if (!beaten && chosen.every((other) => differ(next, other))) chosen.push(next);
  }
  return chosen;
}
