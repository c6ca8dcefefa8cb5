import { type Fault, isInputError } from '@airspring/core/fault';

/** The faults for which work is refused; none where it is answered. Any other error is thrown on. */
export function faultsOf(work: () => unknown): readonly Fault[] {
  try {
    work();
  } catch (error) {
    if (isInputError(error)) return error.faults;
    throw error;
  }
  return [];
}

/** The paths of these faults. */
export const pathsOf = (work: () => unknown): string[] => faultsOf(work).map(({ path }) => path);
