import { InputError, isInputError } from '@airspring/core/fault';

/** Does some work whose faults stand where the reader wrote what they are about: `pathOf` says where a path lies. */
export function atOwnPath<T>(pathOf: (path: string) => string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(error.faults.map((fault) => ({ ...fault, path: pathOf(fault.path) })));
  }
}

/** The place among its outputs at which a simulation found a fault; `undefined` for a fault of something else. */
export function outputAt(path: string): number | undefined {
  const [, at] = /^outputs\[(\d+)\]$/.exec(path) ?? [];
  return at === undefined ? undefined : Number(at);
}
