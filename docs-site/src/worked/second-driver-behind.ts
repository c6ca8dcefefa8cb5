import { answers, grid, inputs, solve } from '../../examples/second-driver-behind.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((at: Box) => answers(at, solved(at)));
const boxes = ['pair', 'alone', 'squeezed'] as const;

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return {
      ...texts,
      said: `The pair reaches ${texts.pair} in ${texts.half}; for the same power it is ${texts.perWatt}.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For one watt in the coils, half space. Full line: the pair in half the air; dashes: one driver in all the air; short dashes: one driver in half the air.',
      chart: (at) => {
        const texts = answered(at);
        const found = solved(at);
        const line = (box: (typeof boxes)[number]) => ({
          name: box,
          x: grid,
          y: found[box].watt.levelHalfSpace,
          colour: 'var(--level)',
        });
        const pair: Trace = { ...line('pair'), thick: true };
        const alone: Trace = { ...line('alone'), dash: '7 4' };
        const squeezed: Trace = { ...line('squeezed'), dash: '3 3' };
        return {
          label: `The pair in ${texts.half} is 3 dB down at ${texts.pair}, one driver in twice the air at ${texts.alone}, one driver in ${texts.half} at ${texts.squeezed}. For the same power the pair is ${texts.perWatt} than one driver in twice the air.`,
          x: frequencyAxis(20, 200),
          y: axisOf(65, 95, 'dB'),
          traces: [pair, alone, squeezed],
          marks: [
            beside(pair, 'pair', 100, -3, 'middle'),
            beside(squeezed, 'alone, half the air', 80, 1, 'middle'),
            beside(alone, 'alone', 28, 0.5, 'left'),
          ],
        };
      },
      data: (at) => ({
        heads: ['frequency', 'pair, dB', 'one in all the air, dB', 'one in half the air, dB'],
        rows: frequencyRows(grid, (i) => boxes.map((box) => solved(at)[box].watt.levelHalfSpace[i]!.toFixed(1))),
      }),
    },
  },
});
