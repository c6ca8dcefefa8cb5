/** Stands for the ledger in files whose checks are collected rather than run. */
import { type Check, evaluate as evaluateOne } from '../ledger/check.js';
import type { Given, LedgerRow } from '../ledger/row.js';

type AnyCheck = Check<Readonly<Record<string, Given>>>;
export interface Collected {
  readonly id: string;
  readonly spec: AnyCheck;
  readonly evaluate: () => LedgerRow;
}

export const collected: Collected[] = [];

export function check<const G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): void {
  collected.push({ id, spec: spec as unknown as AnyCheck, evaluate: () => evaluateOne(id, spec) });
}
