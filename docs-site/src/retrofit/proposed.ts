import type { Retrofit, TubeSet } from 'airspring';
import { numberedSets } from '../../../packages/airspring/src/standing/tubes.js';

/** A set of tubes with those that are proposed, in rising length, by the letters that every figure and table gives them. */
export interface NamedSet {
  readonly tubes: TubeSet;
  /** As the report and the command name it: 'set 2'. */
  readonly number: number;
  /** Of the set among all: '' for the first, which has the plain address. */
  readonly id: string;
  readonly proposed: readonly {
    readonly name: string;
    readonly option: TubeSet['options'][number];
    readonly purpose: TubeSet['proposed'][number]['purpose'];
  }[];
}

/** A, B, … Z, AA, …: letters run on from set to set, so that each tube has a name of its own. */
const letters = (i: number): string =>
  i < 26 ? String.fromCharCode(65 + i) : `${letters(Math.floor(i / 26) - 1)}${letters(i % 26)}`;

/** Every set that has a tube worth printing. */
export function namedSets({ tubeSets }: Retrofit): readonly NamedSet[] {
  let named = 0;
  return numberedSets(tubeSets).map(([number, tubes]) => ({
    tubes,
    number,
    id: number === 1 ? '' : `-${number}`,
    proposed: tubes.proposed
      .flatMap(({ option, purpose }) => {
        const one = tubes.options[option];
        return one ? [{ option: one, purpose }] : [];
      })
      .sort((a, b) => a.option.length - b.option.length)
      .map((each) => ({ ...each, name: letters(named++) })),
  }));
}
