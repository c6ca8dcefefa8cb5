import { isInputError } from '@airspring/core/fault';

type Why = { readonly ok: false; readonly because: readonly { readonly text: string }[] };

/** A solid that is made, or a sentence that says why not. */
export function madeOf<Made extends { readonly ok: true }>(what: string, make: () => Made | Why): Made | string {
  try {
    const made = make();
    return made.ok ? made : made.because.map(({ text }) => text).join(' ');
  } catch (error) {
    if (!isInputError(error)) throw error;
    return `${what} is not made as a solid: ${error.message}`;
  }
}
