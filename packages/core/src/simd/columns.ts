import type { ComplexColumn } from '../numeric/index.js';
import type { Kernel } from './instance.js';

/** Seven columns in the memory of a kernel, all of one length. */
export interface KernelColumns {
  readonly frequencies: Float64Array;
  readonly inverse: ComplexColumn;
  readonly results: readonly [ComplexColumn, ComplexColumn];
}

export function kernelColumns({ memory, COLUMN, FREQUENCY }: Kernel, count: number): KernelColumns {
  const column = (k: number) => new Float64Array(memory.buffer, FREQUENCY.value + k * COLUMN.value, count);
  const complex = (k: number): ComplexColumn => ({ re: column(k), im: column(k + 1) });
  return { frequencies: column(0), inverse: complex(1), results: [complex(3), complex(5)] };
}
