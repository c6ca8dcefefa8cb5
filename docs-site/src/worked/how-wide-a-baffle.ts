import { answers, grid, inputs, solve, travelFor } from '../../examples/how-wide-a-baffle.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((at: Wish) => answers(at, solved(at)));

/** Level, dB, or travel for the level of the page, mm. */
type Curve = (swept: ReturnType<typeof solve>['wall']['swept']) => Float64Array;
const level: Curve = ({ levelHalfSpace }) => levelHalfSpace;
const travel: Curve = (swept) => travelFor(swept).map((metres) => metres * 1e3);

/** The baffle as a full line, the wall in dashes. */
function both(curve: Curve, at: Wish, colour: string): readonly [Trace, Trace] {
  const { baffle, wall } = solved(at);
  return [
    { name: 'baffle', x: grid, y: curve(baffle.swept), colour, thick: true },
    { name: 'wall', x: grid, y: curve(wall.swept), colour, dash: '7 4' },
  ];
}

const rows = (curve: Curve, at: Wish, digits: number) => {
  const { baffle, wall } = solved(at);
  const [open, walled] = [curve(baffle.swept), curve(wall.swept)];
  return frequencyRows(grid, (i) => [open[i]!.toFixed(digits), walled[i]!.toFixed(digits)]);
};

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return { ...texts, said: `At the tone the baffle is ${texts.lost} than a wall, and must be ${texts.needed} wide.` };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: in the baffle; dashes: in a wall.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both(level, at, 'var(--level)');
        return {
          label: `At the tone the baffle is ${texts.lost} than a wall; at ${texts.equal} both are equal.`,
          x: frequencyAxis(20, 300),
          y: axisOf(50, 100, 'dB'),
          traces,
          marks: [beside(traces[1], 'wall', 60, 1, 'middle'), beside(traces[0], 'baffle', 60, -5, 'right')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'baffle, dB', 'wall, dB'], rows: rows(level, at, 1) }),
    },
    travel: {
      title: 'Cone travel',
      note: 'For the same level of 90 dB, peak, one way. Full line: in the baffle; dashes: in a wall; dots: Xmax.',
      chart: (at) => {
        const texts = answered(at);
        const traces = both(travel, at, 'var(--travel)');
        return {
          label: `For ${texts.level} at the tone the cone moves ${texts.moved} in the baffle, ${texts.walled} in a wall.`,
          x: frequencyAxis(20, 300),
          y: axisOf(0, 20, 'mm'),
          traces,
          rules: [{ at: 6, words: 'Xmax' }],
          marks: [beside(traces[1], 'wall', 24, 0, 'right'), beside(traces[0], 'baffle', 40, 0, 'right')],
        };
      },
      data: (at) => ({ heads: ['frequency', 'baffle, mm', 'wall, mm'], rows: rows(travel, at, 2) }),
    },
  },
});
