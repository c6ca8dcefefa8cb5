import { InputError, isInputError } from '@airspring/core/fault';

/** Does some work of a timeline. Its faults stand where the reader wrote what they are about: `pathOf` says where a path lies. */
export function atOwnPath<T>(pathOf: (path: string) => string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(error.faults.map((fault) => ({ ...fault, path: pathOf(fault.path) })));
  }
}
