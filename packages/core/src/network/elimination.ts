import type { Stamp } from './equations.js';

/** One step of an elimination: the pivot, and what it changes. Entries are places in the list of nonzeros. */
export interface Step {
  readonly row: number;
  readonly column: number;
  readonly pivot: number;
  /** Whether the pivot is a sum that can vanish at some frequency. */
  readonly guarded: boolean;
  /** 1 or −1 where the pivot is that number at every frequency; else 0. */
  readonly unit: 0 | 1 | -1;
  /** Entries right of the pivot in its row, with their columns: what back substitution reads. */
  readonly rest: readonly { readonly entry: number; readonly column: number }[];
  /** For each other row with an entry in the pivot's column: that entry, its row, and [target, source] pairs. */
  readonly rows: readonly {
    readonly factor: number;
    readonly row: number;
    readonly updates: readonly (readonly [target: number, source: number])[];
  }[];
}

/** The order in which a sparse system is solved, fill-in included; the same at every frequency. */
export interface Elimination {
  /** Row and column of each nonzero. */
  readonly entries: readonly { readonly row: number; readonly column: number }[];
  /** For each stamp the nonzero it adds to. */
  readonly place: readonly number[];
  readonly steps: readonly Step[];
}

/** What an entry is: 0 a constant, 1 one element, 2 a sum, which can vanish. */
type Nature = 0 | 1 | 2;

/**
 * What a pivot off the diagonal costs besides. Solving for the pressure in a box from the forces on its cone would take the
 * difference of two forces that nearly cancel: above resonance that loses a digit with each octave.
 */
const COUPLING = 8;

/**
 * Chooses pivots by Markowitz's count, constants and single elements before sums: a 1 never vanishes, one element's
 * admittance does not either, and only sums have to be guarded. What couples two nodes is no pivot where it can be helped:
 * the node's own sum is, as in any stable elimination of a passive network. A chain is eliminated link by link, in time that
 * grows with its length.
 *
 * @returns the steps, or `undefined` for a system without a full set of pivots: structurally singular
 * @source markowitz1957
 */
export function elimination(size: number, stamps: readonly Stamp[]): Elimination | undefined {
  const entries: { row: number; column: number }[] = [];
  const nature: Nature[] = [];
  const signs: (1 | -1)[] = [];
  const rows = Array.from({ length: size }, () => new Map<number, number>());
  const columns = Array.from({ length: size }, () => new Set<number>());
  const entryAt = (row: number, column: number): number => {
    const known = (rows[row] as Map<number, number>).get(column);
    if (known !== undefined) {
      nature[known] = 2;
      return known;
    }
    const made = entries.push({ row, column }) - 1;
    (rows[row] as Map<number, number>).set(column, made);
    (columns[column] as Set<number>).add(row);
    return made;
  };
  const place = stamps.map(({ row, column, sign, symbol, listed }) => {
    const entry = entryAt(row, column);
    signs[entry] = sign;
    // A corner of a chain matrix can vanish: a quarter wave.
    nature[entry] ??= listed !== undefined && listed !== 'Y' ? 2 : symbol < 0 ? 0 : 1;
    return entry;
  });

  const steps: Step[] = [];
  const open = new Set(rows.keys());
  for (let step = 0; step < size; step++) {
    let best: { row: number; column: number; entry: number } | undefined;
    let least = Infinity;
    for (const row of open) {
      const across = rows[row] as Map<number, number>;
      for (const [column, entry] of across) {
        const fill = (across.size - 1) * ((columns[column] as Set<number>).size - 1);
        const coupling = row !== column && nature[entry] !== 0 ? COUPLING : 0;
        const price = fill + 0.25 * (nature[entry] as number) + coupling;
        if (price < least) {
          least = price;
          best = { row, column, entry };
        }
      }
    }
    if (best === undefined) return undefined;
    const { row, column, entry: pivot } = best;
    const guarded = nature[pivot] === 2;
    const unit = nature[pivot] === 0 ? (signs[pivot] as 1 | -1) : 0;
    const rest = [...(rows[row] as Map<number, number>)]
      .filter(([other]) => other !== column)
      .map(([other, entry]) => ({ entry, column: other }));
    const others = [...(columns[column] as Set<number>)].filter((other) => other !== row);
    const changes = others.map((other) => {
      const factor = (rows[other] as Map<number, number>).get(column) as number;
      return {
        factor,
        row: other,
        updates: rest.map(({ entry, column: at }) => {
          const target = entryAt(other, at);
          nature[target] = 2;
          return [target, entry] as const;
        }),
      };
    });
    steps.push({ row, column, pivot, guarded, unit, rest, rows: changes });
    open.delete(row);
    for (const at of (rows[row] as Map<number, number>).keys()) (columns[at] as Set<number>).delete(row);
    for (const other of others) (rows[other] as Map<number, number>).delete(column);
    (columns[column] as Set<number>).clear();
  }
  return { entries, place, steps };
}
