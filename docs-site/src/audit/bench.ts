import type { Row } from '../../../benchmarks/result.js';

/** What a run of the benchmarks keeps. */
export interface Bench {
  readonly date: string;
  readonly quick: boolean;
  readonly passes: number;
  /** Average count of processes that wanted to run, ours included. */
  readonly load: number;
  readonly machine: {
    readonly processor: string;
    readonly cores: number;
    readonly memoryGB: number;
    readonly system: string;
  };
  readonly versions: Readonly<Record<string, string>>;
  readonly agreement: readonly {
    readonly peer: string;
    /** Column set. */
    readonly set: string;
    readonly worst: number;
    readonly tolerance: number;
    readonly delay?: number;
    readonly delayTolerance?: number;
  }[];
  readonly groups: readonly { readonly title: string; readonly rows: readonly Row[] }[];
}
