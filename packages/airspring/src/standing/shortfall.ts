import type { Job } from '../job/job.js';
import type { Account, Glance } from './account.js';

/** Less than this is no difference that anyone would build for: Hz, dB, m/s. */
export const LEAST = 0.1;

/** How far a box falls short of what is wanted, in dB: of the level, and ten for each octave of reach. */
export function shortfall(
  { wanted: { level, lowest, highest } }: { readonly wanted: Pick<Job['wanted'], 'level' | 'lowest' | 'highest'> },
  { level: has, reach }: Pick<Glance, 'level' | 'reach'>,
): number {
  return Math.max(0, level - has) + 10 * Math.max(0, Math.log2(Math.min(reach, highest) / lowest));
}

/** What boxes are compared by, of a whole account. */
export const glanced = ({ reach = Infinity, loudest, wanted, noise }: Account): Glance => ({
  reach,
  level: loudest.level,
  airSpeed: wanted.airSpeed?.value ?? 0,
  quiet: noise?.quiet.level ?? Infinity,
});
