import { format } from '@airspring/core/quantity';
import { answers, frequencies, inputs, solve } from '../../examples/deeper-or-louder.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import type { Trace } from '../figures/chart.js';

const solved = once(solve);
type Found = ReturnType<typeof solve>;
const x = frequencyAxis(16, 120);
const dashes = ['none', '7 4', '2 4'];
const names = ['low', 'middle', 'high'];
/** Level for 2.83 V: the greatest one less what the drive is above that. */
const levelFor = ({ levelHalfSpace, driveVoltageRms }: Found[number]['most']) =>
  levelHalfSpace.map((level, i) => level - 20 * Math.log10(driveVoltageRms[i]! / 2.83));
const traces = (found: Found, of: (most: Found[number]['most']) => ArrayLike<number>): Trace[] =>
  found.map(({ most }, i) => ({
    name: names[i] as string,
    x: frequencies,
    y: of(most),
    colour: 'var(--level)',
    dash: dashes[i] as string,
    thick: i === 0,
  }));
/** A name where each line begins, left of the field. */
const marks = (lines: readonly Trace[]) =>
  lines.map(({ name, y }) => ({
    name,
    x: x.domain[0],
    y: y[0]!,
    words: name === 'middle' ? 'mid' : name,
    colour: 'var(--level)',
    side: 'left' as const,
  }));
const data = (found: Found, of: (most: Found[number]['most']) => ArrayLike<number>) => ({
  heads: ['frequency', ...found.map(({ tuning }) => `tuned to ${format('frequency', tuning, 'Hz')}`)],
  rows: [...frequencies.keys()]
    .filter((i) => i % 6 === 0)
    .map((i) => [
      format('frequency', frequencies[i]!, 'Hz'),
      ...found.map(({ most }) => `${of(most)[i]!.toFixed(1)} dB`),
    ]),
});

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answers(wish, solved(wish));
    const said = `Tuned to ${texts.lowTuning} the box reaches ${texts.lowReach} (−6 dB); tuned to ${texts.highTuning} it reaches ${texts.highReach}. The high tuning is ${texts.louder}.`;
    return { ...texts, said };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, in half space. Full line: low tuning; long dashes: middle tuning; dots: high tuning.',
      chart: (wish) => {
        const [found, texts] = [solved(wish), answers(wish, solved(wish))];
        const lines = traces(found, levelFor);
        return {
          label: `The level is 6 dB down at ${texts.lowReach} when tuned to ${texts.lowTuning}, at ${texts.middleReach} in the middle, and at ${texts.highReach} when tuned to ${texts.highTuning}.`,
          x,
          y: axisOf(60, Math.max(...lines.map(({ y }) => Math.max(...Array.from(y)))), 'dB'),
          traces: lines,
          marks: marks(lines),
        };
      },
      data: (wish) => data(solved(wish), levelFor),
    },
    most: {
      title: 'Greatest level, before anything gives out',
      note: 'Steady tone, half space. The limits are the travel of the cone, the heat of the coil and 28 V from the amplifier.',
      chart: (wish) => {
        const [found, texts] = [solved(wish), answers(wish, solved(wish))];
        const lines = traces(found, ({ levelHalfSpace }) => levelHalfSpace);
        return {
          label: `Above ${format('frequency', wish.lowest, 'Hz')} the box plays at least ${texts.lowLevel} when tuned to ${texts.lowTuning}, where ${texts.lowBinding} gives out first at ${texts.lowAt}, and ${texts.highLevel} when tuned to ${texts.highTuning}, where ${texts.highBinding} gives out first at ${texts.highAt}.`,
          x,
          y: axisOf(70, Math.max(...lines.map(({ y }) => Math.max(...Array.from(y)))), 'dB'),
          band: { from: wish.lowest, to: 120, words: 'must be loud' },
          traces: lines,
          marks: marks(lines),
        };
      },
      data: (wish) => data(solved(wish), ({ levelHalfSpace }) => levelHalfSpace),
    },
  },
});
