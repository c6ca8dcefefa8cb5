import { bytes } from './bytes.js';

/** What `kernel/sweep.ts` exports. The length of a column is in bytes; `last` is the highest power of a polynomial. */
export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly MOST: { readonly value: number };
  readonly COLUMN: { readonly value: number };
  readonly FREQUENCY: { readonly value: number };
  readonly invertOfEight: (length: number, toUnit: number) => number;
  readonly pairOfSix: (length: number, toUnit: number) => void;
  readonly pairOfEight: (length: number, toUnit: number) => void;
  readonly invert: (length: number, toUnit: number, last: number) => number;
  readonly row: (length: number, toUnit: number, last: number) => void;
}

/** What is used of WebAssembly: not every runtime that has it comes with its types. */
interface Runtime {
  readonly WebAssembly: {
    readonly Module: new (bytes: Uint8Array) => object;
    readonly Instance: new (module: object) => { readonly exports: unknown };
  };
}

/** Makes an instance of the kernel with a memory of its own. Throws where WebAssembly or its vectors are missing or forbidden. */
export function instance(): Kernel {
  const { Module, Instance } = (globalThis as unknown as Runtime).WebAssembly;
  return new Instance(new Module(Uint8Array.from(bytes))).exports as Kernel;
}
