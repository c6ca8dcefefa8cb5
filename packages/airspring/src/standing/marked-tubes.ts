import type { Purpose, TubeOption, TubeSet } from './tubes.js';

/** A tube that is worth printing. */
export interface MarkedTube {
  /** T1, T2 …: its mark in reports, pages, commands and files. Designs have letters, changes have numbers. */
  readonly mark: string;
  readonly option: TubeOption;
  readonly purpose: Purpose;
}

/** A set of tubes for one flange, with those that are worth printing, from the shortest to the longest. */
export interface MarkedSet {
  /** As reports and commands call it: 'set 2'. */
  readonly number: number;
  readonly tubes: TubeSet;
  readonly proposed: readonly MarkedTube[];
}

/** Every set that has a tube worth printing. Marks run on from set to set, so that each tube has one of its own. */
export function markedSets(sets: readonly TubeSet[]): readonly MarkedSet[] {
  let marked = 0;
  return sets
    .filter(({ proposed }) => proposed.length > 0)
    .map((tubes, i) => ({
      number: i + 1,
      tubes,
      proposed: tubes.proposed
        .flatMap(({ option, purpose }) => {
          const one = tubes.options[option];
          return one ? [{ option: one, purpose }] : [];
        })
        .sort((a, b) => a.option.length - b.option.length)
        .map((one) => {
          marked += 1;
          return { mark: `T${marked}`, ...one };
        }),
    }));
}
