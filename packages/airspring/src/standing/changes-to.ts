import { refuse } from '@airspring/core/fault';
import type { Written } from '../job/job.js';
import { type BriefOptions, completeOptions } from '../kind/brief-options.js';
import { accountOf, faultsOfLevel } from './account.js';
import { allChanges } from './changes/all.js';
import type { Now } from './changes/change.js';
import { combinations } from './combinations.js';
import { readStanding } from './read.js';
import { soundingOf, stateOf } from './state.js';

/**
 * A box that stands, every change to it alone, and the best of them together, with their names in reports.
 *
 * @throws InputError with every fault of the brief at its path
 */
export function changesTo(brief: unknown, options: BriefOptions = {}) {
  const { kinds, models } = completeOptions(options);
  const standing = readStanding(brief, kinds, models);
  const state = stateOf(standing);
  const sounding = soundingOf(standing, state);
  if (!sounding.ok) throw new Error(sounding.because.map(({ text }) => text).join(' '));
  refuse(faultsOfLevel(brief as Written, standing.job, sounding));
  const now: Now = { standing, state, account: accountOf(standing.job, state, sounding) };
  const made = allChanges(now);
  const chains = () => combinations(now, made).map((one, i) => ({ ...one, name: String.fromCharCode(65 + i) }));
  return { standing, now, sounding, made, chains };
}
