import { format } from '@airspring/core/quantity';
import { answers, frequencies, inputs, solve } from '../../examples/one-or-two.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));
type Most = ReturnType<typeof solve>[number]['most'];
const x = frequencyAxis(20, 160);
const names = ['one', 'two, same air', 'two, twice the air'];
const dashes = ['none', '7 4', '2 4'];
const note = 'Half space. Full line: one driver; dashes: two in the same air; dots: two with twice the air.';
/** Level for 2.83 V: the greatest one less what the drive is above that. */
const levelFor = ({ levelHalfSpace, driveVoltageRms }: Most) =>
  levelHalfSpace.map((level, i) => level - 20 * Math.log10(driveVoltageRms[i]! / 2.83));
const greatest = ({ levelHalfSpace }: Most) => levelHalfSpace;
const picture = (wish: Wish, of: (most: Most) => Float64Array, lowest: number) => {
  const lines = solved(wish).map(({ most }) => of(most));
  const traces = lines.map((y, i) => ({
    name: names[i] as string,
    x: frequencies,
    y,
    colour: 'var(--level)',
    dash: dashes[i] as string,
    thick: i === 0,
  }));
  const [one, same, twice] = traces as readonly Trace[] as readonly [Trace, Trace, Trace];
  return {
    x,
    y: axisOf(lowest, Math.max(...lines.flatMap((line) => [...line])), 'dB'),
    traces,
    marks: [
      beside(one, 'one driver', 90, -5),
      beside(same, 'two, same air', 75, 0.5, 'middle'),
      beside(twice, 'twice the air', 26, 3, 'middle'),
    ],
  };
};
const data = (wish: Wish, of: (most: Most) => Float64Array) => {
  const lines = solved(wish).map(({ most }) => of(most));
  return {
    heads: ['frequency', ...names],
    rows: [...frequencies.keys()]
      .filter((i) => i % 6 === 0)
      .map((i) => [format('frequency', frequencies[i]!, 'Hz'), ...lines.map((line) => `${line[i]!.toFixed(1)} dB`)]),
  };
};

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    const said = `Two drivers in the same air reach ${texts.same} (−3 dB) instead of ${texts.one}; at ${texts.low} they are ${texts.sameLow}, at ${texts.high} ${texts.sameHigh}.`;
    return { ...texts, said };
  },
  figures: {
    most: {
      title: 'Greatest level, before anything gives out',
      note,
      chart: (wish) => {
        const texts = answered(wish);
        return {
          label: `At ${texts.low} two drivers in the same air are ${texts.sameLow}, with twice the air ${texts.twiceLow}; at ${texts.high} ${texts.sameHigh} and ${texts.twiceHigh}.`,
          ...picture(wish, greatest, 75),
        };
      },
      data: (wish) => data(wish, greatest),
    },
    level: {
      title: 'Level at one metre',
      note: `For 2.83 V. ${note}`,
      chart: (wish) => {
        const texts = answered(wish);
        return {
          label: `The level is 3 dB down at ${texts.one} with one driver, at ${texts.same} with two in the same air, and at ${texts.twice} with two and twice the air.`,
          ...picture(wish, levelFor, 65),
        };
      },
      data: (wish) => data(wish, levelFor),
    },
  },
});
