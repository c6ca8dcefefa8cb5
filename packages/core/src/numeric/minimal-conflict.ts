/** How many sets are tried one after the other before the conditions are halved: all there are of twelve. */
const mostSets = 4096;

/** Sets of some of the first conditions, those of the lowest numbers first. */
function* setsOf(size: number, below: number): Generator<readonly number[]> {
  if (size === 0) yield [];
  else for (let last = size - 1; last < below; last++) for (const rest of setsOf(size - 1, last)) yield [...rest, last];
}

/**
 * Conditions that cannot hold together, although they can when any one of them is left out.
 *
 * `possible(set)` says whether the conditions of a set, numbers from 0 in rising order, can hold together; it must be
 * monotone: where a set can hold, each part of it can. Undefined when all conditions can hold together; empty when
 * nothing can hold at all.
 *
 * Sets are tried by size while there are few of them: of up to 12 conditions the answer has the fewest members of all
 * such sets, and of several with as few the one of the lowest numbers. So it has, of 20 conditions, when it has at most
 * 3 members; of 90, at most 2; of 4000, one. A larger conflict of more conditions is found by halving, in about
 * $2k\lg(n/k) + 2k$ questions for $k$ of $n$ conditions: none of its members can be left out, but another may have fewer.
 *
 * @source junker2004 (halving); liffiton2008 (minimal unsatisfiable subsets)
 * @example minimalConflict(3, (set) => !(set.includes(0) && set.includes(2))) // [0, 2]
 */
export function minimalConflict(
  conditions: number,
  possible: (set: readonly number[]) => boolean,
): readonly number[] | undefined {
  const all = Array.from({ length: conditions }, (_, i) => i);
  if (possible(all)) return undefined;
  let sets = 1;
  for (let size = 0, tried = 0; size <= conditions; size++) {
    tried += sets;
    if (tried > mostSets) break;
    for (const set of setsOf(size, conditions)) if (!possible(set)) return set;
    sets *= (conditions - size) / (size + 1);
  }
  return partOf([], all, possible, false).sort((a, b) => a - b);
}

/** The members of `set` without which it and `kept` could hold together. */
function partOf(
  kept: readonly number[],
  set: readonly number[],
  possible: (set: readonly number[]) => boolean,
  more: boolean,
): number[] {
  if (more && !possible([...kept].sort((a, b) => a - b))) return [];
  if (set.length === 1) return [...set];
  const [first, second] = [set.slice(0, set.length >> 1), set.slice(set.length >> 1)];
  const late = partOf([...kept, ...first], second, possible, true);
  return [...partOf([...kept, ...late], first, possible, late.length > 0), ...late];
}
