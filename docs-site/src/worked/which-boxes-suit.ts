import type { Suited } from '@airspring/core/alignment';
import { format, logarithmicGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { answers, candidatesOf, driverOf, inputs } from '../../examples/which-boxes-suit.js';
import { startsOf } from '../example/input.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis, spread } from '../figures/axis.js';
import { heightAt } from '../figures/beside.js';
import type { Mark, Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];

/** The box of each candidate, solved apart from the others. */
const candidates = candidatesOf(startsOf(inputs).QL!).map((_, i) =>
  once(({ Qts, QL }: Wish): Suited => {
    const one = candidatesOf(QL)[i]!;
    return { ...one, result: one.solve(driverOf(Qts)) };
  }),
);
const solved = once((wish: Wish) => candidates.map((boxFor) => boxFor(wish)));
const answered = once((wish: Wish) => answers(wish, solved(wish)));
const frequencies = logarithmicGrid(15, 200, 50);
const none = new Float64Array(0);

/** The level of each box that suits; an alignment without a box has a line without points. */
const lines = once((wish: Wish): readonly Trace[] =>
  solved(wish).map(({ alignment, family, result }) => ({
    name: alignment.name,
    x: result.ok ? frequencies : none,
    y: result.ok ? respond(result.system, frequencies, { driveVoltageRms: '2.83 V' }).levelHalfSpace : none,
    colour: family === 'closed' ? 'var(--length)' : 'var(--level)',
    dash: family === 'closed' ? '7 4' : 'none',
  })),
);
/** The range of levels that is drawn, dB. */
const shown = [60, 92] as const;
/** The names stand above each other at the left ends of their lines: so far apart, dB, at this frequency, Hz. */
const [APART, LEFT] = [2.4, 15.5] as const;

function namesOf(traces: readonly Trace[]): Mark[] {
  const drawn = traces.filter(({ x }) => x.length > 0);
  const places = spread(
    drawn.map((trace) => heightAt(trace, LEFT)),
    APART,
    shown[0],
  );
  return traces.map((trace) => {
    const place = drawn.indexOf(trace);
    const { name, colour } = trace;
    return { name, x: LEFT, y: places[place] ?? shown[0], words: place < 0 ? '' : name, colour, side: 'right' };
  });
}

export default worked({
  inputs,
  parts: (wish) => candidates.map((boxFor) => () => boxFor(wish)),
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
        return {
          label: `${texts.count} boxes suit the driver. The smallest is ${texts.smallest}. The deepest is ${texts.deepest}.`,
          x: frequencyAxis(15, 200),
          y: axisOf(...shown, 'dB'),
          traces,
          marks: namesOf(traces),
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
