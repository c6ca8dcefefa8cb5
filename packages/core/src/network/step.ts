/** One step of an elimination: the pivot, and what it changes. Entries are places in the list of nonzeros. */
export interface Step {
  readonly row: number;
  readonly column: number;
  readonly pivot: number;
  /** Whether the step is done at each frequency. Otherwise it was done once, with numbers that hold at all frequencies. */
  readonly swept: boolean;
  /** Whether the pivot can vanish at some frequency. */
  readonly guarded: boolean;
  /** Entries right of the pivot in its row: what back substitution reads. */
  readonly rest: readonly number[];
  /** Right side of the pivot's row, or −1 where there is none. */
  readonly right: number;
  /** For each other row with an entry in the pivot's column: that entry, its row, and [target, source] pairs. */
  readonly rows: readonly {
    readonly factor: number;
    readonly row: number;
    readonly updates: readonly (readonly [target: number, source: number])[];
  }[];
}

/** Where the pivot of a step stands. */
export type Pivot = Pick<Step, 'row' | 'column'>;
