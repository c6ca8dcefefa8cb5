import type { BriefOptions } from '../kind/brief-options.js';

/** A piece of work that depends on its input alone: it gives the same result anywhere, and in any order. */
export interface Chunk<Input, Result> {
  readonly name: string;
  /** Input and result are plain data. `options` says what a brief may name. */
  readonly work: (input: Input, options: BriefOptions) => Result;
  /** The parts of a result that are handed over rather than copied. */
  columns?(result: Result): readonly Float64Array[];
}
