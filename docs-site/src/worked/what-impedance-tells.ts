import { format } from '@airspring/core/quantity';
import { answers, inputs, measure } from '../../examples/what-impedance-tells.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';

const measured = once(measure);
const x = frequencyAxis(9, 120);

export default worked({
  inputs,
  answers: (built) => {
    const texts = answers(built, measured(built));
    const said = `The curve shows a tuning of ${texts.fb}, ${texts.netVolume} of air, and a box that ${texts.tight}.`;
    return { ...texts, said };
  },
  figures: {
    impedance: {
      title: 'Input impedance',
      note: 'Full line: vent open; dashes: vent blocked.',
      chart: (built) => {
        const curves = measured(built);
        const texts = answers(built, curves);
        const { frequencies, open, shut, low, valley, high, only } = curves;
        const colour = 'var(--impedance)';
        const mark = (
          name: string,
          { frequency, value }: typeof low,
          words: string,
          side: 'left' | 'right' | 'middle' = 'middle',
        ) => ({
          name,
          x: frequency,
          y: value,
          words,
          colour,
          dot: true,
          side,
        });
        const traces = [
          { name: 'open', x: frequencies, y: open, colour, thick: true },
          { name: 'shut', x: frequencies, y: shut, colour, dash: '7 4' },
        ] as const;
        return {
          label: `With the vent open the impedance peaks at ${texts.low} and ${texts.high}, with a dip to ${texts.least} at ${texts.valley}; with the vent blocked it peaks once, at ${texts.only}.`,
          x,
          y: axisOf(0, 1.12 * Math.max(low.value, high.value, only.value), 'Ω'),
          traces,
          marks: [
            mark('low', low, texts.low),
            mark('valley', valley, texts.valley),
            mark('high', high, texts.high, 'right'),
            mark('only', only, texts.only, 'left'),
            beside(traces[1], 'vent blocked', only.frequency * 0.8, 0, 'left'),
          ],
        };
      },
      data: (built) => {
        const { frequencies, open, shut } = measured(built);
        return {
          heads: ['frequency', 'vent open', 'vent blocked'],
          rows: [...frequencies.keys()]
            .filter((i) => i % 14 === 0)
            .map((i) => [
              format('frequency', frequencies[i]!, 'Hz'),
              format('resistance', open[i]!, 'Ω'),
              format('resistance', shut[i]!, 'Ω'),
            ]),
        };
      },
    },
  },
});
