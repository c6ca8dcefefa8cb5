import { answers, grid, inputs, solve } from '../../examples/what-a-capacitor-buys.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
type Solved = ReturnType<typeof solve>;
const solved = once(solve);
const answered = once((at: Box) => answers(at, solved(at)));

/** Level, dB, or travel, mm. */
type Curve = (swept: Solved['shut']['swept']) => Float64Array;
const level: Curve = ({ levelHalfSpace }) => levelHalfSpace;
const travel: Curve = ({ displacementPeak }) => displacementPeak.map((metres) => metres * 1e3);

/** Behind the capacitor as a full line, shut alone in dashes. */
function both(curve: Curve, at: Box, colour: string): readonly [Trace, Trace] {
  const { shut, behind } = solved(at);
  return [
    { name: 'with capacitor', x: grid, y: curve(behind.swept), colour, thick: true },
    { name: 'without', x: grid, y: curve(shut.swept), colour, dash: '7 4' },
  ];
}

const rows = (curve: Curve, at: Box, digits: number) => {
  const [behind, shut] = both(curve, at, '');
  return frequencyRows(grid, (i) => [behind.y[i]!.toFixed(digits), shut.y[i]!.toFixed(digits)]);
};

const NOTE = 'Full line: behind the capacitor; dashes: the same box without it.';

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return {
      ...texts,
      said: `The capacitor ${texts.takes} ${texts.reach}, from ${texts.shutReach}; at ${texts.tone} the cone moves ${texts.travel}, against ${texts.shutTravel}.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: `For 10 V, half space. ${NOTE}`,
      chart: (at) => {
        const texts = answered(at);
        const traces = both(level, at, 'var(--level)');
        return {
          label: `Behind the capacitor the box reaches ${texts.reach} and rises by ${texts.rise}; without it, ${texts.shutReach} and ${texts.shutRise}. At ${texts.tone} it is ${texts.lost}.`,
          x: frequencyAxis(12, 300),
          y: axisOf(50, 105, 'dB'),
          traces,
          marks: [beside(traces[1], 'without', 20, 2, 'left'), beside(traces[0], 'with capacitor', 25, -3, 'right')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'with capacitor, dB', 'without, dB'], rows: rows(level, at, 1) }),
    },
    travel: {
      title: 'Cone travel',
      note: `For 10 V, peak, one way. ${NOTE}`,
      chart: (at) => {
        const texts = answered(at);
        const traces = both(travel, at, 'var(--travel)');
        return {
          label: `At ${texts.tone} the cone moves ${texts.travel}, against ${texts.shutTravel} without the capacitor; it moves farthest at ${texts.mostAt}, by ${texts.most}.`,
          x: frequencyAxis(12, 300),
          y: axisOf(0, Math.max(...traces.flatMap(({ y }) => Array.from(y))), 'mm'),
          traces,
          marks: [
            beside(traces[1], 'without', 16, 0.6, 'middle'),
            beside(traces[0], 'with capacitor', 55, 0.3, 'right'),
          ],
        };
      },
      data: (at) => ({ heads: ['frequency', 'with capacitor, mm', 'without, mm'], rows: rows(travel, at, 2) }),
    },
  },
});
