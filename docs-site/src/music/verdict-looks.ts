import type { Verdict } from './account.js';

/** Height of a whole bar, px. */
export const STRIP = 16;
/** Points of a line at most: fewer than there are pixels. */
const COLUMNS = 200;

/** How loud a verdict is drawn: its height and its colour. */
export const LOOKS: Readonly<
  Record<Verdict, { readonly tall: number; readonly colour: string; readonly words: string }>
> = {
  quiet: { tall: 2, colour: 'var(--speed)', words: 'quiet' },
  doubtful: { tall: 8, colour: 'var(--impedance)', words: 'may be heard' },
  noisy: { tall: STRIP, colour: 'var(--heat)', words: 'noisy' },
};

/** The greatest of each column, where there are more slices than columns. */
export function columnsOf(values: ArrayLike<number>): Float64Array {
  const count = Math.min(COLUMNS, values.length);
  const out = new Float64Array(count);
  for (let i = 0; i < values.length; i++) {
    const column = Math.floor((i * count) / values.length);
    out[column] = Math.max(out[column]!, values[i]!);
  }
  return out;
}

export const RANK: readonly Verdict[] = ['quiet', 'doubtful', 'noisy'];
export const worstOf = (each: readonly Verdict[]): readonly Verdict[] =>
  Array.from(columnsOf(each.map((verdict) => RANK.indexOf(verdict))), (rank) => RANK[rank]!);

/** Stretches of one verdict among columns, from the first on: each ends where the next begins. */
export function stretchesOf(each: readonly Verdict[]) {
  const out: { from: number; to: number; verdict: Verdict }[] = [];
  each.forEach((verdict, i) => {
    const last = out.at(-1);
    if (last?.verdict === verdict) last.to = i + 1;
    else out.push({ from: i, to: i + 1, verdict });
  });
  return out;
}
