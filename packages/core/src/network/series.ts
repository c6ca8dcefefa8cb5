import { type Branch, isBranch, type Topology } from './element.js';
import { type Bundle, GROUND, nodesOf } from './equations.js';

/** Branches in series: those that end at a node with only two ends, and do not say how they stand. Several side by side count as one. */
export function branchesInSeries({ elements }: Topology): readonly Bundle[] {
  const between = new Map<string, Branch[]>();
  const ends = new Map<string, number>();
  for (const element of elements) {
    const pair = JSON.stringify([...nodesOf(element)].sort());
    const open = isBranch(element) && element.stands === undefined;
    if (open) between.set(pair, [...(between.get(pair) ?? []), element]);
    if (open && between.get(pair)?.length !== 1) continue;
    for (const node of nodesOf(element)) ends.set(node, (ends.get(node) ?? 0) + 1);
  }
  ends.set(GROUND, 0);
  return [...between.values()].filter(([first]) => first?.nodes.some((node) => ends.get(node) === 2));
}
