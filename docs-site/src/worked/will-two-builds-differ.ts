import { answers, grid, inputs, parts, solve } from '../../examples/will-two-builds-differ.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Wish = Parameters<typeof answers>[0];
const built = parts.map((part) => once(part));
const solved = once((at: Wish) =>
  solve(
    at,
    built.map((part) => part(at)),
  ),
);
const answered = once((at: Wish) => answers(at, solved(at)));

export default worked({
  inputs,
  parts: (at) => built.map((part) => () => part(at)),
  answers: (at) => {
    const texts = answered(at);
    return {
      ...texts,
      said: `Nine of ten builds have an f3 from ${texts.low} to ${texts.high}. What matters most: ${texts.most}.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 1 V, half space. Line: half of the builds lie above it. Tinted: nine of ten builds at each tone.',
      chart: (at) => {
        const [texts, { level }] = [answered(at), solved(at)];
        const middle = { name: 'half', x: grid, y: level.middle, colour: 'var(--level)', thick: true };
        return {
          label: `The builds lie farthest apart at ${texts.where}, by ${texts.apart}.`,
          x: frequencyAxis(15, 120),
          y: axisOf(60, 90, 'dB'),
          traces: [
            {
              name: 'nine of ten',
              x: [...grid, ...[...grid].reverse()],
              y: [...level.high, ...[...level.low].reverse()],
              colour: 'var(--level)',
              area: true,
            },
            middle,
          ],
          marks: [beside(middle, 'half of the builds', 40, -4, 'right')],
        };
      },
      data: (at) => {
        const { low, middle, high } = solved(at).level;
        return {
          heads: ['frequency', '5 % lie below, dB', 'half, dB', '95 % lie below, dB'],
          rows: frequencyRows(grid, (i) => [low[i]!.toFixed(1), middle[i]!.toFixed(1), high[i]!.toFixed(1)]),
        };
      },
    },
  },
});
