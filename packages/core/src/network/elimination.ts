import { add, canVanish, type Entry, emptyEntry, isNothing, product, type Sum, scale, stamped } from './entry.js';
import type { Equations } from './equations.js';
import { renumbering } from './renumbering.js';
import type { Pivot, Step } from './step.js';

/** The order in which a sparse system is solved, fill-in included; the same at every frequency. */
export interface Elimination {
  readonly entries: readonly Entry[];
  readonly steps: readonly Step[];
  /** Puts other numbers into the entries, in the same steps. False where another order would follow or a constant changes: find it anew. */
  readonly renumber: (numbers: Float64Array) => boolean;
}

/**
 * The extra cost of a pivot off the diagonal. Solving for the pressure in a box from the forces on its cone would take the
 * difference of two forces that nearly cancel, which loses more digits with each octave above resonance.
 */
const COUPLING = 8;
/** The cost of a step that has to be done at each frequency. It exceeds that of any fill-in. */
const SWEPT = 1e6;

/**
 * Chooses pivots by Markowitz's count. Steps by a whole number of the laws (a joint, a transformer) come first and are done
 * here, once for all frequencies, as long as what they make is constant + rising s + falling / s again. Then single elements
 * before sums: one element's admittance does not vanish, and only sums have to be guarded. What couples two nodes is no pivot
 * where it can be helped: the node's own sum is, as in any stable elimination of a passive network. A chain is eliminated
 * link by link, in time that grows with its length. The right side is one column more, and never a pivot.
 *
 * An order found before, with other numbers, is followed as far as its pivots are there.
 *
 * @returns the steps, or `undefined` for a system without a full set of pivots: structurally singular
 * @source markowitz1957
 */
export function elimination(
  { size, stamps, driven }: Equations,
  numbers: Float64Array,
  order: readonly Pivot[] = [],
): Elimination | undefined {
  const entries: Entry[] = [];
  const rows = Array.from({ length: size }, () => new Map<number, number>());
  const columns = Array.from({ length: size + 1 }, () => new Set<number>());
  const across = (row: number) => rows[row] as Map<number, number>;
  const down = (column: number) => columns[column] as Set<number>;
  const entryOf = (index: number) => entries[index] as Entry;
  const indexAt = (row: number, column: number): number => {
    const known = across(row).get(column);
    if (known !== undefined) return known;
    const made = entries.push(emptyEntry(row, column)) - 1;
    across(row).set(column, made);
    down(column).add(row);
    return made;
  };
  const stampedAt = stamps.map(({ row, column }) => indexAt(row, column));
  const drivenAt = driven.map((row) => indexAt(row, size));
  const stampAll = (given: Float64Array) => {
    stamps.forEach((stamp, k) => {
      add(entryOf(stampedAt[k]!), stamped(stamp, given), 1);
    });
    for (const index of drivenAt) entryOf(index).constant += 1;
  };
  stampAll(numbers);
  const drop = (row: number, column: number) => {
    across(row).delete(column);
    down(column).delete(row);
  };
  for (const [index, entry] of entries.entries()) {
    if (isNothing(entry) && across(entry.row).get(entry.column) === index) drop(entry.row, entry.column);
  }

  /** Whether a pivot is a number of the laws, and all that its step makes can be written down once for all frequencies. */
  const doneOnce = (row: number, column: number, pivot: Entry): boolean =>
    pivot.structural &&
    !pivot.swept &&
    [...down(column)].every((other) => {
      if (other === row) return true;
      const factor = entryOf(across(other).get(column)!);
      if (factor.swept) return false;
      return [...across(row)].every(([at, source]) => {
        if (at === column) return true;
        const target = across(other).get(at);
        const swept = entryOf(source).swept || (target !== undefined && entryOf(target).swept);
        return !swept && product(factor, entryOf(source)) !== undefined;
      });
    });

  /** The diagonal: a pivot beside it leaves a row and a column without a partner, which become each other's. */
  const partner = Array.from({ length: size }, (_, row) => row);
  const steps: Step[] = [];
  const open = new Set(rows.keys());
  for (let step = 0; step < size; step++) {
    let best: { row: number; column: number; pivot: number; swept: boolean } | undefined;
    const planned = order[step];
    const at = planned && open.has(planned.row) ? across(planned.row).get(planned.column) : undefined;
    if (planned !== undefined && at !== undefined) {
      const { row, column } = planned;
      best = { row, column, pivot: at, swept: !doneOnce(row, column, entryOf(at)) };
    }
    let least = Infinity;
    for (const row of best === undefined ? open : []) {
      for (const [column, pivot] of across(row)) {
        if (column === size) continue;
        const entry = entryOf(pivot);
        const fill = (across(row).size - 1) * (down(column).size - 1);
        const nature = canVanish(entry) ? 2 : entry.structural ? 0 : 1;
        const base = fill + 0.25 * nature + (nature !== 0 && partner[row] !== column ? COUPLING : 0);
        if (base >= least) continue;
        const swept = !doneOnce(row, column, entry);
        const price = base + (swept ? SWEPT : 0);
        if (price >= least) continue;
        least = price;
        best = { row, column, pivot, swept };
      }
    }
    if (best === undefined) return undefined;
    const { row, column, pivot, swept } = best;
    const sources = [...across(row)].filter(([at]) => at !== column).map(([, source]) => source);
    const others = [...down(column)].filter((other) => other !== row);
    const changes = others.map((other) => {
      const factor = across(other).get(column)!;
      if (!swept) scale(entryOf(factor), 1 / entryOf(pivot).constant);
      const updates = sources.map((source) => {
        const target = indexAt(other, entryOf(source).column);
        if (swept) entryOf(target).swept = true;
        else {
          add(entryOf(target), product(entryOf(factor), entryOf(source)) as Sum, -1);
          if (isNothing(entryOf(target))) drop(other, entryOf(source).column);
        }
        return [target, source] as const;
      });
      return { factor, row: other, updates };
    });
    const right = across(row).get(size) ?? -1;
    const rest = sources.filter((source) => source !== right);
    steps.push({ row, column, pivot, swept, guarded: canVanish(entryOf(pivot)), rest, right, rows: changes });
    partner[partner.indexOf(column)] = partner[row]!;
    open.delete(row);
    for (const at of across(row).keys()) down(at).delete(row);
    for (const other of others) across(other).delete(column);
    down(column).clear();
  }
  return { entries, steps, renumber: renumbering(entries, steps, stampAll) };
}
