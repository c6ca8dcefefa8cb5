import { format, logarithmicGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { answers, inputs, solve } from '../../examples/which-boxes-suit.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside, clearest } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));
const frequencies = logarithmicGrid(15, 200, 80);
const none = new Float64Array(0);

/** The level of each box that suits; an alignment without a box has a line without points. */
const lines = once((wish: Wish): readonly Trace[] =>
  solved(wish).map(({ alignment, family, result }) => ({
    name: alignment.name,
    x: result.ok ? frequencies : none,
    y: result.ok ? respond(result.system, frequencies, { driveVoltageRms: '2.83 V' }).levelHalfSpace : none,
    colour: 'var(--level)',
    dash: family === 'closed' ? '7 4' : 'none',
  })),
);
/** The range of levels that is drawn, dB. */
const shown = [62, 96] as const;

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    return {
      ...texts,
      said: `${texts.count} boxes suit. The smallest is ${texts.smallest}. The deepest is ${texts.deepest}.`,
    };
  },
  figures: {
    suited: {
      title: 'Which boxes suit this driver',
      note: 'For 2.83 V, half space. Full lines: vented boxes; dashes: closed boxes.',
      chart: (wish) => {
        const [texts, traces] = [answered(wish), lines(wish)];
        const drawn = traces.filter(({ x }) => x.length > 0);
        return {
          label: `${texts.count} boxes suit the driver. The smallest is ${texts.smallest}. The deepest is ${texts.deepest}.`,
          x: frequencyAxis(15, 200),
          y: axisOf(...shown, 'dB'),
          traces,
          marks: traces.map((trace) => {
            if (trace.x.length === 0) return { name: trace.name, x: 15, y: shown[0], words: '', colour: trace.colour };
            const others = drawn.filter((other) => other !== trace);
            return beside(trace, trace.name, clearest(trace, others, [17, 90], shown));
          }),
        };
      },
      data: (wish) => {
        const drawn = lines(wish).filter(({ x }) => x.length > 0);
        return {
          heads: ['frequency', ...drawn.map(({ name }) => name)],
          rows: [...frequencies.keys()]
            .filter((i) => i % 6 === 0)
            .map((i) => [
              format('frequency', frequencies[i]!, 'Hz'),
              ...drawn.map(({ y }) => `${y[i]!.toFixed(1)} dB`),
            ]),
        };
      },
    },
  },
});
