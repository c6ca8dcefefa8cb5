import { format } from '@airspring/core/quantity';
import { answers, frequencies, inputs, solve } from '../../examples/deeper-or-louder.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { comparedPanels } from '../figures/compared.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));
const tones = [...frequencies];
const names = ['low', 'middle', 'high'];

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    const said = `Tuned to ${texts.lowTuning} the box reaches ${texts.lowReach} (−6 dB); tuned to ${texts.highTuning} it reaches ${texts.highReach}. The high tuning is ${texts.louder}.`;
    return { ...texts, said };
  },
  figures: {},
  sweeps: {
    tunings: {
      how: 'The bold curve is the low tuning; a thin one carries its name and, at its dot, how far it lies from the low one. Where you changed a number, the grey curves are ours.',
      sweep: (wish) => {
        const [found, texts] = [solved(wish), answered(wish)];
        return {
          id: 'tunings',
          title: 'One box, three tunings',
          frequencies: tones,
          band: [wish.lowest, 120],
          events: found.map(({ tuning }, i) => ({
            f: tuning,
            words: `${names[i]}: tuned to ${format('frequency', tuning, 'Hz')}`,
          })),
          panels: comparedPanels(
            tones,
            found.map(({ most }, i) => ({ name: names[i] as string, most })),
            {
              most: `Above ${format('frequency', wish.lowest, 'Hz')} the box plays at least ${texts.lowLevel} when tuned to ${texts.lowTuning}, where ${texts.lowBinding} gives out first at ${texts.lowAt}, and ${texts.highLevel} when tuned to ${texts.highTuning}, where ${texts.highBinding} gives out first at ${texts.highAt}.`,
              limits: 'The limits are the travel of the cone, the heat of the coil and 28 V from the amplifier.',
              level: `The level is 6 dB down at ${texts.lowReach} when tuned to ${texts.lowTuning}, at ${texts.middleReach} in the middle, and at ${texts.highReach} when tuned to ${texts.highTuning}.`,
            },
          ),
        };
      },
    },
  },
});
