import type { Retrofit } from '../standing/retrofit.js';
import type { TubeOption, TubeSet } from '../standing/tubes.js';
import { reachText } from '../words/account-text.js';
import { limitInWords } from '../words/limit-words.js';
import type { Phrasing } from '../words/phrasing.js';

/** What a drawing of tubes is told from. */
export interface TubeFacts {
  readonly answer: Retrofit;
  readonly say: Phrasing;
}

/** Stretches of neighbouring options that have something in common. Two stretches meet half-way. */
export function stretches(options: readonly TubeOption[], of: (option: TubeOption) => string) {
  const found: { from: number; to: number; first: number; last: number; what: string }[] = [];
  options.forEach((option, i) => {
    const what = of(option);
    const open = found.at(-1);
    const half = i === 0 ? option.length : Math.sqrt(option.length * options[i - 1]!.length);
    if (open?.what === what) [open.to, open.last] = [option.length, option.length];
    else {
      if (open) open.to = half;
      found.push({ from: half, to: option.length, first: option.length, last: option.length, what });
    }
  });
  return found;
}

export const standing = ({ fitting, bent }: TubeOption): string =>
  fitting === 'does not fit' ? 'does not fit' : fitting === 'measure' ? 'measure' : bent ? 'fits with a bend' : 'fits';

/** How the onsets of noise move with the length. */
function quietly(options: readonly TubeOption[], say: Phrasing): string[] {
  const [short, long] = [options[0]?.account.noise, options.at(-1)?.account.noise];
  if (short === undefined || long === undefined) return [];
  const range = (from: number, to: number) =>
    `${say.decibels(from)} at the shortest to ${say.decibels(to)} at the longest`;
  return [
    `The vent is quiet up to ${range(short.quiet.level, long.quiet.level)}, and noisy above ${range(short.noisy.level, long.noisy.level)}.`,
  ];
}

/** What the figure shows, in sentences. */
export function labelOf({ answer: { asked }, say }: TubeFacts, tubes: TubeSet): string {
  const { options } = tubes;
  const [short, long] = [options[0]!, options.at(-1)!];
  const of = (list: readonly TubeOption[], value: (option: TubeOption) => number) =>
    list.reduce((best, each) => (value(each) > value(best) ? each : best));
  const deepest = of(options, ({ account }) => -(account.reach ?? Number.POSITIVE_INFINITY));
  const loudest = of(options, ({ account }) => account.loudest.level);
  const loud = options.filter(({ account }) => account.loudest.level >= asked.level);
  const calm = options.filter(({ account }) => (account.wanted.airSpeed?.value ?? 0) <= asked.airSpeedPeak);
  const between = (list: readonly TubeOption[]) =>
    list.length === 0
      ? 'at no length'
      : list.at(-1) === long
        ? `from ${say.length(list[0]!.length)} on`
        : `from ${say.length(list[0]!.length)} to ${say.length(list.at(-1)!.length)}`;
  const binding = stretches(options, ({ account }) => account.loudest.binding).map(
    ({ first, last, what }, i, all) =>
      `${limitInWords(what)}${all.length === 1 ? ' at every length' : i === all.length - 1 ? ` from ${say.length(first)} on` : ` up to ${say.length(last)}`}`,
  );
  const fit = stretches(options, standing).map(({ first, last, what }) => {
    const range = `from ${say.length(first)} to ${say.length(last)}`;
    return what === 'measure' ? `${range} you have to measure the free way` : `${range} it ${what}`;
  });
  return [
    `From ${say.length(short.length)} to ${say.length(long.length)} the tuning falls from ${say.hertz(short.account.fb ?? 0)} to ${say.hertz(long.account.fb ?? 0)}.`,
    `The reach is deepest, ${reachText(deepest.account, say) ?? ''}, at ${say.length(deepest.length)}.`,
    `The loudest steady tone is greatest, ${say.decibels(loudest.account.loudest.level)}, at ${say.length(loudest.length)}, and as loud as you want ${between(loud)}.`,
    `The air keeps to your limit ${between(calm)}.`,
    ...quietly(options, say),
    `First to give out is ${binding.join(', and ')}.`,
    `Does it fit: ${fit.join('; ')}.`,
  ].join(' ');
}
