import { answers, grid, inputs, solve } from '../../examples/band-pass.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((box: Box) => answers(box, solved(box)));
const millimetres = (column: Float64Array) => Array.from(column, (value) => value * 1e3);

/** The band-pass as a full line, the closed box of the same air in dashes. */
function both(column: 'levelHalfSpace' | 'displacementPeak', box: Box, colour: string): readonly [Trace, Trace] {
  const { open, shut } = solved(box);
  const y = (values: Float64Array) => (column === 'displacementPeak' ? millimetres(values) : values);
  return [
    { name: 'band-pass', x: grid, y: y(open[column]), colour, thick: true },
    { name: 'closed', x: grid, y: y(shut[column]), colour, dash: '7 4' },
  ];
}

const rows = (at: Box, column: 'levelHalfSpace' | 'displacementPeak', digits: number, factor = 1) => {
  const { open, shut } = solved(at);
  return frequencyRows(grid, (i) => [open, shut].map((box) => (box[column][i]! * factor).toFixed(digits)));
};

export default worked({
  inputs,
  answers: (box) => {
    const texts = answered(box);
    return {
      ...texts,
      said: `From ${texts.lower} to ${texts.upper}; at the tuning ${texts.difference} than a closed box.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: the band-pass; dashes: a closed box with the same air.',
      chart: (box) => {
        const texts = answered(box);
        const traces = both('levelHalfSpace', box, 'var(--level)');
        return {
          label: `The band-pass plays from ${texts.lower} to ${texts.upper}, and is louder than the closed box ${texts.louder}.`,
          x: frequencyAxis(20, 300),
          y: axisOf(60, 100, 'dB'),
          traces,
          marks: [beside(traces[1], 'closed box', 200, 1, 'middle'), beside(traces[0], 'band-pass', 200, 0, 'right')],
        };
      },
      data: (box) => ({ heads: ['frequency', 'band-pass, dB', 'closed, dB'], rows: rows(box, 'levelHalfSpace', 1) }),
    },
    travel: {
      title: 'Cone travel',
      note: 'For 2.83 V, peak, one way. Full line: the band-pass; dashes: a closed box with the same air.',
      chart: (box) => {
        const texts = answered(box);
        const traces = both('displacementPeak', box, 'var(--travel)');
        return {
          label: `At the tuning the cone of the band-pass moves ${texts.travel}, that of the closed box ${texts.others}.`,
          x: frequencyAxis(20, 300),
          y: axisOf(0, Math.max(...traces.flatMap(({ y }) => Array.from(y))), 'mm'),
          traces,
          marks: [beside(traces[1], 'closed box', 45, 0, 'right'), beside(traces[0], 'band-pass', 28, 0, 'right')],
        };
      },
      data: (box) => ({
        heads: ['frequency', 'band-pass, mm', 'closed, mm'],
        rows: rows(box, 'displacementPeak', 2, 1e3),
      }),
    },
  },
});
