import { format } from '@airspring/core/quantity';
import { answers, grid, inputs, solve } from '../../examples/how-long-a-pipe.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Pipe = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((at: Pipe) => answers(at, solved(at)));
type Column = 'levelHalfSpace' | 'displacementPeak';
const millimetres = (column: Float64Array) => Array.from(column, (value) => value * 1e3);

/** The filled pipe as a full line, the empty one in dashes. */
function both(column: Column, at: Pipe, colour: string): readonly [Trace, Trace] {
  const { empty, filled } = solved(at);
  const y = (values: Float64Array) => (column === 'displacementPeak' ? millimetres(values) : values);
  return [
    { name: 'filled', x: grid, y: y(filled.swept[column]), colour, thick: true },
    { name: 'empty', x: grid, y: y(empty.swept[column]), colour, dash: '7 4' },
  ];
}

const rows = (at: Pipe, column: Column, digits: number, factor = 1) => {
  const { empty, filled } = solved(at);
  return [...grid.keys()]
    .filter((i) => i % 8 === 0)
    .map((i) => [
      format('frequency', grid[i]!, 'Hz'),
      (filled.swept[column][i]! * factor).toFixed(digits),
      (empty.swept[column][i]! * factor).toFixed(digits),
    ]);
};

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return { ...texts, said: `${texts.length} long; the fill leaves swings of ${texts.left} of ${texts.swing}.` };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: with the fill; dashes: empty.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both('levelHalfSpace', at, 'var(--level)');
        return {
          label: `Above the lowest tone the level of the empty pipe swings by ${texts.swing}, that of the filled one by ${texts.left}.`,
          x: frequencyAxis(15, 400),
          y: axisOf(60, 110, 'dB'),
          traces,
          marks: [beside(traces[1], 'empty', 45, 1, 'middle'), beside(traces[0], 'filled', 200, 0, 'right')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'filled, dB', 'empty, dB'], rows: rows(at, 'levelHalfSpace', 1) }),
    },
    travel: {
      title: 'Cone travel',
      note: 'For 2.83 V, peak, one way. Full line: with the fill; dashes: empty.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both('displacementPeak', at, 'var(--travel)');
        return {
          label: `At the lowest tone the cone moves ${texts.travel} in the empty pipe, and ${texts.moved} in the filled one.`,
          x: frequencyAxis(15, 400),
          y: axisOf(0, Math.max(...traces.flatMap(({ y }) => Array.from(y))), 'mm'),
          traces,
          marks: [beside(traces[1], 'empty', 20, 0, 'right'), beside(traces[0], 'filled', 40, 0, 'right')],
        };
      },
      data: (at) => ({
        heads: ['frequency', 'filled, mm', 'empty, mm'],
        rows: rows(at, 'displacementPeak', 2, 1e3),
      }),
    },
  },
});
