/**
 * The smallest set of wishes that cannot be met together, although every smaller part of it can.
 *
 * `possible(wishes)` says whether a set, given as a bit mask, can be met; it must be monotone: what meets a set meets its
 * parts. Sets are tried by size, so that the answer is minimal in number too; among sets of one size the one with the
 * lowest bits comes first. Undefined when all wishes together can be met.
 *
 * @source liffiton2008 (minimal unsatisfiable subsets)
 * @example minimalConflict(3, (set) => (set & 0b101) !== 0b101) // 0b101: the first and third wish
 */
export function minimalConflict(wishes: number, possible: (set: number) => boolean): number | undefined {
  const all = 2 ** wishes - 1;
  if (possible(all)) return undefined;
  const size = (set: number) => set.toString(2).replaceAll('0', '').length;
  const sets = Array.from({ length: all }, (_, i) => i + 1).sort((a, b) => size(a) - size(b) || a - b);
  return sets.find((set) => !possible(set));
}
