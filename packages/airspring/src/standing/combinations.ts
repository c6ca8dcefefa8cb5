import { accountOf } from './account.js';
import { allChanges } from './changes/all.js';
import { type Made, type Now, retuned } from './changes/change.js';
import type { Row, RowDone } from './row.js';
import { glanced, LEAST, shortfall } from './shortfall.js';
import { soundingOf, stateOf } from './state.js';
import { type TubeWork, tubeWork } from './tube-work.js';

/** How many boxes are changed further: those nearest to what is wanted, and those whose tube alone would not fit. */
const TRIED = { once: 5, twice: 3, unfit: 2 } as const;
/** The number of combinations that are reported. */
const TOLD = 3;
/** Where nothing gives all that is wanted, a combination may fall this much shorter of it than the best one, dB. */
const NEAR = 0.5;

/** Changes one after the other; the last one tells what the box then is. */
export interface Chain {
  readonly made: readonly [Made, ...Made[]];
  readonly row: RowDone;
  readonly done: NonNullable<Made['done']>;
  /** The work from the vents that stand to those of the last box; left out where `after` does not tell it. */
  readonly tubes?: TubeWork;
  /** How far it falls short of what is wanted, dB. */
  readonly short: number;
  readonly effort: number;
}

/** What a combination is best at. */
export type Leaning =
  | 'the nearest to what you want'
  | 'the least work'
  | 'the deepest'
  | 'the loudest'
  | 'the quietest vent'
  | 'in between';

/** The change that does most for what is wanted, if any does; of several that do as much, the one of least work. */
export function first(now: Now, rows: readonly Row[]): { readonly first?: number } {
  const short = rows.map((row) =>
    row.ok && row.box.level === undefined ? shortfall(now.standing.job, glanced(row.account)) : Infinity,
  );
  const least = Math.min(...short);
  if (!(least < shortfall(now.standing.job, glanced(now.account)) - LEAST)) return {};
  const effort = (i: number) => (rows[i] as RowDone).effort;
  const best = short.flatMap((one, i) => (one <= least + LEAST ? [i] : [])).sort((a, b) => effort(a) - effort(b));
  return { first: best[0]! };
}

const reachOf = ({ done }: Pick<Chain, 'done'>) => done.glance.reach;
const levelOf = ({ done }: Pick<Chain, 'done'>) => done.glance.level;
const quietOf = ({ done }: Pick<Chain, 'done'>) => done.glance.quiet;

/** Whether one box is nowhere worse than another in reach, level and the level up to which its vent is quiet, and better in one of them or in less work. */
function dominates(one: Pick<Chain, 'done' | 'effort'>, other: Pick<Chain, 'done' | 'effort'>): boolean {
  const gains = [reachOf(other) - reachOf(one) || 0, levelOf(one) - levelOf(other), quietOf(one) - quietOf(other) || 0];
  if (gains.some((gain) => gain < -LEAST)) return false;
  return gains.some((gain) => gain > LEAST) || one.effort < other.effort;
}

/** The box after a change, for a further one. */
function thenOf(now: Now, { row, after }: Made): Now | undefined {
  if (after === undefined) return undefined;
  const state = stateOf(after);
  if (row.ok) return { standing: after, state, account: row.account };
  const sounding = soundingOf(after, state);
  return sounding.ok ? { standing: after, state, account: accountOf(now.standing.job, state, sounding) } : undefined;
}

/** A chain of changes as one, if everything in it fits and nothing that is to be kept has changed. */
export function chainOf(now: Now, made: Chain['made']): Chain | undefined {
  const last = made.at(-1) as Made;
  const { row, done, after } = last;
  if (!row.ok || done === undefined || row.box.level !== undefined || retuned(now, done.sounding)) return undefined;
  const tubes = after && tubeWork(now.standing, after);
  if (tubes?.fitting === 'does not fit') return undefined;
  const others = made.flatMap((one) =>
    one.row.ok && !one.done?.steps.some(({ ofTubes }) => ofTubes) ? [one.row] : [],
  );
  const effort = (tubes?.effort ?? 0) + others.reduce((sum, one) => sum + one.effort, 0);
  return { made, row, done, ...(tubes && { tubes }), short: shortfall(now.standing.job, done.glance), effort };
}

/** The same change of the same vents in another order is the same. */
const keyOf = ({ row: { box } }: Chain): string =>
  JSON.stringify([
    box.wiring,
    box.slot !== undefined,
    box.radiator,
    box.highPass !== undefined,
    box.tubes.map(({ diameter, length, count }) => [diameter, Math.round(length * 50), count]),
    Math.round(box.netVolume * 1e4),
  ]);

const nearest = (chains: readonly Chain[]): Chain[] =>
  [...chains].sort((a, b) => (Math.abs(a.short - b.short) > LEAST ? a.short - b.short : a.effort - b.effort));

function furtherFrom(now: Now, made: Chain['made']): Chain[] {
  const then = thenOf(now, made.at(-1) as Made);
  if (then === undefined) return [];
  const names = made.map(({ row }) => row.change);
  return allChanges(then).flatMap((next) => {
    if (names.includes(next.row.change)) return [];
    const chain = chainOf(now, [...made, next]);
    return chain ? [chain] : [];
  });
}

/** The best combinations of two or three changes: none is better than another, or a single change, in everything. */
export function combinations(now: Now, alone: readonly Made[]): { readonly chain: Chain; readonly leaning: Leaning }[] {
  const singles = alone.flatMap((one) => chainOf(now, [one]) ?? []);
  const unfit = alone.filter(({ row, after }) => !row.ok && row.way && after).slice(0, TRIED.unfit);
  const able = nearest(singles).filter(({ made: [one] }) => one.after);
  const bases: Chain['made'][] = [
    ...able.slice(0, TRIED.once).map(({ made }) => made),
    ...unfit.map((one) => [one] as const),
  ];
  const pairs = bases.flatMap((made) => furtherFrom(now, made));
  const once = new Map<string, Chain>();
  for (const chain of nearest(pairs)) if (!once.has(keyOf(chain))) once.set(keyOf(chain), chain);
  const seeds = [...once.values()].filter(({ made }) => made.at(-1)?.after).slice(0, TRIED.twice);
  for (const chain of nearest(seeds.flatMap(({ made }) => furtherFrom(now, made)))) {
    if (!once.has(keyOf(chain))) once.set(keyOf(chain), chain);
  }
  const least = Math.min(...[...singles, ...once.values()].map(({ short }) => short));
  // Where everything that is wanted can be had, nothing less is told.
  const limit = Math.min(shortfall(now.standing.job, glanced(now.account)), least <= LEAST ? LEAST : least + NEAR);
  const wanted = nearest([...once.values()].filter(({ short }) => short <= limit));
  const best = wanted.filter((one) => ![...singles, ...wanted].some((other) => other !== one && dominates(other, one)));
  return leaningsOf(best);
}

/** Up to three, each for what it is best at. */
function leaningsOf(best: readonly Chain[]): { readonly chain: Chain; readonly leaning: Leaning }[] {
  const [first] = best;
  if (first === undefined) return [];
  const most = (of: (one: Chain) => number) => best.reduce((a, b) => (of(b) > of(a) ? b : a));
  const told: { chain: Chain; leaning: Leaning }[] = [
    { chain: first, leaning: first.short > LEAST ? 'the nearest to what you want' : 'the least work' },
  ];
  for (const [chain, leaning] of [
    [most((one) => -reachOf(one)), 'the deepest'],
    [most(levelOf), 'the loudest'],
    [most(quietOf), 'the quietest vent'],
  ] as const) {
    if (told.length < TOLD && told.every((one) => one.chain !== chain)) told.push({ chain, leaning });
  }
  const rest = best.find((chain) => told.every((one) => one.chain !== chain));
  if (told.length < TOLD && rest) told.push({ chain: rest, leaning: 'in between' });
  return told;
}
