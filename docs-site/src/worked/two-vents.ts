import { answers, grid, inputs, solve } from '../../examples/two-vents.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
type Solved = ReturnType<typeof solve>;
const solved = once(solve);
const answered = once((box: Box) => answers(box, solved(box)));
const names = ['closed', 'parallel', 'series'] as const;
const dashes = { closed: '7 4', parallel: undefined, series: '2 4' } as const;

/** Level, dB, or travel, mm. */
type Curve = (swept: Solved['closed']['swept']) => Float64Array;
const level: Curve = ({ levelHalfSpace }) => levelHalfSpace;
const travel: Curve = ({ displacementPeak }) => displacementPeak.map((metres) => metres * 1e3);

const traces = (curve: Curve, box: Box, colour: string): Trace[] =>
  names.map((name) => ({
    name,
    x: grid,
    y: curve(solved(box)[name].swept),
    colour,
    ...(dashes[name] === undefined ? { thick: true } : { dash: dashes[name] }),
  }));

const rows = (curve: Curve, box: Box, digits: number) => {
  const columns = names.map((name) => curve(solved(box)[name].swept));
  return frequencyRows(grid, (i) => columns.map((column) => column[i]!.toFixed(digits)));
};

export default worked({
  inputs,
  answers: (box) => {
    const texts = answered(box);
    return {
      ...texts,
      said: `With a second vent it ${texts.deeper}: from ${texts.parallelLow}, against ${texts.closedLow}.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: both chambers open to the room; dashes: the rear one closed; dots: the rear one open into the front one.',
      chart: (box) => {
        const texts = answered(box);
        const all = traces(level, box, 'var(--level)');
        return {
          label: `Parallel from ${texts.parallelLow} to ${texts.parallelHigh}, series from ${texts.seriesLow} to ${texts.seriesHigh}, closed from ${texts.closedLow} to ${texts.closedHigh}.`,
          x: frequencyAxis(15, 300),
          y: axisOf(50, 105, 'dB'),
          traces: all,
          marks: [
            // The dashes run between the two nearly everywhere; the note names them.
            beside(all[1]!, 'parallel', 40, 4, 'middle'),
            beside(all[2]!, 'series', 115, 2, 'right'),
          ],
        };
      },
      data: (box) => ({
        heads: ['frequency', 'rear closed, dB', 'parallel, dB', 'series, dB'],
        rows: rows(level, box, 1),
      }),
    },
    travel: {
      title: 'Cone travel',
      note: 'For 2.83 V, peak, one way. Full line: both chambers open to the room; dashes: the rear one closed; dots: the rear one open into the front one.',
      chart: (box) => {
        const texts = answered(box);
        const all = traces(travel, box, 'var(--travel)');
        return {
          label: `At ${texts.tone} the cone of the parallel box moves ${texts.times} as that of the closed one.`,
          x: frequencyAxis(15, 300),
          y: axisOf(0, Math.max(...all.flatMap(({ y }) => Array.from(y))), 'mm'),
          traces: all,
          marks: [beside(all[1]!, 'parallel', 20, 0, 'right'), beside(all[0]!, 'rear closed', 30, 0, 'right')],
        };
      },
      data: (box) => ({
        heads: ['frequency', 'rear closed, mm', 'parallel, mm', 'series, mm'],
        rows: rows(travel, box, 2),
      }),
    },
  },
});
