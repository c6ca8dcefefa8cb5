import { type Fault, InputError, isInputError, type Reason } from '@airspring/core/fault';
import { sayReason } from '../words/told.js';
import type { Says } from './says.js';

type Why = { readonly ok: false; readonly because: readonly Reason[] };

/** A fault of a solid, which tells lengths in metres, in the unit of the reader. */
function faultIn(says: Says, { got, expected, ...fault }: Fault): Fault {
  const inUnit = expected.replace(/([\d.]+(?:e-\d+)?) m(?= |,|:|;|\.|$)/g, (_, metres) => says(Number(metres)));
  return { ...fault, got: typeof got === 'number' && inUnit !== expected ? says(got) : got, expected: inUnit };
}

/** Faults of a solid as its reader has them. */
export const faultsTold = (faults: readonly Fault[], says: Says): string =>
  new InputError(faults.map((fault) => faultIn(says, fault))).message;

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
