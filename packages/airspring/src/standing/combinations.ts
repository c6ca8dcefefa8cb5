import type { Account } from './account.js';
import { allChanges } from './changes/all.js';
import { type Made, type Now, retuned } from './changes/change.js';
import type { Row, RowDone } from './row.js';
import { stateOf } from './state.js';

/** How many changes are tried together with a further one, and how many pairs are told. */
const TRIED = 5;
const TOLD = 3;
/** A pair has to do this much better than each of its changes alone, dB. */
const BETTER = 0.1;

/** How far a box falls short of what is wanted, in dB: of the level, and ten for each octave of reach. */
function shortfall({ standing }: Now, { loudest, reach }: Account): number {
  const { level, lowest, highest } = standing.job.wanted;
  return Math.max(0, level - loudest.level) + 10 * Math.max(0, Math.log2((reach ?? highest) / lowest));
}

/** The change that does most for what is wanted, if any does; of several that do as much, the one of least work. */
export function first(now: Now, rows: readonly Row[]): { readonly first?: number } {
  const short = rows.map((row) => (row.ok && row.box.level === undefined ? shortfall(now, row.account) : Infinity));
  const least = Math.min(...short);
  if (!(least < shortfall(now, now.account) - BETTER)) return {};
  const effort = (i: number) => (rows[i] as RowDone).effort;
  const best = short.flatMap((one, i) => (one <= least + BETTER ? [i] : [])).sort((a, b) => effort(a) - effort(b));
  return { first: best[0]! };
}

/** The best pairs of changes that do better together than each alone. */
export function combinations(now: Now, made: readonly Made[]): RowDone[] {
  const able = made
    .flatMap(({ row, after }) => (row.ok && after ? [{ row, after, short: shortfall(now, row.account) }] : []))
    .sort((a, b) => a.short - b.short)
    .slice(0, TRIED);
  const alone = new Map(
    made.flatMap(({ row }) => (row.ok ? [[row.change, shortfall(now, row.account)] as const] : [])),
  );
  const pairs = able.flatMap(({ row, after, short }) => {
    const then: Now = { standing: after, state: stateOf(after), account: row.account };
    return allChanges(then).flatMap(({ row: next }) => {
      if (!next.ok || next.change === row.change || next.box.level !== undefined) return [];
      if (retuned(now, next.account)) return [];
      const together = shortfall(now, next.account);
      if (together > Math.min(short, alone.get(next.change) ?? Infinity) - BETTER) return [];
      return [{ together, pair: joined(row, next) }];
    });
  });
  const known = new Set<string>();
  return pairs
    .sort((a, b) => a.together - b.together)
    .filter(({ pair }) => {
      const key = JSON.stringify(pair.box);
      return !known.has(key) && known.add(key);
    })
    .slice(0, TOLD)
    .map(({ pair }) => pair);
}

const joined = (one: RowDone, next: RowDone): RowDone => ({
  ...next,
  // A filter of the first change stays in front of the second.
  box: { ...(one.box.highPass && { highPass: one.box.highPass }), ...next.box },
  change: `${one.change}, and ${next.change}`,
  what: [...one.what, '; then: ', ...next.what],
  holds: one.holds.filter((held) => next.holds.includes(held)),
  fitting: one.fitting === 'fits' ? next.fitting : one.fitting,
  ...(one.measure && { measure: one.measure }),
  effort: one.effort + next.effort,
  steps: [...one.steps, ...next.steps],
});
