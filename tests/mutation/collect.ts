/** Stands for the ledger in files whose checks are collected rather than run. */
import { type Check, evaluate as evaluateOne, expectationOf } from '../ledger/check.js';
import type { Given, LedgerRow } from '../ledger/row.js';

/** A check, with what is expected as numbers. */
type AnyCheck = Omit<Check<Readonly<Record<string, Given>>>, 'expected' | 'tolerance'> &
  ReturnType<typeof expectationOf>;
export interface Collected {
  readonly id: string;
  readonly spec: AnyCheck;
  readonly evaluate: () => LedgerRow;
}

export const collected: Collected[] = [];

/** As the ledger's: the air is told, and changes nothing. */
export const checkIn = (_: LedgerRow['air']) => check;

export function check<const G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): void {
  const numbers = { ...spec, ...expectationOf(spec) } as unknown as AnyCheck;
  collected.push({ id, spec: numbers, evaluate: () => evaluateOne(id, spec) });
}
