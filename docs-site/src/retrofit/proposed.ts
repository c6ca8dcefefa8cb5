import type { TubeSet } from 'airspring';

/** The proposed tubes in rising length, by the letters that the figure gives them. */
export const proposedTubes = ({ options, proposed }: TubeSet) =>
  proposed
    .flatMap(({ option, purpose }) => {
      const one = options[option];
      return one ? [{ option: one, purpose }] : [];
    })
    .sort((a, b) => a.option.length - b.option.length)
    .map((each, i) => ({ ...each, name: 'ABCDEF'[i] as string }));
