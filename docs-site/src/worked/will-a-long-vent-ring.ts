import { answers, grid, inputs, parts, solve } from '../../examples/will-a-long-vent-ring.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Box = Parameters<typeof answers>[0];
const vents = parts.map((part) => once(part));
const solved = once((at: Box) =>
  solve(
    at,
    vents.map((vent) => vent(at)),
  ),
);
const answered = once((at: Box) => answers(at, solved(at)));

export default worked({
  inputs,
  parts: (at) => vents.map((vent) => () => vent(at)),
  answers: (at) => {
    const texts = answered(at);
    return {
      ...texts,
      said: `The vent is ${texts.length} long. At ${texts.ring} its pipe stands out by ${texts.out}.`,
    };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: with waves in the vent; dashes: with air that moves as one mass.',
      chart: (at) => {
        const [texts, { pipe, mass }] = [answered(at), solved(at)];
        const traces: readonly [Trace, Trace] = [
          { name: 'pipe', x: grid, y: pipe, colour: 'var(--level)', thick: true },
          { name: 'mass', x: grid, y: mass, colour: 'var(--level)', dash: '7 4' },
        ];
        return {
          label: `In the bass both are alike. At ${texts.ring} the pipe stands out by ${texts.out}.`,
          x: frequencyAxis(20, 1500),
          y: axisOf(70, 105, 'dB'),
          traces,
          marks: [beside(traces[0], 'pipe', solved(at).asked.ring, 1.5, 'middle')],
        };
      },
      data: (at) => {
        const { pipe, mass } = solved(at);
        return {
          heads: ['frequency', 'with waves, dB', 'as one mass, dB'],
          rows: frequencyRows(grid, (i) => [pipe[i]!.toFixed(1), mass[i]!.toFixed(1)]),
        };
      },
    },
  },
});
