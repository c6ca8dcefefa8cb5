import { type Fault, InputError, isInputError, type Reason, sayFault } from '@airspring/core/fault';
import { sayReason } from '../words/told.js';
import type { Says } from './says.js';

type Why = { readonly ok: false; readonly because: readonly Reason[] };

/** Faults of a solid as its reader has them. */
export const faultsTold = (faults: readonly Fault[], says: Says): string =>
  new InputError(faults.map((fault) => sayFault(fault, says))).message;

/** A solid that is made, or a sentence that says why not. */
export function madeOf<Made extends { readonly ok: true }>(
  what: string,
  make: () => Made | Why,
  says: Says,
): Made | string {
  try {
    const made = make();
    return made.ok ? made : made.because.map((reason) => sayReason(reason, says)).join(' ');
  } catch (error) {
    if (!isInputError(error)) throw error;
    return `${what} is not made as a solid: ${faultsTold(error.faults, says)}`;
  }
}
