import type { DrivenSpec, Drivers, Family } from '../enclosure/index.js';
import { refuse } from '../fault/index.js';
import { unlessList } from '../numeric/refusal.js';
import type { AlignmentResult } from './aligned.js';
import type { Alignment } from './alignment.js';
import type { AlignmentOptions } from './options.js';
import { solveAlignment } from './solve.js';

/** A kind of box to try for any driver: an alignment in a family, with losses and options of its own. */
export interface Candidate {
  readonly alignment: Alignment;
  /** The name of the family. */
  readonly family: string;
  readonly solve: (drivers: Drivers) => AlignmentResult<DrivenSpec>;
}

/**
 * An alignment in a family as a candidate for any driver.
 *
 * @validity as `solveAlignment`
 * @source own (composition)
 * @example candidate(quasiThirdOrder, ventedFamily, { QL: 7 })
 */
export const candidate = <Spec extends DrivenSpec, Input>(
  alignment: Alignment,
  family: Family<Spec, Input>,
  losses: Partial<Input> = {},
  options: AlignmentOptions = {},
): Candidate => ({
  alignment,
  family: family.name,
  solve: (drivers) => solveAlignment(alignment, family, { ...losses, drivers }, options),
});

/** A candidate and what came of it. */
export interface Suited extends Candidate {
  readonly result: AlignmentResult<DrivenSpec>;
}

/**
 * Which boxes suit a driver: each candidate with its box and its f3, or with the reason why it has none. A candidate of your own
 * stands beside those of this package by being in the list.
 *
 * @validity as `solveAlignment`
 * @neglects as `solveAlignment`
 * @returns one row for each candidate, in their order
 * @throws InputError those of the families
 * @source own (a list of solutions)
 * @example boxesThatSuit(driver, [candidate(butterworth(2), closedFamily)])[0].result
 */
export function boxesThatSuit(drivers: Drivers, candidates: readonly Candidate[]): readonly Suited[] {
  refuse(unlessList('candidates', candidates, 'candidates'));
  return candidates.map((one) => ({ ...one, result: one.solve(drivers) }));
}
