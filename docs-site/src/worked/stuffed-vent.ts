import { answers, grid, inputs, solve } from '../../examples/stuffed-vent.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((at: Box) => answers(at, solved(at)));
type Column = 'levelHalfSpace' | 'impedance';

/** With the stuffed vent as a full line, with the box shut in dashes. */
function both(column: Column, at: Box, colour: string): readonly [Trace, Trace] {
  const { stuffed, shut } = solved(at);
  return [
    { name: 'stuffed', x: grid, y: stuffed.swept[column], colour, thick: true },
    { name: 'shut', x: grid, y: shut.swept[column], colour, dash: '7 4' },
  ];
}

const rows = (column: Column, at: Box) => {
  const { stuffed, shut } = solved(at);
  return frequencyRows(grid, (i) => [stuffed.swept[column][i]!.toFixed(1), shut.swept[column][i]!.toFixed(1)]);
};

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return {
      ...texts,
      said: `The peak falls from ${texts.peak} to ${texts.tamed}; at ${texts.low} the box is ${texts.lost}.`,
    };
  },
  figures: {
    impedance: {
      title: 'Input impedance',
      note: 'Full line: with the stuffed vent; dashes: the same box shut.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both('impedance', at, 'var(--impedance)');
        return {
          label: `The impedance of the shut box has a peak of ${texts.peak} at ${texts.at}; with the stuffed vent the peak is ${texts.tamed} at ${texts.tamedAt}.`,
          x: frequencyAxis(15, 300),
          y: axisOf(0, Math.max(...traces.flatMap(({ y }) => Array.from(y))), 'Ω'),
          traces,
          marks: [beside(traces[1], 'shut', 90, 0, 'right'), beside(traces[0], 'stuffed', 30, 1, 'middle')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'stuffed, Ω', 'shut, Ω'], rows: rows('impedance', at) }),
    },
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: with the stuffed vent; dashes: the same box shut.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both('levelHalfSpace', at, 'var(--level)');
        return {
          label: `The shut box rises by ${texts.rise}, with the stuffed vent by ${texts.tamedRise}. At ${texts.low} the stuffed vent makes it ${texts.lost}.`,
          x: frequencyAxis(15, 300),
          y: axisOf(50, 95, 'dB'),
          traces,
          marks: [beside(traces[1], 'shut', 70, 1, 'left'), beside(traces[0], 'stuffed', 48, -4, 'right')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'stuffed, dB', 'shut, dB'], rows: rows('levelHalfSpace', at) }),
    },
  },
});
