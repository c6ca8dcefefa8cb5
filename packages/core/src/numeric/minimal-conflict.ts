/** How many sets are tried in order of size before the search turns to halving: all the sets of fourteen conditions. */
const mostSets = 16384;

/** Sets of `size` of the first conditions, those with the lowest numbers first. */
function* setsOf(size: number, below: number): Generator<readonly number[]> {
  if (size === 0) yield [];
  else for (let last = size - 1; last < below; last++) for (const rest of setsOf(size - 1, last)) yield [...rest, last];
}

/**
 * Finds conditions that cannot hold together, although they could if any one of them were dropped.
 *
 * `possible(set)` says whether the conditions of a set can hold together. A set lists condition numbers, counted from 0, in
 * increasing order. `possible` must be monotone: if a set can hold, so can each of its subsets. The result is undefined when
 * all conditions can hold together, and empty when even the empty set is impossible.
 *
 * Small sets are tried first. For up to 14 conditions the answer is the smallest such set, and among equally small sets the
 * one with the lowest numbers. The same holds for 25 conditions if the answer has at most 4 members, for 46 if it has at
 * most 3, and for 180 if it has at most 2. Larger conflicts are found by halving, in about $2k\lg(n/k) + 2k$ calls of `possible`
 * for $k$ of $n$ conditions. No member of such an answer can be dropped, but another conflict may have fewer members.
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
