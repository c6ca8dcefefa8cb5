import { add, canVanish, clear, type Entry, isConstant, product, scale } from './entry.js';
import type { Step } from './step.js';

/**
 * Prepares to put other numbers into the entries of an elimination, by the same steps. The result is false where another order
 * could follow, or where a number changes that is the same at all frequencies: what was prepared from these holds no longer.
 */
export function renumbering(
  entries: readonly Entry[],
  steps: readonly Step[],
  stampAll: (numbers: Float64Array) => void,
): (numbers: Float64Array) => boolean {
  const entryOf = (index: number) => entries[index] as Entry;
  const fixed = entries.map((entry) => (!entry.swept && isConstant(entry) ? entry.constant : undefined));
  return (numbers) => {
    for (const entry of entries) clear(entry);
    stampAll(numbers);
    for (const { pivot, swept, guarded, rows } of steps) {
      if (!guarded && canVanish(entryOf(pivot))) return false;
      if (swept) continue;
      for (const { factor, updates } of rows) {
        scale(entryOf(factor), 1 / entryOf(pivot).constant);
        for (const [target, source] of updates) {
          const sum = product(entryOf(factor), entryOf(source));
          if (sum === undefined) return false;
          add(entryOf(target), sum, -1);
        }
      }
    }
    return entries.every((entry, i) => fixed[i] === undefined || (isConstant(entry) && entry.constant === fixed[i]));
  };
}
